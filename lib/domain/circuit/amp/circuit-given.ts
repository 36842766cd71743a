/** What the circuit of an output group is made of. */

import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { SupplyFacts } from '@/lib/domain/amp/supply-facts'
import type { BenchShop } from '@/lib/domain/bench/bench-result'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'
import type { TestRecord } from '@/lib/domain/model/individual-tube'

export type CircuitGiven = {
  readonly sheet: AmpSheet
  /** Match group of the output sockets. */
  readonly group: string
  readonly facts: SupplyFacts
  /** Taken with the tubes that the sheet names. */
  readonly set: ReadingSet
  readonly shop: BenchShop
  /** Test records of the very tubes fitted, by socket id; those without are taken as average tubes. */
  readonly records: Readonly<Record<string, readonly TestRecord[]>>
}
