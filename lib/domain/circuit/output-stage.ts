/**
 * The direct-current circuit of an output stage, as an amplifier sheet knows it.
 *
 *   mains → supply (open-circuit volts, source resistance, rectifier tube) → reservoir
 *   reservoir → half primary → plate
 *   reservoir → dropper → screen node → screen resistor → screen
 *   cathode → own sense resistor → shared bias resistor → chassis
 *   grid supply → grid leak → grid
 *
 * All voltages are against chassis. Signal, ripple and capacitors do not appear: this
 * is the idle state, warmed up.
 *
 * The supply is a mean-value model of a full-wave rectifier: the whole direct current
 * flows through one rectifier plate at a time, so the reservoir stands at
 *   E − Rs·I − (I/k)^(2/3),
 * k of one plate. That is exact with a choke first and current that never stops. With a
 * reservoir capacitor first, current flows in short pulses several times the mean, and
 * the formula holds only near the current at which E and Rs were found: take them from
 * two readings of the amp itself (reservoir volts at two currents), not from the winding.
 */
import type { AmplifyingParameters, DiodeParameters } from '@/lib/domain/model/plate-curves'
import type { Amps, Ohms, Ratio, Volts } from '@/lib/domain/units'

export const MOST_TUBES = 8

/** Half of the output transformer primary. A single-ended stage has only 'a'. */
export type PrimarySide = 'a' | 'b'

export type OutputTube = {
  readonly socket: string
  readonly tube: AmplifyingParameters
  readonly side: PrimarySide
  /** Id of a grid supply; null when the grid leak goes to chassis. */
  readonly gridSupply: string | null
  readonly gridLeak: Ohms
  /** Leaves the tube by the grid (gas, leakage), so it lifts the grid. Never negative. */
  readonly reverseGridCurrent: Amps
  /** Zero: none fitted. A triode ignores it. */
  readonly screenResistance: Ohms
  /** This tube's own, between its cathode and the bias resistor or chassis. Zero: none. */
  readonly senseResistance: Ohms
  /** Id of a bias resistor; null when the cathode returns to chassis. */
  readonly biasResistor: string | null
}

export type VoltageRange = { readonly lowest: Volts; readonly highest: Volts }

export type GridSupply = {
  readonly id: string
  /** Negative, at nominal mains. */
  readonly voltage: Volts
  /** What the adjustment can reach; null when there is none. */
  readonly range: VoltageRange | null
}

/** From cathode to chassis, shared by every tube that names it. */
export type BiasResistor = { readonly id: string; readonly resistance: Ohms }

export type ScreenFeed =
  /** Zero resistance: the screens stand on the reservoir. `drawn` flows on from the screen node to the rest of the amp. */
  | { readonly kind: 'dropper'; readonly resistance: Ohms; readonly drawn: Amps }
  /** A supply of the screens' own, at nominal mains. */
  | {
      readonly kind: 'own-supply'
      readonly openCircuit: Volts
      readonly sourceResistance: Ohms
      readonly drawn: Amps
    }
  /** Share of the half primary's resistance between reservoir and tap: 0.4 is a usual ultra-linear tap, 1 the plate itself. */
  | { readonly kind: 'primary-tap'; readonly tap: Ratio }
  /** Each screen through its screen resistor to its own plate: the half primary carries both currents. */
  | { readonly kind: 'triode-strapped' }

export type Supply = {
  /** What the reservoir stands at without load, at nominal mains, before any drop in a rectifier tube. */
  readonly openCircuit: Volts
  readonly sourceResistance: Ohms
  readonly rectifier: DiodeParameters | null
  /** By the rest of the amp, straight from the reservoir. */
  readonly drawn: Amps
}

export type OutputStage = {
  /** One to eight, order kept in the solution. */
  readonly tubes: readonly OutputTube[]
  readonly gridSupplies: readonly GridSupply[]
  readonly biasResistors: readonly BiasResistor[]
  readonly halfPrimary: Readonly<Record<PrimarySide, Ohms>>
  readonly screenFeed: ScreenFeed
  readonly supply: Supply
  /** 1 at the mains voltage at which the voltages above hold. Scales every supply, heaters too. */
  readonly mainsFactor: Ratio
}
