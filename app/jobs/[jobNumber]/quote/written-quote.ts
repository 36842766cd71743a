import type { WrittenQuote } from '@/lib/workflow/quote/keep-quote'
import { KIND_OF, LINE_LISTS, type QuoteTyped } from './quote-schema'

/** Line ends of a text box are two characters on the way here; what is compared must not differ by that. */
const unix = (text: string) => text.replace(/\r\n/g, '\n')

export function writtenQuote({ findings, findingsBefore = '', note, tubes, ...typed }: QuoteTyped): WrittenQuote {
  const lines = LINE_LISTS.flatMap((list) => typed[list].map((line) => ({ ...line, kind: KIND_OF[list] })))
  const { version, validUntil, depositPercent } = typed
  if (validUntil === null) throw new Error('Valid until is required by the form')
  const found = { before: unix(findingsBefore), text: unix(findings) }
  return {
    version,
    validUntil,
    depositPercent,
    note: unix(note),
    lines,
    tubes: tubes.filter(({ id }) => id !== ''),
    findings: found,
  }
}
