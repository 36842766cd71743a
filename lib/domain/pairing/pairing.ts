import type { Certificate } from './certificate'

export type Pairing = {
  /** For each point its partner, or -1. */
  readonly partner: Int32Array
  /** Sum of distances and of single costs. */
  readonly cost: number
  readonly certificate: Certificate
}
