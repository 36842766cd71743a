/** Made-up tubes of one type, the same for the same seed: about 35 mA and 5.3 mA/V, current and transconductance related. */
import type { Plane } from '@/lib/domain/pairing/plane'
import { type ReadTube, USUAL_SPREAD_RULE } from '@/lib/domain/pairing/spread-rule'
import { tubePlane } from '@/lib/domain/pairing/tube-plane'
import { amps, siemens } from '@/lib/domain/units'

export function generator(seed: number): () => number {
  let state = (seed * 2_654_435_761) >>> 0
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    // The low bits of such a generator repeat soon.
    const mixed = Math.imul(state ^ (state >>> 15), 0x2c1b3c6d)
    return ((mixed ^ (mixed >>> 12)) >>> 0) / 2 ** 32
  }
}

export function gaussian(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
}

/** Steps of the readings, in µA and µS: coarse ones make many tubes alike. */
export type Coarseness = { readonly microamps: number; readonly microsiemens: number }

export function randomTubes(
  seed: number,
  count: number,
  { microamps, microsiemens }: Coarseness = { microamps: 1, microsiemens: 1 },
): readonly ReadTube[] {
  const random = generator(seed)
  return Array.from({ length: count }, (_, place) => {
    const [first, second] = [gaussian(random), gaussian(random)]
    const current = Math.max(5000, Math.round((35_000 + 4500 * first) / microamps) * microamps)
    const slope = 5300 * (1 + 0.08 * (0.6 * first + 0.8 * second))
    return {
      mark: `T-${place + 1}`,
      plateCurrent: amps(current / 1e6),
      transconductance: siemens(Math.max(500, Math.round(slope / microsiemens) * microsiemens) / 1e6),
    }
  })
}

export function tubesPlane(count: number, coarseness: Coarseness, singleCost: number, seed = count): Plane {
  const placed = tubePlane(randomTubes(seed, count, coarseness), { ...USUAL_SPREAD_RULE, singleCost }, 2)
  if (!placed.ok) throw new Error(placed.fault.kind)
  return placed.value.plane
}
