/** What was seen, as one line for the stock sheet: the label first, then the bottle from outside to inside. */
import type { Words } from '../words'
import { inWords } from './identify-text'
import { choiceWord, OBSERVATIONS } from './knowledge/observations'
import { type Seen, seenChoices } from './seen'

/** As the stock form takes it. */
const LONGEST = 300

export function constructionText(seen: Seen, words: Pick<Words, 'plate'>): string {
  const marks = [
    ['print', seen.print],
    ['codes', seen.codes],
    ['date code', seen.date],
    ['also', seen.other],
  ].flatMap(([label, text]) => (text?.trim() ? [`${label} ${text.trim()}`] : []))
  const body = seenChoices(seen).map(
    ([key, choice]) =>
      `${inWords(OBSERVATIONS[key].label, words).toLowerCase()} ${inWords(choiceWord(key, choice), words)}`,
  )
  const text = [...marks, ...body].join('; ')
  return text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text
}
