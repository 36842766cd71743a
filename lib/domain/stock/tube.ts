/**
 * One stocked tube, known by the shop's own mark on it, and its test records.
 * How it was acquired, its condition, what it tested and what it looks like are
 * kept apart: none of them stands for another.
 */
import type { Day } from '../calendar'
import type { TubeCondition } from '../matching/candidate'
import type { Money } from '../money'
import type { Amps, Siemens, Volts } from '../units'
import type { TubeFurther } from './tube-further'

export type { TubeCondition }

export const TUBE_CONDITIONS = [
  'current-production',
  'new-old-stock-boxed',
  'new-old-stock-loose',
  'used-tested',
  'pull',
  'as-found',
  'reject',
] as const satisfies readonly TubeCondition[]

const CONDITION_WORDS: Readonly<Record<TubeCondition, string>> = {
  'current-production': 'current production',
  'new-old-stock-boxed': 'new old stock, boxed',
  'new-old-stock-loose': 'new old stock, loose',
  'used-tested': 'used, tested',
  pull: 'pull',
  'as-found': 'as found',
  reject: 'reject',
}

export const conditionWord = (condition: TubeCondition): string => CONDITION_WORDS[condition]

export const WHEREABOUTS = ['in-stock', 'fitted', 'sold', 'scrapped'] as const
export type Whereabouts = (typeof WHEREABOUTS)[number]

export const whereaboutsWord = (whereabouts: Whereabouts): string =>
  whereabouts === 'in-stock' ? 'in stock' : whereabouts

/** 'held' by a quote that was sent, 'reserved' by one that was accepted. */
export type TubeHold = '' | 'held' | 'reserved'

export type TubeDetails = {
  /** Letters, digits and hyphens, upper case; unique in the shop. */
  readonly mark: string
  /** As printed on it, "6L6GC"; the handbook may not know it. */
  readonly designation: string
  readonly condition: TubeCondition
  /** Where and how it came: "estate sale, box 4". */
  readonly acquired: string
  /** What it is built like: "black plates, two getters". */
  readonly construction: string
  /** Where it lies in the shop. */
  readonly location: string
  /** Paid for it. Null: not known. */
  readonly cost: Money | null
  /** Asked for it, before tax. */
  readonly price: Money
}

export type Tube = TubeDetails & {
  readonly id: string
  /** Interchange family of the designation, or the folded designation when the handbook does not know it. */
  readonly family: string
  readonly whereabouts: Whereabouts
  /** As written down, even when `heldUntil` has passed: ask `activeHold`. */
  readonly hold: TubeHold
  /** Id of the job. Null when free. */
  readonly heldForJob: string | null
  /** "1047-0". Null when free. */
  readonly heldForJobNumber: string | null
  readonly heldByQuoteId: string | null
  /** Null with a hold: no end. */
  readonly heldUntil: Date | null
  readonly further: TubeFurther
  readonly version: number
  readonly createdAt: Date
}

/** One unit of the tube; a twin has two. Null: not read. */
export type SectionReading = {
  readonly section: 1 | 2
  readonly plateCurrent: Amps | null
  readonly screenCurrent: Amps | null
  readonly transconductance: Siemens | null
}

/** Voltages against cathode. Null: the electrode is not there, or the test stopped before any voltage was set. */
export type TestSetting = {
  readonly plateVoltage: Volts | null
  readonly screenVoltage: Volts | null
  readonly gridVoltage: Volts | null
}

export type TubeTestFacts = TestSetting & {
  readonly instrumentName: string
  /** Section 1 first. */
  readonly sections: readonly SectionReading[]
  readonly shorts: boolean
  /** Heater to cathode; empty: nothing noted. */
  readonly leakage: string
  readonly gas: string
  /** Hum and hiss. */
  readonly noise: string
  /** Null: it was asked for together with noise, which may then tell of it. */
  readonly microphony: string | null
  readonly note: string
}

export type TubeTest = TubeTestFacts & {
  readonly id: string
  readonly testedAt: Date
  readonly testedBy: string
  /** Of the instrument, as it stood at the test. */
  readonly calibratedOn: Day | null
}

/** A tube with the one record that speaks for it: what a list and the choice of a set look at. */
export type StockedTube = {
  readonly tube: Tube
  /** Latest usable record; null when there is none. */
  readonly test: TubeTest | null
  /** A short found at or after that record. Null: none. */
  readonly shortsFoundAt: Date | null
}

/** Which amplifier it sat in, and when. */
export type TubeFitting = {
  readonly id: string
  readonly jobId: string
  readonly jobNumber: string
  readonly ampId: string
  readonly ampName: string
  readonly position: string
  readonly fittedAt: Date
  readonly fittedBy: string
  readonly removedAt: Date | null
  /** Run in this socket. Null: not known. */
  readonly hours: number | null
}

/** The hold as it counts now: one whose last instant lies in the past counts as free. */
export function activeHold({ hold, heldUntil }: Pick<Tube, 'hold' | 'heldUntil'>, now: Date): TubeHold {
  return heldUntil !== null && heldUntil < now ? '' : hold
}
