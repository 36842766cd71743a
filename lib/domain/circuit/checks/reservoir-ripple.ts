/**
 * Ripple on the reservoir of a full-wave supply with capacitor input.
 *
 * Between two charging pulses the load takes I for half a mains period:
 *   Vpp = I/(2·f·C),   Vrms = Vpp/(2·√3) for the saw-tooth.
 * Source: Horowitz and Hill, "The Art of Electronics", section on power-supply filtering
 * (from memory). It takes the pulse as infinitely short, so it is an upper estimate, the
 * more so with the source resistance of a tube rectifier. Valid while Vpp is small beside the voltage; `share` says how small.
 */
import { type Amps, type Ratio, ratio, type Volts, volts } from '@/lib/domain/units'

export type RippleCase = {
  readonly current: Amps
  readonly capacitanceFarads: number
  /** Of the mains, not of the ripple: 50 or 60. */
  readonly mainsHertz: number
  readonly reservoir: Volts
}

export type Ripple = { readonly peakToPeak: Volts; readonly rms: Volts; readonly share: Ratio }

export function reservoirRipple({ current, capacitanceFarads, mainsHertz, reservoir }: RippleCase): Ripple {
  for (const [name, value] of Object.entries({ capacitanceFarads, mainsHertz, reservoir })) {
    if (!(value > 0)) throw new Error(`Ripple needs ${name} above zero, got ${value}`)
  }
  const peakToPeak = current / (2 * mainsHertz * capacitanceFarads)
  return {
    peakToPeak: volts(peakToPeak),
    rms: volts(peakToPeak / (2 * Math.sqrt(3))),
    share: ratio(peakToPeak / reservoir),
  }
}
