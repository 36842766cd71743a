/**
 * The pairing of least cost over the complete graph, exactly.
 *
 * It is found on near pairs first. Then every permitted pair is held against
 * the duals; those that are undercharged join the graph and the search goes
 * on from where it stands, until no pair is missing. The duals then prove it.
 */

import { admitEdge } from './blossom/admit-edge'
import { BlossomNodes, NOBODY } from './blossom/blossom-nodes'
import { type EdgeList, neighboursOf } from './blossom/neighbours'
import { openingDuals } from './blossom/opening-duals'
import { TreeGrowth } from './blossom/tree-growth'
import { certificateOf, partnersOf } from './blossom/unfold'
import { KdTree } from './kd-tree'
import { missingPairs } from './missing-pairs'
import { nearPairs } from './near-pairs'
import type { Pairing } from './pairing'
import { assertPlane, distanceIn, type Plane } from './plane'

/** Nearest places each place is joined to at first. */
const NEIGHBOURS = 8

export type PairingRound = { readonly round: number; readonly edges: number; readonly missing: number }

/** Told after each round; returns false to stop. */
export type Watch = (round: PairingRound) => boolean

/** null when the watch stopped it. */
export function pairPlane(plane: Plane, watch: Watch = () => true): Pairing | null {
  assertPlane(plane)
  const search = new PairSearch(plane)
  const tree = new KdTree(plane)
  let edges = nearPairs(plane, NEIGHBOURS)
  for (let round = 1; ; round += 1) {
    search.solve(edges)
    const certificate = certificateOf(search.nodes)
    const missing = missingPairs(plane, tree, certificate)
    const found = missing.from.length
    if (!watch({ round, edges: edges.from.length, missing: found })) return null
    if (found === 0) return pairing(plane, search.nodes, certificate)
    search.admit(missing)
    edges = { from: edges.from.concat(missing.from), to: edges.to.concat(missing.to) }
  }
}

/** On the edges given alone; its certificate holds for these only. */
export function pairOnEdges(plane: Plane, edges: EdgeList): Pairing {
  const search = new PairSearch(plane)
  search.solve(edges)
  return pairing(plane, search.nodes, certificateOf(search.nodes))
}

class PairSearch {
  readonly nodes: BlossomNodes
  private opened = false

  constructor(private readonly plane: Plane) {
    this.nodes = new BlossomNodes(plane.x.length)
  }

  solve(edges: EdgeList): void {
    const { nodes, plane } = this
    const graph = neighboursOf(nodes.count, edges, (a, b) => distanceIn(plane, a, b))
    const ceiling = 2 * plane.singleCost
    if (!this.opened) openingDuals(nodes, graph, ceiling)
    this.opened = true
    const growth = new TreeGrowth(nodes, graph, ceiling)
    for (let point = 0; point < nodes.count; point += 1) {
      const top = nodes.top(point)
      if (nodes.isFree(top)) growth.growFrom(top)
    }
  }

  admit({ from, to }: EdgeList): void {
    from.forEach((a, place) => {
      const b = to[place] as number
      admitEdge(this.nodes, a, b, 2 * distanceIn(this.plane, a, b))
    })
  }
}

function pairing(plane: Plane, nodes: BlossomNodes, certificate: Pairing['certificate']): Pairing {
  const partner = partnersOf(nodes)
  const cost = partner.reduce((sum, other, point) => {
    if (other === NOBODY) return sum + plane.singleCost
    return point < other ? sum + distanceIn(plane, point, other) : sum
  }, 0)
  return { partner, cost, certificate }
}
