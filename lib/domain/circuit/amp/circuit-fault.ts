/** Why no circuit can be made of a sheet and its readings. */

import type { IdleFault } from '@/lib/domain/bias/idle-fault'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'

export type CircuitFault =
  | { readonly code: 'no-output-socket'; readonly group: string }
  | { readonly code: 'no-current-read'; readonly group: string }
  | { readonly code: 'type-not-noted'; readonly socket: string }
  | { readonly code: 'type-not-known'; readonly socket: string; readonly designation: string }
  | { readonly code: 'no-curves'; readonly socket: string; readonly designation: string }
  | { readonly code: 'bias-kind-not-noted'; readonly socket: string }
  | { readonly code: 'cathode-resistor-not-known'; readonly socket: string }
  | { readonly code: 'mains-not-known' }
  /** The readings of that socket cannot be true together. */
  | { readonly code: 'readings-refused'; readonly socket: string; readonly fault: IdleFault }
  /** No current at all: there is nothing to make a working tube's circuit of. */
  | { readonly code: 'socket-dead'; readonly socket: string; readonly milliamps: number }
  /** At the volts there, tubes of this type draw something altogether different. */
  | {
      readonly code: 'socket-unlike-type'
      readonly socket: string
      readonly designation: string
      readonly readMilliamps: number
      readonly typeMilliamps: number
    }
  /** No grid volts make that type draw what was read. */
  | { readonly code: 'grid-volts-not-found'; readonly socket: string; readonly milliamps: number }
  | { readonly code: 'no-solution'; readonly fault: SolveFault }
