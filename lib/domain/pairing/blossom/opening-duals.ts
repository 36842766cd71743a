/**
 * Duals to begin with, and the pairs and singles they make tight: each point
 * takes half of its shortest edge, then in turn all the room its edges leave.
 */
import type { BlossomNodes } from './blossom-nodes'
import type { Neighbours } from './neighbours'

/** `ceiling`: twice the cost of a single. */
export function openingDuals(nodes: BlossomNodes, graph: Neighbours, ceiling: number): void {
  for (let point = 0; point < nodes.count; point += 1) nodes.setDual(point, halfOfShortest(graph, point, ceiling))
  for (let point = 0; point < nodes.count; point += 1) {
    if (nodes.isFree(point)) takeRoom(nodes, graph, point, ceiling)
  }
}

function halfOfShortest({ start, weight }: Neighbours, point: number, ceiling: number): number {
  let least = 2 * ceiling
  for (let edge = start[point] as number; edge < (start[point + 1] as number); edge += 1) {
    least = Math.min(least, weight[edge] as number)
  }
  return least / 2
}

function takeRoom(nodes: BlossomNodes, { start, to, weight }: Neighbours, point: number, ceiling: number): void {
  let room = ceiling
  for (let edge = start[point] as number; edge < (start[point + 1] as number); edge += 1) {
    room = Math.min(room, (weight[edge] as number) - dualOf(nodes, to[edge] as number))
  }
  nodes.setDual(point, room)
  for (let edge = start[point] as number; edge < (start[point + 1] as number); edge += 1) {
    const other = to[edge] as number
    if (!nodes.isFree(other) || room + dualOf(nodes, other) !== weight[edge]) continue
    nodes.match(point, point, other, other)
    return
  }
  if (room === ceiling) nodes.matchOwn[point] = point
}

/** No blossom is closed yet. */
const dualOf = (nodes: BlossomNodes, point: number): number => nodes.dual(point, point)
