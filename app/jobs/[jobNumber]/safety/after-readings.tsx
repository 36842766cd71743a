/** Readings after the work, beside those before it. */
import Link from 'next/link'
import { BenchReport } from '@/app/_components/bench/bench-report'
import { formatInstant } from '@/lib/domain/calendar'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import type { SafetyState, WorkedRound } from '@/lib/workflow/work/safety-state'
import { BeforeAfter } from './before-after'

type Props = { readonly state: SafetyState; readonly jobNumber: string; readonly shop: Shop; readonly open: boolean }

export function AfterReadings({ state, jobNumber, shop, open }: Props) {
  const { before, after, context } = state
  const words = wordsFor(shop.words)
  return (
    <section className="panel stack" aria-labelledby="after">
      <div className="panel-head">
        <h2 id="after">Readings, before and after the work</h2>
        {open && (
          <Link className={after ? 'button quiet' : 'button'} href={`/jobs/${jobNumber}/bench/new?phase=after`}>
            {after ? 'Read once more' : 'Enter the readings after the work'}
          </Link>
        )}
      </div>
      <p className="soft">
        Before: {takenText(before, shop)}. After: {takenText(after, shop)}.
      </p>
      {context.fittedSince.length > 0 && (
        <p className="form-message" data-status="refused">
          {context.fittedSince.join(', ')} went in after the last round, so it does not speak for the {words.tubes} that
          sit there now. Read again.
        </p>
      )}
      <BeforeAfter before={before} after={after} words={words} />
      {after && (
        <details>
          <summary>The round after the work in full, with its cautions</summary>
          <BenchReport result={after.result} words={words} />
        </details>
      )}
    </section>
  )
}

function takenText(round: WorkedRound | null, shop: Shop): string {
  if (!round) return 'none yet'
  const { takenAt, takenBy, instrumentName, wallVolts } = round.set
  return `${formatInstant(takenAt, shop.timeZone, wordsFor(shop.words).locale)}, ${takenBy}, ${instrumentName}, wall ${wallVolts} V`
}
