/** The answers in bench words. */
import type { Answer } from './substitute'

const ANSWER_WORDS: Readonly<Record<Answer, string>> = {
  'drop-in': 'goes in as it is',
  'with-adjustment': 'goes in with adjustment',
  'cannot-say': 'cannot be said yet',
  'with-changes': 'goes in only with changes to the amplifier',
  no: 'does not go in',
}
export const answerWord = (answer: Answer): string => ANSWER_WORDS[answer]

const ANSWER_SHAPES: Readonly<Record<Answer, string>> = {
  'drop-in': '●',
  'with-adjustment': '◐',
  'cannot-say': '?',
  'with-changes': '△',
  no: '✕',
}
/** Beside the word, so that nothing hangs on a colour. */
export const answerShape = (answer: Answer): string => ANSWER_SHAPES[answer]

export const READ_AFTER_FITTING =
  'Whatever goes in: discharge first, fit cold, start with the idle at its coldest, read at once and again warm.'
