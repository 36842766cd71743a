/**
 * Tubes of one and the same reading stand in for each other: of a set of eight, no more than
 * the first eight by cost, then mark, can be of use. With a limit on what a set may cost to
 * buy, those before a tube count only where they are no dearer to buy.
 */
import type { Running } from './running'

/** Rank from which a tube is left aside: no set asks for as many, some of them left out. */
export const TWINS = 64

const ABOVE_ANY_PLACE = 2 ** 22
const FEW = 32

type Known = { readonly y: Int32Array; readonly groups: Int32Array }

/** By array of x, which all costs laid over it share: for each group its size, then its tubes. */
const known = new WeakMap<Int32Array, Known>()

/** Of each tube among its likes; TWINS for those further back, and for those out (1, by place). */
export function twinRanks(index: Running, out: Uint8Array | null, byPrice: boolean): Uint8Array {
  const { size, place } = index
  const rank = new Uint8Array(size)
  if (out) for (let at = 0; at < size; at += 1) if (out[place[at] as number] === 1) rank[at] = TWINS
  const groups = groupsOf(index)
  for (let at = 0; at < groups.length; at += 1 + (groups[at] as number)) {
    const members = notOut(groups.slice(at + 1, at + 1 + (groups[at] as number)), rank)
    sortByCost(members, index)
    if (byPrice) rankByPrice(members, index, rank)
    else for (let nth = 1; nth < members.length; nth += 1) rank[members[nth] as number] = Math.min(nth, TWINS)
  }
  return rank
}

/** In place. */
function notOut(members: Int32Array, rank: Uint8Array): Int32Array {
  let left = 0
  for (let at = 0; at < members.length; at += 1) {
    if (rank[members[at] as number] === 0) members[left++] = members[at] as number
  }
  return members.subarray(0, left)
}

function rankByPrice(members: Int32Array, { price }: Running, rank: Uint8Array): void {
  for (let nth = 1; nth < members.length; nth += 1) {
    const tube = members[nth] as number
    let before = 0
    for (let at = 0; at < nth && before < TWINS; at += 1) {
      if ((price[members[at] as number] as number) <= (price[tube] as number)) before += 1
    }
    rank[tube] = before
  }
}

function sortByCost(members: Int32Array, index: Running): void {
  if (members.length > FEW) {
    members.sort((a, b) => order(index, a, b))
    return
  }
  for (let at = 1; at < members.length; at += 1) {
    const member = members[at] as number
    let to = at
    for (; to > 0 && order(index, member, members[to - 1] as number) < 0; to -= 1)
      members[to] = members[to - 1] as number
    members[to] = member
  }
}

const order = ({ cost, place }: Running, a: number, b: number): number =>
  (cost[a] as number) - (cost[b] as number) || (place[a] as number) - (place[b] as number)

function groupsOf({ size, x, y }: Running): Int32Array {
  const before = known.get(x)
  if (before && before.y === y) return before.groups
  const groups: number[] = []
  for (let from = 0; from < size; ) {
    let until = from + 1
    while (until < size && x[until] === x[from]) until += 1
    if (until - from > FEW) addManyAlike(groups, y, from, until)
    else if (until - from > 1) addFewAlike(groups, y, from, until)
    from = until
  }
  const listed = Int32Array.from(groups)
  known.set(x, { y, groups: listed })
  return listed
}

/** Of tubes alike in x, numbered from `from` up to `until`: few of them, each held against those after it. */
function addFewAlike(groups: number[], y: Int32Array, from: number, until: number): void {
  for (let first = from; first < until - 1; first += 1) {
    const own = y[first] as number
    if (includes(y, own, from, first)) continue
    const at = groups.length
    for (let tube = first + 1; tube < until; tube += 1) {
      if (y[tube] !== own) continue
      if (groups.length === at) groups.push(0, first)
      groups.push(tube)
    }
    if (groups.length > at) groups[at] = groups.length - at - 1
  }
}

function includes(values: Int32Array, wanted: number, from: number, until: number): boolean {
  for (let at = from; at < until; at += 1) if (values[at] === wanted) return true
  return false
}

/** The same of many, sorted. */
function addManyAlike(groups: number[], y: Int32Array, from: number, until: number): void {
  const keys = new Float64Array(until - from)
  for (let at = from; at < until; at += 1) keys[at - from] = (y[at] as number) * ABOVE_ANY_PLACE + at
  keys.sort()
  for (let first = 0; first < keys.length; ) {
    let next = first + 1
    const own = y[tubeOf(keys[first] as number)]
    while (next < keys.length && y[tubeOf(keys[next] as number)] === own) next += 1
    if (next - first > 1) {
      groups.push(next - first)
      for (let at = first; at < next; at += 1) groups.push(tubeOf(keys[at] as number))
    }
    first = next
  }
}

const tubeOf = (key: number): number => key % ABOVE_ANY_PLACE
