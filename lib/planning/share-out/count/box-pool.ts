/**
 * The boxes of all groups (limit-boxes.ts), each once, with the groups that may take sets out of it.
 * Where these are too many for a solver (many circuits, each seeing the same tubes in its own
 * way), those of the narrowest circuits alone, which others can take sets out of as well: then
 * what serves so many jobs is found, but that so many cannot be served is not.
 */

import type { ShareGroup, ShareProblem } from '../share-problem'
import { type LimitBox, limitBoxes, staysWithin } from './limit-boxes'

export type PoolBox = {
  readonly tubes: LimitBox
  /** Groups that may take sets out of it. */
  readonly groups: readonly number[]
}

export type BoxPool = {
  readonly boxes: readonly PoolBox[]
  /** Every set of every group lies in one of its boxes. */
  readonly isComplete: boolean
  /** Tubes that lie in a box of any group. */
  readonly usable: number
}

/** More tubes in a group make too many boxes. */
const MOST_TUBES = 400
/** More places of tubes in boxes than these take the solver too long. */
const MOST_PLACES = 60_000
/** A group that can reach so much of its tubes needs no boxes of its own. */
const ENOUGH = 0.8

/** null: too many tubes. */
export function boxPool({ groups }: ShareProblem, mostPlaces = MOST_PLACES): BoxPool | null {
  if (groups.some(({ index }) => index.size > MOST_TUBES)) return null
  const own = groups.map(limitBoxes)
  const usable = new Set(own.flat(2)).size
  const boxes = allBoxes(own)
  if (placesIn(boxes.map(({ tubes }) => tubes)) <= mostPlaces) return { boxes, isComplete: true, usable }
  return { boxes: narrowest(groups, own, mostPlaces), isComplete: false, usable }
}

const placesIn = (boxes: readonly LimitBox[]): number => boxes.reduce((sum, { length }) => sum + length, 0)

function allBoxes(own: readonly (readonly LimitBox[])[]): PoolBox[] {
  const boxes = new Map<string, { tubes: LimitBox; groups: number[] }>()
  own.forEach((ofGroup, group) => {
    for (const tubes of ofGroup) {
      const key = tubes.join()
      const known = boxes.get(key)
      if (known) known.groups.push(group)
      else boxes.set(key, { tubes, groups: [group] })
    }
  })
  return [...boxes.values()]
}

function narrowest(
  groups: readonly ShareGroup[],
  own: readonly (readonly LimitBox[])[],
  mostPlaces: number,
): PoolBox[] {
  const order = own
    .map((boxes, group) => ({ boxes, group, count: groups[group]?.query.count ?? 0, places: placesIn(boxes) }))
    .sort((a, b) => a.count - b.count || a.places - b.places || a.group - b.group)
  const admits = groups.map(staysWithin)
  const reached = groups.map(() => new Set<number>())
  const pool: PoolBox[] = []
  let room = mostPlaces
  for (const { boxes, group, places } of order) {
    if ((reached[group]?.size ?? 0) >= ENOUGH * new Set(boxes.flat()).size || places > room) continue
    room -= places
    for (const tubes of boxes) {
      const able = admits.flatMap((admitted, at) => (admitted(tubes) ? [at] : []))
      for (const at of able) for (const tube of tubes) reached[at]?.add(tube)
      pool.push({ tubes, groups: able })
    }
  }
  return pool
}
