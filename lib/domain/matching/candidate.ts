/**
 * What the choice of a matched set looks at: one stocked tube, the sockets
 * that want tubes, and the limits the shop sets.
 *
 * A tube is known by its latest usable test record, at that record's own test point. Where
 * the amplifier's circuit is known, `MatchLimits.predictions` says what each would do there,
 * and that is compared instead.
 */
import type { Money } from '../money'
import type { Amps, Ratio, Siemens, Volts, Watts } from '../units'
import type { MatchWeights, SetArrangement } from './match-weights'
import type { Predictions } from './predicted-tube'

export type TubeCondition =
  | 'current-production'
  | 'new-old-stock-boxed'
  | 'new-old-stock-loose'
  | 'used-tested'
  | 'pull'
  | 'as-found'
  | 'reject'

/** A tube held for the very job in hand is passed in as free. */
export type TubeState =
  | { readonly kind: 'free' }
  /** `holder` is what the reader knows it by, such as a quote or job number. */
  | { readonly kind: 'reserved'; readonly holder: string }
  | { readonly kind: 'fitted'; readonly place: string }
  | { readonly kind: 'gone'; readonly cause: string }

export type TestPoint = {
  readonly plateVoltage: Volts
  /** null for triodes and triode-strapped tubes. */
  readonly screenVoltage: Volts | null
  /** Control grid against cathode, so usually negative. */
  readonly gridVoltage: Volts
}

export type TubeTest = {
  /** ISO date or date and time. */
  readonly testedAt: string
  readonly instrument: string
  readonly testPoint: TestPoint
  readonly plateCurrent: Amps
  readonly transconductance: Siemens | null
  readonly shorts: boolean
  /** What was noted on gas or leakage. It becomes a caution, never a refusal. */
  readonly leakageNote: string | null
  /** Read on another instrument, and carried over to this one. Left out: as it was read. */
  readonly carried?: CarriedReading
}

export type CarryRate = {
  /** What was read, times this. */
  readonly factor: number
  /** Half of the 95 % band of one reading carried, as a share of it. */
  readonly share: number
}

export type CarriedReading = {
  /** Instrument it was read on. */
  readonly from: string
  readonly current: CarryRate
  /** null: its transconductance was not read. */
  readonly slope: CarryRate | null
  /** As read there. */
  readonly plateCurrent: Amps
  readonly transconductance: Siemens | null
}

/** What reference tubes read on two instruments tell of them. Of it only this counts here. */
export type KnownCorrection = {
  readonly from: string
  readonly to: string
  readonly figure: 'plateCurrent' | 'transconductance'
  /** A reading on `from` times this is what `to` would have read. */
  readonly factor: number
  /** Half of the 95 % band of one reading carried over, as a share. */
  readonly readingUncertainty: number
}

/** How readings of different instruments are brought together. */
export type Carrying = {
  readonly corrections: readonly KnownCorrection[]
  /** The instrument that all are carried to; left out: the one that most of the tubes were read on. */
  readonly to?: string
}

/** Printed ratings of the variant. null: not known. */
export type TubeRatings = {
  readonly maxPlateVoltage: Volts | null
  readonly maxScreenVoltage: Volts | null
  readonly maxPlateDissipation: Watts | null
  /** Printed for a plainer type, and standing in for what this variant's own sheet would say; else absent. */
  readonly standsIn?: string
}

export type Candidate = {
  readonly tubeId: string
  /** The shop's own mark on this one tube. */
  readonly mark: string
  /** The variant as printed, such as "6L6GC". */
  readonly designation: string
  /** The interchangeable family the variant belongs to, such as "6L6". */
  readonly family: string
  readonly base: string
  readonly ratings: TubeRatings
  readonly condition: TubeCondition
  readonly price: Money
  readonly state: TubeState
  /** Latest usable record; null when there is none. */
  readonly test: TubeTest | null
}

/** One section of a twin, at the test point of its record. */
export type SectionFigures = { readonly plateCurrent: Amps; readonly transconductance: Siemens | null }

/** A twin of which both sections were read. */
export type TwinCandidate = Candidate & {
  readonly test: TubeTest
  readonly sections: readonly [SectionFigures, SectionFigures]
  /** What was noted on noise and microphony; left out: nothing. */
  readonly heard?: readonly string[]
  /** Found so when it was tapped. */
  readonly ringsStrongly?: boolean
}

export type SocketDemand = {
  /** Tubes in the set, 1 to 8. */
  readonly count: number
  readonly family: string
  readonly base: string
  /** Two sides of equal number share the work; asks for a side per tube. */
  readonly pushPull: boolean
  /** How the idle of the sockets is set: decides what weighs how much. */
  readonly arrangement: SetArrangement
  /** Plate current each tube should idle at. null: not known. */
  readonly aim: Amps | null
  /** Plate against cathode, highest of the sockets. null: not measured. */
  readonly plateToCathodeVoltage: Volts | null
  /** Screen against cathode, highest of the sockets. null: not measured, or no screen. */
  readonly screenVoltage: Volts | null
  /** Per tube, highest of the sockets, as measured now. null: not measured. */
  readonly idlePlateDissipation: Watts | null
}

export type Yardsticks = {
  readonly plateCurrent: Amps
  /** Highest over lowest of the set, less one. */
  readonly transconductance: Ratio
}

export type MatchLimits = {
  /** Whole days, inclusive. null: any age. */
  readonly maximumTestAgeDays: number | null
  /** Turns a voltage above the printed rating from a refusal into a caution. */
  readonly allowOverPrintedRating: boolean
  /** For the whole set, inclusive. null: none. */
  readonly priceCap: Money | null
  /** Keeps variants of the family apart, so a set carries one designation. */
  readonly oneDesignation: boolean
  readonly yardsticks: Yardsticks
  /** Left out: the usual ones of the arrangement. */
  readonly weights?: MatchWeights
  /** Left out: tubes are compared at their test points. */
  readonly predictions?: Predictions
  /** Left out: readings of different instruments do not compare. */
  readonly carrying?: Carrying
  /** ISO date from which the age of a test is counted. */
  readonly asOf: string
}
