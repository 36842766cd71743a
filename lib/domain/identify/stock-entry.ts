/** What was seen, box by box as the stock sheet has them; what has no box of its own goes under construction. */
import type { SeenName } from '../stock/tube-further'
import { capital, type Words } from '../words'
import { inWords } from './identify-text'
import { choiceWord, OBSERVATION_KEYS, OBSERVATIONS, type ObservationKey } from './knowledge/observations'
import { type Seen, seenChoices } from './seen'

export type StockEntry = Readonly<Record<SeenName | 'construction', string>>

/** As the stock form takes it. */
const LONGEST = 300

type Box = SeenName | 'construction'

const BOXES: Readonly<Partial<Record<ObservationKey, SeenName>>> = {
  bulb: 'bulbShape',
  glass: 'glass',
  baseMaterial: 'baseLook',
  micas: 'micas',
  getterPlace: 'getters',
  getterShape: 'getters',
  flash: 'getters',
  plates: 'plates',
  plateColour: 'plates',
  plateShape: 'plates',
  plateLength: 'plates',
}

const boxOf = (key: ObservationKey): Box => BOXES[key] ?? 'construction'

const sharesBox = (key: ObservationKey): boolean =>
  boxOf(key) === 'construction' || OBSERVATION_KEYS.filter((other) => boxOf(other) === boxOf(key)).length > 1

/** In a box of several things each needs its name: "getter place: at the top". */
function pieceOf(key: ObservationKey, choice: string, words: Pick<Words, 'plate'>): string {
  const word = inWords(choiceWord(key, choice), words)
  return sharesBox(key) ? `${inWords(OBSERVATIONS[key].label, words).toLowerCase()}: ${word}` : word
}

const joined = (pieces: readonly string[]): string => capital(pieces.filter((piece) => piece !== '').join('; '))

export function stockEntry(seen: Seen, words: Pick<Words, 'plate'>): StockEntry {
  const pieces = seenChoices(seen).map(([key, choice]) => [boxOf(key), pieceOf(key, choice, words)] as const)
  const inBox = (box: Box) => pieces.filter(([where]) => where === box).map(([, piece]) => piece)
  return {
    bulbShape: joined(inBox('bulbShape')),
    glass: joined(inBox('glass')),
    baseLook: joined(inBox('baseLook')),
    labelText: seen.print.trim(),
    printColour: '',
    codes: joined([seen.codes.trim(), seen.date.trim()]),
    plates: joined(inBox('plates')),
    getters: joined(inBox('getters')),
    micas: joined(inBox('micas')),
    construction: joined([seen.other.trim(), ...inBox('construction')]).slice(0, LONGEST),
  }
}
