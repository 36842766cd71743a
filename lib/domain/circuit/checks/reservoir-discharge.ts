/**
 * Discharge of a reservoir capacitor through a resistor, nothing else drawing.
 *
 *   V(t) = V₀·e^(−t/RC),  t = R·C·ln(V₀/V),  E = ½·C·V₀²,  P(0) = V₀²/R.
 * Source: any textbook of circuits, e.g. Horowitz and Hill, "The Art of Electronics",
 * section 1.4 (from memory).
 *
 * A computed time is no proof. Electrolytics are commonly 20 % above their print or
 * more, resistors go open, and dielectric absorption brings volts back: the meter says
 * when it is discharged, and says it again a minute later.
 */
import { fail, ok, type Result } from '@/lib/domain/result'
import { type Ohms, type Seconds, seconds, type Volts, type Watts, watts } from '@/lib/domain/units'

export type Discharge = {
  readonly capacitanceFarads: number
  readonly charged: Volts
  readonly resistance: Ohms
  /** What counts as discharged: above zero, which is never reached. */
  readonly safe: Volts
}

export type DischargeResult = {
  /** Zero when it is below `safe` already. */
  readonly time: Seconds
  readonly energyJoules: number
  /** In the first instant. The resistor needs that pulse and that voltage in its rating. */
  readonly peak: Watts
}

export type DischargeFault =
  | 'capacitance-not-positive'
  | 'resistance-not-positive'
  | 'safe-not-positive'
  | 'charge-negative'

export function reservoirDischarge(given: Discharge): Result<DischargeResult, DischargeFault> {
  const { capacitanceFarads, charged, resistance, safe } = given
  if (!(capacitanceFarads > 0)) return fail('capacitance-not-positive')
  if (!(resistance > 0)) return fail('resistance-not-positive')
  if (!(safe > 0)) return fail('safe-not-positive')
  if (!(charged >= 0)) return fail('charge-negative')
  const time = charged > safe ? resistance * capacitanceFarads * Math.log(charged / safe) : 0
  return ok({
    time: seconds(time),
    energyJoules: 0.5 * capacitanceFarads * charged * charged,
    peak: watts((charged * charged) / resistance),
  })
}
