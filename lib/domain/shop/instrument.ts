/**
 * An instrument of the bench under the shop's own name for it. Accuracy and
 * input resistance describe a meter; readings are computed from them.
 */
import type { Day } from '@/lib/domain/calendar'
import type { Ohms } from '@/lib/domain/units'

export const INSTRUMENT_KINDS = ['meter', 'tube tester', 'insulation tester', 'earth bond tester', 'other'] as const
export type InstrumentKind = (typeof INSTRUMENT_KINDS)[number]

export type InstrumentDetails = {
  readonly name: string
  readonly kind: InstrumentKind
  /** Null when it was never calibrated, or nobody knows. */
  readonly calibratedOn: Day | null
  /** DC volts, ± percent of the reading: 0.5 is 0.5 %. */
  readonly accuracyPercent: number
  /** ± of the last digit. */
  readonly accuracyCounts: number
  /** 6000 for a display that goes to 5999. */
  readonly displayCounts: number
  readonly inputResistance: Ohms
  /** False once it is retired. */
  readonly active: boolean
}

export type Instrument = InstrumentDetails & { readonly id: string; readonly version: number }
