/** What stands on the quote for this group now, and the way back while it is a draft. */
import Link from 'next/link'
import { type Quote, type QuoteLine, quoteTitle } from '@/lib/domain/quote/quote'
import type { Words } from '@/lib/domain/words'
import { dropChoice } from './actions'

type Props = {
  readonly lines: readonly QuoteLine[]
  readonly quote: Quote
  readonly jobNumber: string
  readonly group: string
  readonly words: Words
}

export function ChosenSet({ lines, quote, jobNumber, group, words }: Props) {
  return (
    <div className="form-message" data-status="saved">
      <p>
        On quote {quoteTitle(quote)}: {lines.map(({ text, socketPosition }) => `${socketPosition} ${text}`).join('; ')}.{' '}
        <Link href={`/jobs/${jobNumber}/quote`}>To the quote</Link>
      </p>
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
