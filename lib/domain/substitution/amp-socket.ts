/**
 * A socket of a real amplifier as a substitute would meet it: what it was made for, what
 * was measured there, and what the chassis has to give. Null means not known; a check that
 * needs it then says so.
 */
import type { IdleWindow } from '../bias/idle-reading'
import type { TubeCatalogue } from '../tube/tube-catalogue'
import type { TubeVariant } from '../tube/tube-variant'
import type { Amps, Ohms, Volts } from '../units'
import type { Words } from '../words'

export type SocketBias =
  /** `coldest` and `hottest`: what the adjustment of the amplifier reaches, both negative. */
  | {
      readonly kind: 'grid-supplied'
      readonly now: Volts | null
      readonly coldest: Volts | null
      readonly hottest: Volts | null
    }
  | { readonly kind: 'cathode-resistor'; readonly resistance: Ohms | null; readonly sharedBy: number }

export type AmpSocket = {
  readonly position: string
  /** What the socket is wired for: the type on the sheet. */
  readonly made: TubeVariant
  /** Sockets of the same group: all are changed together. */
  readonly count: number
  readonly plateToCathode: Volts | null
  readonly screenToCathode: Volts | null
  /** Null for sockets without one, such as a rectifier's. */
  readonly bias: SocketBias | null
  readonly window: IdleWindow | null
  readonly gridLeak: Ohms | null
  /** Plate to plate, or of the whole single-ended primary. */
  readonly plateLoad: Ohms | null
  /** Current the heater winding of this socket may give, and what all on it draw now. */
  readonly heaterWinding: { readonly limit: Amps; readonly drawn: Amps } | null
  readonly reservoirMicrofarads: number | null
  /** Direct current through the rectifier, all plates and screens together. */
  readonly supplyCurrent: Amps | null
}

export type SubstitutionRules = {
  readonly catalogue: TubeCatalogue
  readonly words: Words
  /** Voltages above the printed rating are a caution instead of a refusal. */
  readonly allowOverPrintedRating: boolean
}
