/** What stands for a quoted tube now: the lines above keep what was quoted. */
import { exchangedText, exchangesOn } from '@/lib/domain/quote/exchanged'
import { type Quote, tubeIdsOf } from '@/lib/domain/quote/quote'
import { listTubesById } from '@/lib/store/tube'

export async function ExchangedSince({ quote }: { readonly quote: Quote }) {
  const tubes = (await listTubesById(tubeIdsOf(quote))).map(({ tube }) => tube)
  const exchanges = exchangesOn(quote, tubes)
  if (exchanges.length === 0) return null
  return (
    <ul aria-label="Exchanged since">
      {exchanges.map((each) => (
        <li key={each.position}>{exchangedText(each, 'now')}</li>
      ))}
    </ul>
  )
}
