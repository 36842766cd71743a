import { describe, expect, it } from 'vitest'
import { bestSet } from '@/lib/domain/matching/search/best-set'
import { setIndex } from '@/lib/domain/matching/search/set-index'
import { generator } from '../tubes'
import { judge } from './every-set'
import { randomPoints } from './random-points'

const SCALE = { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 1000 }
const SHAPES = {
  'fine readings, every cost another': { xStep: 1, yStep: 1, costStep: 1, costSteps: 1_000_000 },
  'fine readings, no costs': { xStep: 1, yStep: 1, costStep: 0, costSteps: 1 },
  'readings to 0.1 mA and 0.05 mA/V, four costs': { xStep: 100, yStep: 50, costStep: 100_000, costSteps: 4 },
}

/**
 * Every set that counts no more than `bound`: groups of tubes in which each pair counts no
 * more, as a set never counts less than any pair of it. Rests on nothing in the program but
 * the bound it claims.
 */
function allWithin(points: ReturnType<typeof randomPoints>, count: number, bound: number): number[][] {
  const size = points.x.length
  const counts = (places: readonly number[]) => Number(judge(points, places, { count, scale: SCALE })?.objective)
  const later = Array.from({ length: size }, (_, place) => {
    const near: number[] = []
    for (let other = place + 1; other < size; other += 1) {
      // Cheap first: a current 1 µA apart counts 200 points.
      if (200 * Math.abs((points.x[other] as number) - (points.x[place] as number)) > bound) continue
      if (counts([place, other]) <= bound) near.push(other)
    }
    return near
  })
  const sets: number[][] = []
  const extend = (chosen: readonly number[], open: readonly number[]): void => {
    if (chosen.length === count) {
      if (counts(chosen) <= bound) sets.push([...chosen])
      return
    }
    for (const place of open) {
      const near = new Set(later[place])
      extend(
        [...chosen, place],
        open.filter((other) => near.has(other)),
      )
    }
  }
  for (let place = 0; place < size; place += 1) extend([place], later[place] ?? [])
  return sets
}

describe('1,500 tubes: no set counts less than the one given, and it is the first of those that count as much', () => {
  for (const [name, shape] of Object.entries(SHAPES)) {
    for (const count of [2, 4, 6]) {
      it(`${name}, sets of ${count}`, () => {
        const points = randomPoints(generator(count), { size: 1500, ...shape })
        const best = bestSet(setIndex(points), { count, scale: SCALE })
        const rivals = allWithin(points, count, best?.objective ?? Number.NaN)
        const counts = rivals.map((places) => Number(judge(points, places, { count, scale: SCALE })?.objective))
        expect(counts.length).toBeGreaterThan(0)
        expect(Math.min(...counts)).toBe(best?.objective)
        // Found in dictionary order of places.
        expect(rivals[counts.indexOf(best?.objective ?? Number.NaN)]).toEqual(best?.places)
      })
    }
  }

  for (const [name, shape] of Object.entries(SHAPES)) {
    for (const count of [4, 6]) {
      it(`${name}, sets of ${count} whose sides are to balance`, () => {
        const points = randomPoints(generator(count + 50), { size: 1500, ...shape })
        const query = { count, scale: SCALE, balance: { yard: 5000, weight: 1000 } }
        const best = bestSet(setIndex(points), query)
        const rivals = allWithin(points, count, best?.objective ?? Number.NaN)
        const counts = rivals.map((places) => Number(judge(points, places, query)?.objective))
        expect(Math.min(...counts)).toBe(best?.objective)
        expect(rivals[counts.indexOf(best?.objective ?? Number.NaN)]).toEqual(best?.places)
      })
    }
  }

  it('a thousand tubes with one and the same reading give the eight cheapest, earliest marks first', () => {
    const random = generator(1)
    const size = 1000
    const cost = Int32Array.from({ length: size }, () => 1000 * Math.floor(random() * 8))
    const alike = (value: number) => new Int32Array(size).fill(value)
    const points = { x: alike(70_000), y: alike(6000), cost, price: alike(4000) }
    const cheapest = [...cost.keys()].filter((place) => cost[place] === 0).slice(0, 8)
    expect(bestSet(setIndex(points), { count: 8, scale: SCALE })?.places).toEqual(cheapest)
  })
})
