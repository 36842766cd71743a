/** The end of the job: handing over, giving back unrepaired, or what it ended with. */

import type { Fitting } from '@/lib/domain/amp/fitting'
import { fittedBy } from '@/lib/domain/amp/fitting'
import { formatInstant } from '@/lib/domain/calendar'
import { isClosed, jobStateWord, nextStates } from '@/lib/domain/job/job-state'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import type { JobHead } from '@/lib/store/job-head'
import { submitHandOver, submitReturn, submitTakeBack } from './actions'
import { HandOverForm } from './hand-over-form'
import type { PartsLeaving } from './parts-leaving'
import { ReturnForm } from './return-form'
import { TakeBackForm } from './take-back-form'

type Props = {
  readonly head: JobHead
  readonly shop: Shop
  readonly fittings: readonly Fitting[]
  readonly parts: PartsLeaving
}

export function Leaving({ head, shop, fittings, parts }: Props) {
  const { job, customer } = head
  const ways = nextStates(job.state)
  if (isClosed(job.state)) return <Left head={head} shop={shop} />
  const fitted = fittedBy(fittings, job.id).map(({ mark }) => mark)
  return (
    <section className="panel stack" aria-labelledby="hand-over">
      <h2 id="hand-over">Hand over</h2>
      {ways.includes('collected') ? (
        <>
          <p>
            <a href={`/jobs/${job.number}/pickup/preview`}>Look at the pickup sheet as it stands</a>{' '}
            <span className="soft">(nothing is kept)</span>
          </p>
          {parts.unticked !== '' && (
            <p className="form-message">
              Not ticked as used on the work order: {parts.unticked}. They leave their drawers with this hand-over.
            </p>
          )}
          <HandOverForm action={submitHandOver.bind(null, job.number)} ownerName={customer.name} />
        </>
      ) : (
        <p className="soft">
          The job is “{jobStateWord(job.state)}”. It is handed over once its safety lines are signed and it is released.
        </p>
      )}
      {ways.includes('returned-unrepaired') && (
        <>
          {fitted.length > 0 && (
            <p className="form-message">
              {fitted.join(', ')} of the stock sits in it. Take it out on the work order first, unless it is to go
              along.
            </p>
          )}
          <ReturnForm
            action={submitReturn.bind(null, job.number)}
            ownerName={customer.name}
            currency={shop.currency}
            partsIn={parts.taken}
          />
        </>
      )}
    </section>
  )
}

function Left({ head, shop }: Pick<Props, 'head' | 'shop'>) {
  const { state, collectedBy, collectedIdentity, collectedAt } = head.job
  const when = collectedAt ? formatInstant(collectedAt, shop.timeZone, wordsFor(shop.words).locale) : ''
  return (
    <section className="panel" aria-labelledby="left">
      <h2 id="left">{jobStateWord(state).replace(/^./, (letter) => letter.toUpperCase())}</h2>
      <dl className="facts">
        <dt>By</dt>
        <dd>{collectedBy}</dd>
        <dt>When</dt>
        <dd>{when}</dd>
        <dt>Identity</dt>
        <dd>{collectedIdentity || 'the owner'}</dd>
      </dl>
      {state === 'collected' && <TakeBackForm action={submitTakeBack.bind(null, head.job.number)} />}
    </section>
  )
}
