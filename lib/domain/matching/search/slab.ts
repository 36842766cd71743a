/**
 * Tubes in rising order of transconductance, and where groups of equal
 * readings begin and end.
 */
import type { Point } from './point'

/** Place of the first tube at or above a transconductance. */
export function firstAt(slab: readonly Point[], microsiemens: number): number {
  let low = 0
  let high = slab.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((slab[middle] as Point).microsiemens < microsiemens) low = middle + 1
    else high = middle
  }
  return low
}

export function endOfCurrent(points: readonly Point[], from: number): number {
  let until = from
  while (points[until]?.microamps === points[from]?.microamps && until < points.length) until += 1
  return until
}

export function endOfSlope(slab: readonly Point[], from: number): number {
  return firstAt(slab, (slab[from] as Point).microsiemens + 1)
}

export function insert(slab: Point[], point: Point): void {
  slab.splice(firstAt(slab, point.microsiemens), 0, point)
}
