/** Instruments of the demo bench. One is overdue for calibration, as one always is. */
import type { InstrumentKind } from '@/lib/domain/shop/instrument'
import { type Ohms, ohms } from '@/lib/domain/units'

export type DemoInstrument = {
  readonly name: string
  readonly kind: InstrumentKind
  /** Working days before the day of seeding; the time before that was a year earlier. */
  readonly calibrated: number
  readonly accuracyPercent: number
  readonly accuracyCounts: number
  readonly displayCounts: number
  readonly inputResistance: Ohms
}

const meter = {
  accuracyPercent: 0.5,
  accuracyCounts: 2,
  displayCounts: 6000,
  inputResistance: ohms(10_000_000),
} as const

export const DEMO_INSTRUMENTS = {
  meterA: { ...meter, name: 'Bench meter A', kind: 'meter', calibrated: 82 },
  meterB: {
    ...meter,
    name: 'Handheld meter B',
    kind: 'meter',
    calibrated: 352,
    accuracyPercent: 0.8,
    accuracyCounts: 3,
    displayCounts: 4000,
  },
  tester: { ...meter, name: 'Transconductance tester 1', kind: 'tube tester', calibrated: 161 },
  tracer: { ...meter, name: 'High-voltage tester 2', kind: 'tube tester', calibrated: 52 },
  insulation: { ...meter, name: 'Insulation tester, 500 V', kind: 'insulation tester', calibrated: 114 },
  bond: { ...meter, name: 'Ground bond tester, 10 A', kind: 'earth bond tester', calibrated: 114 },
  leakage: { ...meter, name: 'Leakage clamp', kind: 'other', calibrated: 206 },
} as const satisfies Record<string, DemoInstrument>

export type InstrumentKey = keyof typeof DEMO_INSTRUMENTS
