/**
 * What the choice of a matched set answers: the best set by the weights, three ready-made
 * ones (safe working, closest match, best value), the next ones, and why every other tube was
 * left out.
 * Codes carry their figures; the sentences are in matching-text.
 */
import type { Money } from '../money'
import type { Amps, Ratio, Siemens, Volts, Watts } from '../units'
import type { Candidate, CarryRate, TestPoint, TubeTest, Yardsticks } from './candidate'
import type { MarginCode } from './margin-code'
import type { MatchWeights } from './match-weights'
import type { PredictedTube } from './predicted-tube'

export type ExclusionReason =
  | { readonly code: 'wrong-type'; readonly family: string; readonly wanted: string }
  | { readonly code: 'wrong-base'; readonly base: string; readonly wanted: string }
  | { readonly code: 'reserved'; readonly holder: string }
  | { readonly code: 'fitted'; readonly place: string }
  | { readonly code: 'gone'; readonly cause: string }
  | { readonly code: 'condition-reject' }
  | { readonly code: 'untested' }
  | { readonly code: 'shorted'; readonly testedAt: string }
  | { readonly code: 'dead'; readonly plateCurrent: Amps; readonly transconductance: Siemens | null }
  | {
      readonly code: 'test-too-old'
      readonly testedAt: string
      readonly ageDays: number
      readonly maximumDays: number
    }
  | { readonly code: 'test-in-future'; readonly testedAt: string; readonly asOf: string }
  | {
      readonly code: 'plate-voltage-over-rating' | 'screen-voltage-over-rating'
      readonly designation: string
      readonly voltage: Volts
      readonly rating: Volts
    }
  | {
      readonly code: 'idle-over-dissipation'
      readonly designation: string
      readonly dissipation: Watts
      readonly rating: Watts
    }
  /** It would idle there above its rating, and nothing trims it. */
  | {
      readonly code: 'predicted-over-dissipation'
      readonly designation: string
      readonly dissipation: Watts
      readonly rating: Watts
    }
  /** What it would do there cannot be said; `why` is a whole sentence. */
  | { readonly code: 'cannot-say'; readonly why: string }
  | { readonly code: 'over-price-cap'; readonly price: Money; readonly cap: Money }
  /** The four below: a good tube, not comparable with the closest set and in no other set shown. */
  | { readonly code: 'other-test-point'; readonly testPoint: TestPoint; readonly setTestPoint: TestPoint }
  | {
      readonly code: 'other-instrument'
      readonly instrument: string
      readonly setInstrument: string
      /** What is not known between the two: any correction, or that of transconductance. */
      readonly lacks: 'any' | 'transconductance'
    }
  | { readonly code: 'other-designation'; readonly designation: string; readonly setDesignation: string }
  | { readonly code: 'transconductance-differs'; readonly measured: boolean }

export type ExclusionCode = ExclusionReason['code']

/** On one tube that stays in the running. */
export type TubeCaution =
  | {
      readonly code: 'plate-voltage-over-rating' | 'screen-voltage-over-rating'
      readonly designation: string
      readonly voltage: Volts
      readonly rating: Volts
    }
  | {
      readonly code: 'rating-not-known'
      readonly designation: string
      readonly of: 'plate-voltage' | 'screen-voltage' | 'plate-dissipation'
    }
  /** `printed` is the heading of the sheet whose ratings were checked. */
  | { readonly code: 'rating-stands-in'; readonly designation: string; readonly printed: string }
  | { readonly code: 'leakage-noted'; readonly note: string }

export type SetCaution =
  | { readonly code: 'transconductance-not-measured' }
  | { readonly code: 'mixed-designations'; readonly designations: readonly string[] }
  /** Predicted well outside the printed rows of their types. */
  | { readonly code: 'extrapolated'; readonly marks: readonly string[] }
  /** Each is predicted among its like, which on one resistor for all hides how they differ. */
  | { readonly code: 'shared-cathode' }
  /** Predicted though it was never read of these. */
  | { readonly code: 'transconductance-of-type'; readonly marks: readonly string[] }
  /** As the bias stands; the highest of them. */
  | {
      readonly code: 'over-dissipation-now'
      readonly marks: readonly string[]
      readonly dissipation: Watts
      readonly rating: Watts
    }

/** On the whole proposal: a limit that could not be checked. */
export type ProposalCaution = {
  readonly code: 'plate-voltage-not-measured' | 'screen-voltage-not-measured' | 'idle-not-measured'
}

/** A candidate that passed every limit, so its test is there. */
export type TestedCandidate = Candidate & { readonly test: TubeTest }

export type Side = 'A' | 'B'

export type SetTube = {
  readonly candidate: TestedCandidate
  readonly cautions: readonly TubeCaution[]
  /** null unless the sockets are push-pull and the number is even. */
  readonly side: Side | null
  /** null: compared by its reading at the test point. */
  readonly predicted: PredictedTube | null
}

/** Plate current summed over each side: at the test point, or as predicted. */
export type Arrangement = {
  readonly sideA: Amps
  readonly sideB: Amps
  readonly difference: Amps
}

export type Spreads = {
  /** Highest less lowest. */
  readonly plateCurrent: Amps
  /** Highest less lowest, over lowest. null: not measured. */
  readonly transconductance: Ratio | null
}

/**
 * `current-only`: current within its yardstick, transconductance not measured. `uncertain`:
 * within both as predicted or as carried over, but with the doubt of the difference no longer.
 */
export type MatchGrade = 'both' | 'current-only' | 'uncertain' | 'outside'

/** This set less the best one; positive is wider or dearer. */
export type LossAgainstBest = {
  readonly plateCurrent: Amps
  readonly transconductance: Ratio | null
  readonly price: Money
}

export type SetOption = {
  /** The same tubes give the same key. */
  readonly key: string
  /** Side A first, then side B; without sides, marks in natural order. */
  readonly tubes: readonly SetTube[]
  /** Compared by what the tubes would do in the amplifier, so the two below are only those of the first. */
  readonly predicted: boolean
  readonly instrument: string
  /** The nominal point of the group; each tube lies within the tolerance of it. */
  readonly testPoint: TestPoint
  readonly spreads: Spreads
  /** Yardsticks of spread added up with their weights: 0 is identical, each whole 1 is one yardstick. */
  readonly score: number
  readonly price: Money
  readonly match: MatchGrade
  /** Half of the 95 % band of a difference of plate currents within it. null: neither predicted nor carried from different instruments, or not to be told. */
  readonly doubt: Amps | null
  /** The same of transconductances compared at the test point, as a share. null: not carried from different instruments. */
  readonly slopeDoubt: Ratio | null
  readonly cautions: readonly SetCaution[]
  readonly arrangement: Arrangement | null
  /** null for the best set itself. */
  readonly lost: LossAgainstBest | null
}

/**
 * `test-point`: the usable tubes were tested at different points or on different instruments.
 * `correction`: nothing is known between the instruments they were tested on.
 */
export type RelaxedLimit =
  | 'test-age'
  | 'printed-rating'
  | 'idle-dissipation'
  | 'untested'
  | 'reserved'
  | 'test-point'
  | 'correction'
  | 'price-cap'

/** What dropping one limit alone would do, all others kept. */
export type Relaxation = {
  readonly limit: RelaxedLimit
  /** Tubes that this limit alone keeps out. For the test point and the price cap: all that are good but for it. */
  readonly tubes: number
  /** At least so many sets that share no tube. For those to be tested (again): if they all test alike. */
  readonly sets: number
  /** Test age: days at which the first set appears. */
  readonly neededDays: number | null
  /** Price cap: price of the cheapest set. */
  readonly neededPrice: Money | null
}

export type Exclusion = {
  readonly candidate: Candidate
  readonly reasons: readonly ExclusionReason[]
}

export type LeftOut = {
  readonly tubes: number
  /** Most tubes first; a tube counts with each of its reasons. */
  readonly byReason: readonly { readonly code: ExclusionCode; readonly tubes: number }[]
}

export type Proposal = {
  /** By the weights. null when no set is possible; `relax` then says what would help. */
  readonly best: SetOption | null
  /** Least spread (and difference of parallel sides), whatever it costs. This and the two below may be one and the same set (same key). */
  readonly closest: SetOption | null
  /** Best of those that keep every limit with a margin. */
  readonly safe: SetOption | null
  /** Cheapest within the yardsticks: the best value. */
  readonly leastPrice: SetOption | null
  /** How many tubes break each margin; empty when there is a safe set. */
  readonly unsafe: readonly { readonly code: MarginCode; readonly tubes: number }[]
  /** Up to three, best first, sharing no tube with any set before. */
  readonly next: readonly SetOption[]
  /** Tubes that passed every limit, before they were grouped by test point. */
  readonly usable: number
  /** The first of those in no set shown that could not stand in one, as many as were asked for. */
  readonly excluded: readonly Exclusion[]
  /** All of them. */
  readonly leftOut: LeftOut
  /** Most sets first. Empty when a set was found. */
  readonly relax: readonly Relaxation[]
  readonly cautions: readonly ProposalCaution[]
  readonly yardsticks: Yardsticks
  readonly weights: MatchWeights
}

/** What a match that was predicted rests on. */
export type PredictedMatch = {
  /** ISO date of the amplifier's readings. */
  readonly readOn: string
  /** Lowest and highest plate current predicted, and the widest half of a 95 % band. */
  readonly lowest: Amps
  readonly highest: Amps
  readonly plusMinus: Amps
  /** Of a difference, half of its band. null: one alone, or not to be told. */
  readonly apartPlusMinus: Amps | null
  readonly instruments: readonly string[]
}

/** Tubes of a set whose readings were carried over to the instrument the set is stated on. */
export type CarriedMatch = {
  readonly marks: readonly string[]
  /** Read on it. */
  readonly from: string
  readonly current: CarryRate
  /** null: transconductance was not read. */
  readonly slope: CarryRate | null
}

/** Without these a claimed match is void (common practice, no source). */
export type MatchStatement = {
  /** ISO dates; the same when all were tested on one day. */
  readonly firstTested: string
  readonly lastTested: string
  readonly instrument: string
  readonly testPoint: TestPoint
  readonly spreads: Spreads
  readonly yardsticks: Yardsticks
  readonly match: MatchGrade
  /** Left out: the match holds at the test point. Given: in the amplifier, whatever the test points were. */
  readonly predicted?: PredictedMatch
  /** Left out: all are as read. */
  readonly carried?: readonly CarriedMatch[]
  /** Of a difference at the test point, halves of the 95 % bands. Left out: all were read, or carried, alike. */
  readonly apart?: { readonly plateCurrent: Amps; readonly transconductance: Ratio | null }
}
