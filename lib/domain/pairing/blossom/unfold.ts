/** What the nodes say about the points at the end: partners, and the duals as a certificate. */
import type { Certificate } from '../certificate'
import { type BlossomNodes, NOBODY } from './blossom-nodes'

/** Opens no blossom: matches are handed down, duals stay. Outermost blossoms first. */
export function partnersOf(nodes: BlossomNodes): Int32Array {
  for (const blossom of blossomsOf(nodes)) {
    nodes.matchRing(blossom, nodes.memberWith(blossom, nodes.matchOwn[blossom] as number))
  }
  return nodes.matchOther.slice(0, nodes.count)
}

export function certificateOf(nodes: BlossomNodes): Certificate {
  const blossoms = blossomsOf(nodes)
  const place = new Map(blossoms.map((blossom, index) => [blossom, index]))
  const around = (node: number) => place.get(nodes.up[node] as number) ?? NOBODY
  const points = Array.from({ length: nodes.count }, (_, point) => point)
  return {
    pointDuals: Float64Array.from(points, (point) => nodes.dual(point, nodes.top(point))),
    blossomDuals: Float64Array.from(blossoms, (blossom) => nodes.z[blossom] as number),
    around: Int32Array.from([...points, ...blossoms], around),
  }
}

/** Each after the one around it. */
function blossomsOf(nodes: BlossomNodes): number[] {
  const found: number[] = []
  const seen = new Set<number>()
  for (let point = 0; point < nodes.count; point += 1) {
    const climb: number[] = []
    for (let node = nodes.up[point] as number; node !== NOBODY && !seen.has(node); node = nodes.up[node] as number) {
      climb.push(node)
      seen.add(node)
    }
    found.push(...climb.reverse())
  }
  return found
}
