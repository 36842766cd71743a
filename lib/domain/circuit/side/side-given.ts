/** What the side checks of one amplifier look at. */

import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { SupplyFacts } from '@/lib/domain/amp/supply-facts'
import type { BenchShop } from '@/lib/domain/bench/bench-result'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'

export type SideGiven = {
  readonly sheet: AmpSheet
  readonly facts: SupplyFacts
  /** Null: nothing read yet; what needs readings then cannot be said. */
  readonly set: ReadingSet | null
  readonly shop: BenchShop
  /** Of the output groups for which one could be made; a group without is left to the readings. */
  readonly circuits: readonly AmpCircuit[]
  readonly mainsHertz: 50 | 60
}

/** For an amplifier whose mains frequency nobody noted: 60 Hz where about 100 to 130 V are marked, else 50 Hz. Common practice, no source. */
export const usualMainsHertz = (markedVolts: number): 50 | 60 => (markedVolts < 150 ? 60 : 50)
