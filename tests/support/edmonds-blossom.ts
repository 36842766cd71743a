/** The npm package edmonds-blossom 1.0.0: matching of the greatest weight, with types. */
import { createRequire } from 'node:module'

export type WeightedEdge = readonly [number, number, number]

/** For each vertex its partner, or -1; a vertex past the last that any edge names is left out. */
export const edmondsBlossom = createRequire(import.meta.url)('edmonds-blossom') as (
  edges: readonly WeightedEdge[],
) => readonly number[]
