/** What was offered and not wanted, in one line for the job, the pickup sheet and the next visit. */
import { isExchangeCredit } from './exchanged'
import { type Quote, quoteTitle } from './quote'

export function declinedText(quote: Pick<Quote, 'number' | 'revision' | 'lines'>, day: string, by: string): string {
  const lines = quote.lines
    .filter((line) => !isExchangeCredit(line))
    .map(({ text, socketPosition }) => `${oneLine(text)}${socketPosition ? ` for ${socketPosition}` : ''}`)
  return `Quote ${quoteTitle(quote)}, declined ${day} by ${oneLine(by)}: ${lines.join('; ')}`
}

/** Takes that line out again. Text that was edited since is left as it is. */
export function withoutDeclined(text: string, quote: Pick<Quote, 'number' | 'revision'>): string {
  const start = `Quote ${quoteTitle(quote)}, declined `
  return text
    .split('\n')
    .filter((line) => !line.startsWith(start))
    .join('\n')
}

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim()
