/** Which tube is looked at, and within which limits: a plain form of the address. */
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { LimitBox, type Limits, LimitTick } from '../limits-form'
import type { ExchangeAsked } from './exchange-address'

type Props = {
  readonly jobNumber: string
  readonly asked: ExchangeAsked
  readonly limits: Limits
  readonly shop: Shop
}

export function ExchangeAsk({ jobNumber, asked, limits, shop }: Props) {
  const words = wordsFor(shop.words)
  const ageFault = limits.faults.find(({ name }) => name === 'age')?.sentence
  return (
    <form action={`/jobs/${jobNumber}/tubes/exchange`} className="panel">
      <h3>Look at another {words.tube}</h3>
      <input type="hidden" name="socket" value={asked.position} />
      {asked.work && <input type="hidden" name="of" value="work" />}
      <div className="fields">
        <LimitBox
          name="with"
          label={`Mark of the ${words.tube}`}
          unit=""
          value={asked.mark}
          hint="Any of the stock. Empty: the best few are offered."
        />
        <LimitBox
          name="age"
          label="Test not older than"
          unit="days"
          value={limits.typed.age}
          fault={ageFault}
          hint="Empty: any age."
        />
        <LimitTick
          name="over"
          on={limits.over}
          label={`Take ${words.tubes} beyond their printed voltages`}
          hint="At your judgement; the rating is still exceeded."
        />
        <LimitTick
          name="at"
          value="test-point"
          on={limits.at === 'test-point'}
          label="Compare at the test point"
          hint="Else by the idle predicted in this amplifier, where its circuit is known."
        />
      </div>
      <button type="submit" className="button quiet">
        Look
      </button>
    </form>
  )
}
