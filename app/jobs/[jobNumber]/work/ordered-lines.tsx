/** Operations and parts of the accepted quote, ticked off one by one with who and when. */
import { formatInstant } from '@/lib/domain/calendar'
import type { Quote, QuoteLine } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import type { PartStanding } from '@/lib/domain/stock/part-standing'
import { wordsFor } from '@/lib/domain/words'
import { PartNote } from '../part-note'
import { PressForm } from '../press-form'
import { pressTick } from './actions'

type Common = {
  readonly jobNumber: string
  readonly shop: Shop
  readonly may: boolean
  /** By part. */
  readonly standings: ReadonlyMap<string, PartStanding>
}

export function OrderedLines({ quote, ...common }: Common & { readonly quote: Quote | null }) {
  const of = (...kinds: QuoteLine['kind'][]) => quote?.lines.filter(({ kind }) => kinds.includes(kind)) ?? []
  return (
    <div className="stack">
      <Lines title="Operations" lines={of('labour')} tick="Done" none="No operation is ordered." {...common} />
      <Lines title="Parts" lines={of('part')} tick="Used" none="No part is ordered." {...common} />
    </div>
  )
}

type LinesProps = Common & {
  readonly title: string
  readonly lines: readonly QuoteLine[]
  readonly tick: string
  readonly none: string
}

function Lines({ title, lines, tick, none, jobNumber, shop, may, standings }: LinesProps) {
  const id = title.toLowerCase()
  return (
    <section className="panel" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {lines.length === 0 && <p className="soft">{none}</p>}
      {lines.length > 0 && (
        <div className="table-scroll">
          <table>
            <tbody>
              {lines.map((line) => (
                <tr key={line.id}>
                  <td>
                    {line.text} <span className="soft nowrap">{quantity(line)}</span>
                    <PartNote standing={line.doneAt === null ? standings.get(line.partId ?? '') : undefined} />
                  </td>
                  <td>
                    <span
                      className="tag"
                      data-shape={line.doneAt ? '●' : '○'}
                      data-tone={line.doneAt ? 'good' : undefined}
                    >
                      {line.doneAt ? tick.toLowerCase() : 'open'}
                    </span>
                    {line.doneAt && (
                      <span className="soft small">
                        {' '}
                        {line.doneBy}, {formatInstant(line.doneAt, shop.timeZone, wordsFor(shop.words).locale)}
                      </span>
                    )}
                  </td>
                  {may && (
                    <td className="no-print">
                      <PressForm
                        action={pressTick.bind(null, { jobNumber, lineId: line.id, done: line.doneAt === null })}
                        quiet={line.doneAt !== null}
                      >
                        {line.doneAt ? 'Not after all' : tick}
                        <span className="sr-only"> {line.text}</span>
                      </PressForm>
                    </td>
                  )}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  )
}

const quantity = ({ thousandths, unit }: QuoteLine): string => (unit === 'flat' ? '' : `${thousandths / 1000} ${unit}`)
