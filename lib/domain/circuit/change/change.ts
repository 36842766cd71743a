/** What is changed in a circuit to see what it then does: every part by itself or together with others. */

import type { IndividualTube } from '@/lib/domain/model/individual-tube'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'

export type ProposedTube =
  /** An average tube of that type. */
  | { readonly kind: 'type'; readonly designation: string }
  /** A tube known by its records; `mark` is the shop's. */
  | {
      readonly kind: 'individual'
      readonly variant: TubeVariant
      readonly tube: IndividualTube
      readonly mark: string
    }

export type ProposedTubes =
  | { readonly all: ProposedTube }
  /** By socket position; sockets left out keep their tube. */
  | { readonly bySocket: Readonly<Record<string, ProposedTube>> }

/** Left out: as it is. Nothing given at all: as it was read. */
export type Change = {
  readonly tubes?: ProposedTubes
  /** At marked mains, of every grid supply of the group: negative. */
  readonly gridVolts?: number
  /** Of every cathode resistor that sets the idle of the group. */
  readonly cathodeOhms?: number
  /** At the wall. Given with `mainsFactor`, the factor holds. */
  readonly wallVolts?: number
  /** 1 is the marked mains voltage. */
  readonly mainsFactor?: number
  /** Designation; '' is solid state. */
  readonly rectifier?: string
  /** Position of a socket that is left empty. */
  readonly pulled?: string
}
