/** The tube looked at: what the set would be, what it costs, and the button, or why there is none. */
import Link from 'next/link'
import { exchangedText, exchangesOn } from '@/lib/domain/quote/exchanged'
import { seenOut, seenThere } from '@/lib/workflow/tubes/seen-tubes'
import { ChooseForm } from '../choose-form'
import type { Limits } from '../limits-form'
import { submitExchange } from './actions'
import { typedLimits } from './offers-table'
import type { Compared } from './reckoning/compared-sets'
import type { ExchangeView } from './reckoning/exchange-view'
import type { Looked } from './reckoning/looked'
import { priceWords } from './reckoning/price-words'
import type { SeenExchange } from './reckoning/seen-exchange'
import { SetThenNow } from './set-then-now'

type Props = {
  readonly view: ExchangeView
  readonly looked: Looked
  readonly compared: Compared
  readonly limits: Limits
}

export function LookedAt({ view, looked, compared, limits }: Props) {
  const { asked, out, job, drafted, quote } = view
  const { tube } = looked.stocked
  const elsewhere = drafted.get(tube.id)
  return (
    <section className="panel stack" aria-labelledby="looked">
      <h3 id="looked">
        {tube.mark} in place of {out.tube.mark}
      </h3>
      <SetThenNow view={view} looked={looked} compared={compared} />
      {looked.against.length === 0 && <Price view={view} looked={looked} />}
      {elsewhere && (
        <p className="soft">
          {tube.mark} stands on the draft quote of job {elsewhere}; nothing holds it yet.
        </p>
      )}
      {quote.state !== 'draft' && looked.price.ok && looked.against.length === 0 && (
        <p className="soft">{paperWords(view, looked)}</p>
      )}
      {looked.against.map((reason) => (
        <p key={reason} className="form-message" data-status="refused">
          {reason}
        </p>
      ))}
      {looked.price.ok && looked.against.length === 0 && (
        <ChooseForm
          key={tube.id}
          action={submitExchange.bind(null, job.number)}
          values={pressed(view, looked, limits)}
          label={`Exchange ${out.tube.mark} for ${tube.mark} in ${asked.position}`}
        />
      )}
    </section>
  )
}

function Price({ view, looked }: Pick<Props, 'view' | 'looked'>) {
  const words = priceWords(view, looked)
  if (looked.price.ok) return <p>{words}</p>
  return (
    <p className="form-message" data-status="refused">
      {words} <Link href={`/jobs/${view.job.number}/quote`}>To the quote</Link>
    </p>
  )
}

function paperWords({ line, asked }: ExchangeView, { stocked: { tube } }: Looked): string {
  const meant = { ...line, tubeId: tube.id, socketPosition: asked.position }
  const [told] = exchangesOn({ lines: [meant] }, [tube])
  return told
    ? `The quote that went out is not drawn anew. Work order and pickup sheet say: ${exchangedText(told, 'fitted')}`
    : 'It stands as quoted again.'
}

function pressed(view: ExchangeView, { stocked }: Looked, limits: Limits): Record<string, string> {
  const { asked, quote, out, beside, planBasis } = view
  const seen: SeenExchange = {
    quoteId: quote.id,
    version: quote.version,
    out: seenOut(out, view.view),
    into: seenThere(stocked, view.view),
    beside: beside.map(({ stocked: each }) => seenThere(each, view.view)),
    basis: planBasis,
  }
  return {
    socket: asked.position,
    with: stocked.tube.mark,
    ...(asked.work ? { of: 'work' } : {}),
    ...typedLimits(limits),
    seen: JSON.stringify(seen),
  }
}
