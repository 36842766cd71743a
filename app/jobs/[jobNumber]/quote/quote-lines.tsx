/** The lines of a quote that is out of the shop's hands, to be read. */
import { formatMoney, type Money } from '@/lib/domain/money'
import { labourWord } from '@/lib/domain/quote/labour-word'
import { amountOf, type LineKind, type Quote } from '@/lib/domain/quote/quote'
import type { PartStanding } from '@/lib/domain/stock/part-standing'
import { capital, type Words } from '@/lib/domain/words'
import { PartNote } from '../part-note'
import { tubeName } from './quote-schema'

type Props = {
  readonly quote: Quote
  readonly currency: string
  readonly words: Words
  /** By part: said beside its lines while it still matters. */
  readonly standings: ReadonlyMap<string, PartStanding>
}

export function QuoteLines({ quote, currency, words, standings }: Props) {
  const show = (amount: Money) => formatMoney(amount, currency, words.locale)
  const kinds: Record<LineKind, string> = {
    labour: labourWord(words),
    part: 'Parts',
    tube: capital(words.tubes),
    fee: 'Fees and credits',
  }
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th>Item</th>
            <th className="num">Quantity</th>
            <th>Unit</th>
            <th className="num">Unit price</th>
            <th className="num">Amount</th>
          </tr>
        </thead>
        <tbody>
          {quote.lines.map((line) => (
            <tr key={line.id}>
              <td>
                {line.kind === 'tube' ? tubeName(line) : line.text}{' '}
                <span className="soft small">
                  {kinds[line.kind]}
                  {!line.taxable && ', not taxed'}
                </span>
                <PartNote standing={line.doneAt === null ? standings.get(line.partId ?? '') : undefined} />
              </td>
              <td className="num">{line.thousandths / 1000}</td>
              <td>{line.unit}</td>
              <td className="num">{show(line.unitPrice)}</td>
              <td className="num">{show(amountOf(line))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
