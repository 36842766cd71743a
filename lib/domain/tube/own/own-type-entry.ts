/**
 * A tube type as a shop writes it down: one set of figures for one designation and its
 * other numbers. Figures stand in the unit of their name, as a data sheet prints them.
 */
import type { LimitKey } from '../handbook-type'
import type { CurvesLike } from '../tube-catalogue'
import type { RatingSystem, TubeBase, TubeClass, TubeRole } from '../tube-variant'

/** One printed operating point, no signal. A rectifier has drops instead. */
export type OwnRow = {
  readonly plateVolts: number
  /** Null for a triode. */
  readonly screenVolts: number | null
  /** Against the cathode. */
  readonly gridVolts: number
  readonly plateMilliamps: number
  readonly screenMilliamps: number | null
  readonly gmMilliampsPerVolt: number | null
  readonly plateResistanceKilohms: number | null
  readonly mu: number | null
}

/** One plate of a rectifier: its drop at a current. */
export type OwnDrop = { readonly dropVolts: number; readonly milliamps: number }

export type OwnTypeEntry = {
  readonly designation: string
  /** Other numbers of the very same tube. */
  readonly otherNumbers: readonly string[]
  /** Interchange family; empty: a family of its own. */
  readonly family: string
  readonly tubeClass: TubeClass
  readonly base: TubeBase['name']
  /** Standard basing, such as "7AC"; empty when not known. */
  readonly basing: string
  /** Pin number → electrode. Null: not known. */
  readonly pins: Readonly<Record<string, string>> | null
  readonly heaterVolts: number
  readonly heaterAmps: number
  readonly system: RatingSystem
  readonly limits: Readonly<Partial<Record<LimitKey, number>>>
  readonly rows: readonly OwnRow[]
  readonly drop: OwnDrop | null
  readonly curves: CurvesLike | null
  readonly sourceText: string
  readonly note: string
}

export const MOST_OWN_ROWS = 4

export const ROLE_OF_CLASS: Readonly<Record<TubeClass, TubeRole>> = {
  'beam-tetrode': 'output',
  'power-pentode': 'output',
  'power-triode': 'output',
  'triode-pentode': 'output',
  triode: 'small-signal',
  'twin-triode': 'small-signal',
  'signal-pentode': 'small-signal',
  rectifier: 'rectifier',
}

const CLASS_WORDS: Readonly<Record<TubeClass, string>> = {
  'beam-tetrode': 'beam tetrode',
  'power-pentode': 'power pentode',
  'power-triode': 'power triode',
  'triode-pentode': 'triode-pentode',
  triode: 'triode',
  'twin-triode': 'twin triode',
  'signal-pentode': 'small-signal pentode',
  rectifier: 'rectifier',
}
export const TUBE_CLASSES = Object.keys(CLASS_WORDS) as readonly TubeClass[]
export const classWord = (tubeClass: TubeClass): string => CLASS_WORDS[tubeClass]

export const isTriode = (tubeClass: TubeClass): boolean =>
  tubeClass === 'triode' || tubeClass === 'twin-triode' || tubeClass === 'power-triode'
