/**
 * Makes room for an edge that the duals undercharge, and keeps all they
 * already hold: the blossoms around one of its ends are opened, that end is
 * lowered and its match undone.
 *
 * A blossom may be opened at any z: lowering all its points by z / 2 leaves
 * the slack of every edge inside as it was and only adds to those outside.
 */
import { type BlossomNodes, NOBODY } from './blossom-nodes'

export function admitEdge(nodes: BlossomNodes, a: number, b: number, weight: number): void {
  const point = nodes.isBlossom(nodes.top(a)) && !nodes.isBlossom(nodes.top(b)) ? b : a
  for (let top = nodes.top(point); nodes.isBlossom(top); top = nodes.top(point)) openEarly(nodes, top)
  const dual = (vertex: number) => nodes.dual(vertex, nodes.top(vertex))
  const excess = dual(a) + dual(b) - weight
  // Opening blossoms may have lowered the end enough.
  if (excess <= 0) return
  release(nodes, point)
  nodes.raiseAll(point, -excess)
}

function release(nodes: BlossomNodes, top: number): void {
  const other = nodes.matchOther[top] as number
  if (other !== NOBODY) nodes.setFree(nodes.top(other))
  nodes.setFree(top)
}

function openEarly(nodes: BlossomNodes, blossom: number): void {
  // Whoever is base is about to be free, so any will do.
  const base = nodes.ringStart[blossom] as number
  nodes.raiseAll(blossom, -(nodes.z[blossom] as number) / 2)
  nodes.open(blossom)
  nodes.matchRing(blossom, base)
  release(nodes, base)
}
