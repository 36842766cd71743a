/** What stands on the quote for this group now, the way to exchange one of them, and the way back while it is a draft. */
import Link from 'next/link'
import { exchangedText, exchangesOn, quotedText } from '@/lib/domain/quote/exchanged'
import { type Quote, type QuoteLine, quoteTitle } from '@/lib/domain/quote/quote'
import type { Words } from '@/lib/domain/words'
import { listTubesById } from '@/lib/store/tube'
import { dropChoice } from './actions'
import { exchangeAddress } from './exchange/exchange-address'

type Props = {
  readonly lines: readonly QuoteLine[]
  readonly quote: Quote
  readonly jobNumber: string
  readonly group: string
  readonly words: Words
}

export async function ChosenSet({ lines, quote, jobNumber, group, words }: Props) {
  const tubes = (await listTubesById(lines.flatMap(({ tubeId }) => tubeId ?? []))).map(({ tube }) => tube)
  const live = quote.state === 'draft' || quote.state === 'sent' || quote.state === 'accepted'
  return (
    <div className="form-message" data-status="saved">
      <p>
        On quote {quoteTitle(quote)}. <Link href={`/jobs/${jobNumber}/quote`}>To the quote</Link>
      </p>
      <ul>
        {lines.map((line) => {
          const tube = tubes.find(({ id }) => id === line.tubeId)
          const position = line.socketPosition ?? ''
          const [told] = exchangesOn({ lines: [line] }, tubes)
          return (
            <li key={line.id}>
              {position} {tube ? quotedText(tube) : line.text}
              {told && <span className="soft"> ({exchangedText(told, 'now')})</span>}{' '}
              {tube?.whereabouts === 'fitted' && <span className="soft">fitted</span>}
              {live && tube && tube.whereabouts !== 'fitted' && (
                <Link className="button quiet" href={exchangeAddress(jobNumber, { position, mark: '', work: false })}>
                  Exchange this {words.tube}
                  <span className="sr-only">: {tube.mark}</span>
                </Link>
              )}
            </li>
          )
        })}
      </ul>
      {quote.state === 'draft' && (
        <form action={dropChoice.bind(null, jobNumber, group)}>
          <button type="submit" className="button quiet">
            Take these {words.tubes} off the quote
          </button>
        </form>
      )}
    </div>
  )
}
