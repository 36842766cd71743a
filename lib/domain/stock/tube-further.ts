/**
 * What is known of a tube beyond type, condition and price. Five facts are kept
 * apart, because none stands for another: how it was acquired and what it
 * tested (elsewhere), whether it was used, how it looks, what its box is. What
 * was seen of its construction is in separate boxes of free text.
 */
import type { Day } from '../calendar'
import type { Shown } from '../history/changes'
import { shown } from '../history/changes'

export const USED_STATES = ['unused', 'used'] as const
export type UsedState = (typeof USED_STATES)[number]

export const WARRANTY_STATES = ['none', 'ours', 'supplier', 'claimed'] as const
export type WarrantyState = (typeof WARRANTY_STATES)[number]

const WARRANTY_WORDS: Readonly<Record<WarrantyState, string>> = {
  none: 'none',
  ours: 'given by this shop',
  supplier: 'given by the supplier',
  claimed: 'claimed, waiting',
}

export const warrantyWord = (state: WarrantyState | ''): string => (state === '' ? '' : WARRANTY_WORDS[state])

/** Of the construction, in the order one looks: from the outside inwards. */
export const SEEN = {
  bulbShape: 'Bulb shape',
  glass: 'Glass colour and coating',
  baseLook: 'Base material and colour',
  labelText: 'Label as printed',
  printColour: 'Print colour',
  codes: 'Codes',
  plates: 'Plate colour and shape',
  getters: 'Getters',
  micas: 'Micas',
} as const

export type SeenName = keyof typeof SEEN
export const SEEN_NAMES = Object.keys(SEEN) as readonly SeenName[]

export type TubeFurther = Readonly<Record<SeenName, string>> & {
  /** Empty: not known. */
  readonly used: UsedState | ''
  readonly cosmetics: string
  readonly box: string
  /** Empty: not stated. */
  readonly warranty: WarrantyState | ''
  readonly warrantyUntil: Day | null
  /** Run before it came here. Null: not known. */
  readonly hoursBefore: number | null
  /** Kept to compare instruments by. */
  readonly reference: boolean
  /** Name of the set it is kept with; empty: none. */
  readonly setName: string
}

export const NOTHING_FURTHER: TubeFurther = {
  ...{ used: '', cosmetics: '', box: '' },
  ...{ bulbShape: '', glass: '', plates: '', baseLook: '', printColour: '', getters: '', micas: '', codes: '' },
  ...{ labelText: '', warranty: '', warrantyUntil: null, hoursBefore: null, reference: false, setName: '' },
}

/** `day` writes a day as the reader does. */
export const furtherShown = (further: TubeFurther, day: (day: Day) => string): Shown =>
  shown([
    ['Used', further.used],
    ['Cosmetics', further.cosmetics],
    ['Box', further.box],
    ...SEEN_NAMES.map((name) => [SEEN[name], further[name]] as const),
    ['Warranty', warrantyWord(further.warranty)],
    ['Warranty until', further.warrantyUntil === null ? '' : day(further.warrantyUntil)],
    ['Hours before it came', further.hoursBefore === null ? '' : `${further.hoursBefore} h`],
    ['Shop reference', further.reference ? 'yes' : ''],
    ['Kept with set', further.setName],
  ])

/** All of it that is text, for looking up. */
export const furtherTexts = ({ cosmetics, box, setName, ...further }: TubeFurther): string[] => [
  ...[cosmetics, box, setName],
  ...SEEN_NAMES.map((name) => further[name]),
]
