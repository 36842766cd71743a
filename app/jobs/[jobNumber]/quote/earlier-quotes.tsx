/** Every revision there was, with its paper. */
import { formatInstant } from '@/lib/domain/calendar'
import { formatMoney } from '@/lib/domain/money'
import { type Quote, quoteTitle, stateNow, totalsOf } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import type { IssuedPaper } from '@/lib/store/paper'
import { paperOf } from './paper-of'
import { QuoteStateTag } from './quote-state-tag'

export function EarlierQuotes({
  quotes,
  papers,
  shop,
  now,
}: {
  quotes: readonly Quote[]
  papers: readonly IssuedPaper[]
  shop: Shop
  now: Date
}) {
  if (quotes.length === 0) return null
  const { locale } = wordsFor(shop.words)
  return (
    <section className="panel table-scroll" aria-labelledby="earlier">
      <h2 id="earlier">Earlier revisions</h2>
      <table>
        <tbody>
          {quotes.map((quote) => {
            const paper = paperOf(quote, papers)
            return (
              <tr key={quote.id}>
                <th scope="row">
                  {paper ? <a href={`/papers/${paper.id}`}>{quoteTitle(quote)}</a> : quoteTitle(quote)}
                </th>
                <td>
                  <QuoteStateTag state={stateNow(quote, now, shop.timeZone)} />
                </td>
                <td>{quote.sentAt ? formatInstant(quote.sentAt, shop.timeZone, locale) : 'never sent'}</td>
                <td className="num">{formatMoney(totalsOf(quote).total, shop.currency, locale)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </section>
  )
}
