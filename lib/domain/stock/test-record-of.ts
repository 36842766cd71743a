/**
 * A test of a stocked tube as the model takes it: the test point, and each figure with its
 * standard uncertainty.
 *
 * What a tester is good for is not written down with a test, so it is taken as usual for
 * service testers (common practice, no source): plate current and screen current ± 4 %,
 * transconductance ± 10 %, both 95 %. Section 1 alone speaks, as in the choice of a set.
 *
 * A reading carried over to another tester has that tester's own error, which it now shares
 * with what was read there, and the doubt of the correction beside it. Which of two testers is
 * the truer nobody has measured, so no correction takes a tester's own error away.
 */
import type { Measured, TestRecord } from '@/lib/domain/model/individual-tube'
import type { TypeModel } from '@/lib/domain/model/type-model'
import { type Amps, amps, type Siemens, siemens, volts } from '@/lib/domain/units'
import type { TubeTest } from './tube'

/** As a share of the figure: half of the 95 % band. */
const STANDARD = { current: 0.02, transconductance: 0.05 } as const

/** `half`: of the 95 % band that carrying put on it, a share. */
const measuredAmps = (value: Amps, half = 0): Measured<Amps> => ({
  value,
  standard: amps(Math.hypot(STANDARD.current, half / 2) * value),
})
const measuredSiemens = (value: Siemens, half = 0): Measured<Siemens> => ({
  value,
  standard: siemens(Math.hypot(STANDARD.transconductance, half / 2) * value),
})

export type TestReadings = Pick<TubeTest, 'sections' | 'plateVoltage' | 'gridVoltage' | 'screenVoltage' | 'shorts'> & {
  /** Halves of the 95 % bands that carrying put on the figures, as shares. Left out: as read. */
  readonly carried?: { readonly current: number; readonly transconductance: number }
}

/** Null: the test tells nothing of the tube's strength, or found a short. */
export function testRecordOf(test: TestReadings): TestRecord | null {
  const reading = test.sections[0]
  const { plateVoltage, gridVoltage, screenVoltage, shorts, carried } = test
  if (shorts || !reading || !reading.plateCurrent || plateVoltage === null || gridVoltage === null) return null
  const { plateCurrent, transconductance, screenCurrent } = reading
  return {
    point: { plateToCathode: plateVoltage, screenToCathode: screenVoltage ?? volts(0), gridToCathode: gridVoltage },
    plateCurrent: measuredAmps(plateCurrent, carried?.current),
    transconductance: transconductance ? measuredSiemens(transconductance, carried?.transconductance) : null,
    screenCurrent: screenCurrent ? measuredAmps(screenCurrent) : null,
  }
}

/** As the individual tube has it: screen current is printed, and met by the curves, no better than that. */
const SCREEN_SHARE = 0.35

const widened = <Unit extends number>({ value, standard }: Measured<Unit>, share: number): Measured<Unit> => ({
  value,
  standard: Math.hypot(standard, share * value) as Unit,
})

/**
 * The record as it speaks of a socket far from its test point: there the curves add their own
 * error, so that a difference within it is not taken for another tube. Its transconductance
 * is left to the test point: how the curves' slope errs on the way is not known.
 */
export const carriedRecord = (
  { point, plateCurrent, screenCurrent }: TestRecord,
  { share }: TypeModel,
): TestRecord => ({
  point,
  plateCurrent: widened(plateCurrent, share),
  transconductance: null,
  screenCurrent: screenCurrent && widened(screenCurrent, SCREEN_SHARE),
})
