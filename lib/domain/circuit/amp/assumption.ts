/**
 * What a circuit rests on that nobody read or wrote down. Each is said beside every result;
 * none is a measurement. Values carry the unit that a sentence would show.
 */
export type Assumption =
  /** Neither open-circuit volts nor source resistance is known: the reservoir is taken to stay. */
  | { readonly code: 'supply-taken-stiff' }
  /** From open-circuit volts and the volts read; what the rest of the amplifier draws is counted in. */
  | { readonly code: 'source-from-sag'; readonly ohms: number }
  /** From open-circuit volts, source resistance and the volts read. */
  | { readonly code: 'rest-from-sag'; readonly milliamps: number }
  /** The noted supply cannot give the volts read: those read are kept. */
  | {
      readonly code: 'supply-facts-contradict'
      readonly openVolts: number
      readonly readVolts: number
    }
  | { readonly code: 'rectifier-taken-solid-state' }
  | { readonly code: 'rectifier-drop-not-known'; readonly designation: string }
  | { readonly code: 'half-primary-not-known'; readonly sockets: readonly string[] }
  | { readonly code: 'sides-not-known'; readonly sockets: readonly string[] }
  | { readonly code: 'screen-feed-taken-own' }
  | { readonly code: 'screen-volts-not-read' }
  /** The whole drop to the screens taken to be made by the screen currents. */
  | { readonly code: 'screen-dropper-from-readings'; readonly ohms: number }
  /** Screens far below or above the reservoir and no dropper known: a supply of their own that stays. */
  | { readonly code: 'screens-taken-stiff'; readonly volts: number }
  | { readonly code: 'screen-facts-contradict'; readonly ohms: number; readonly dropVolts: number }
  | { readonly code: 'tap-taken-middle' }
  | { readonly code: 'screen-resistor-not-known'; readonly sockets: readonly string[] }
  /** Set so that tubes of that type draw, on average, what was read. */
  | {
      readonly code: 'grid-volts-implied'
      readonly volts: number
      readonly plusMinusVolts: number
      readonly sockets: readonly string[]
    }
  | { readonly code: 'grid-volts-from-sheet'; readonly volts: number; readonly sockets: readonly string[] }
  | { readonly code: 'grid-volts-of-others'; readonly volts: number; readonly sockets: readonly string[] }
  | { readonly code: 'grid-taken-at-chassis'; readonly sockets: readonly string[] }
  /** The meter pulls the grid towards chassis through the leak: corrected for. */
  | { readonly code: 'grid-loading-corrected'; readonly percent: number }
  | { readonly code: 'grid-leak-not-known' }
  | { readonly code: 'cathode-resistor-from-readings'; readonly ohms: number; readonly sockets: readonly string[] }
  /** No current was read there: taken to draw as the others. */
  | { readonly code: 'socket-not-read'; readonly sockets: readonly string[] }
  /** A share of the current read was assumed: screen share, equal split, warm copper. */
  | { readonly code: 'current-is-estimate'; readonly sockets: readonly string[] }
  /** Stage follows the mains in proportion, bias supply too. Only said where volts are moved by it. */
  | { readonly code: 'all-follows-mains' }
