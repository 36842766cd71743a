/**
 * Stocks large enough for strata and lanes, against the plain sweep of tests/bench/support: it
 * knows of neither, takes the tubes in the order of x and looks at every set behind each.
 */
import { describe, expect, it } from 'vitest'
import { bestSet, type SetQuery } from '@/lib/domain/matching/search/best-set'
import { nextSets } from '@/lib/domain/matching/search/next-sets'
import { type SetPoints, setIndex } from '@/lib/domain/matching/search/set-index'
import { plainSweep } from '@/tests/bench/support/plain-sweep'
import { generator } from '../tubes'
import { type PointShape, randomPoints } from './random-points'

const SHAPES: Readonly<Record<string, Omit<PointShape, 'size'>>> = {
  'fine readings, every cost another': { xStep: 1, yStep: 1, costStep: 1, costSteps: 400_000 },
  'fine readings, no costs': { xStep: 1, yStep: 1, costStep: 0, costSteps: 1 },
  'readings to 0.1 mA and 0.05 mA/V, 300 costs': { xStep: 100, yStep: 50, costStep: 2000, costSteps: 300 },
  'readings to 2 mA and 0.2 mA/V, four costs': { xStep: 2000, yStep: 200, costStep: 250_000, costSteps: 4 },
  'readings to 10 mA and 1 mA/V, two costs': { xStep: 10_000, yStep: 1000, costStep: 500_000, costSteps: 2 },
}

const SCALES = [
  { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 500 },
  { xYard: 2000, yYard: 500, xWeight: 200, yWeight: 1000 },
  { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 0 },
] as const

/** The same tubes without those left out, their costs adjusted; and where each stood before. */
function plainly(points: SetPoints, { adjustments, excluded }: Pick<SetQuery, 'adjustments' | 'excluded'>) {
  const places = [...points.x.keys()].filter((place) => excluded?.[place] !== 1)
  const of = (values: Int32Array | Float64Array) => Int32Array.from(places, (place) => values[place] as number)
  const cost = Float64Array.from(places, (place) => (points.cost[place] as number) + (adjustments?.[place] ?? 0))
  return { places, points: { x: of(points.x), y: of(points.y), cost, price: of(points.price) } }
}

function sweptSet(points: SetPoints, query: SetQuery) {
  const plain = plainly(points, query)
  const set = plainSweep(plain.points, query.count, query.scale, Number.POSITIVE_INFINITY)
  return set && { places: set.places.map((place) => plain.places[place]), objective: set.objective }
}

function randomQuery(random: () => number, count: number, size: number): SetQuery {
  const scale = SCALES[Math.floor(random() * SCALES.length)] ?? SCALES[0]
  const part = random() * 0.9
  const excluded = Uint8Array.from({ length: size }, () => (random() < part ? 1 : 0))
  const adjustments = Float64Array.from({ length: size }, () => Math.floor((random() - 0.3) * 300_000))
  return {
    count,
    scale,
    ...(random() < 0.4 ? { excluded } : {}),
    ...(random() < 0.3 ? { adjustments } : {}),
  }
}

describe('the very set of the plain sweep', () => {
  for (const [name, shape] of Object.entries(SHAPES)) {
    it(`60 stocks of 60 to 400 tubes: ${name}`, () => {
      for (let seed = 0; seed < 60; seed += 1) {
        const random = generator(seed + 5000)
        const count = 2 + (seed % 5)
        const size = 60 + Math.floor(random() * (count < 5 ? 340 : 100))
        const points = randomPoints(random, { size, ...shape })
        const query = randomQuery(random, count, size)
        const best = bestSet(setIndex(points), query)
        const ours = best && { places: best.places, objective: best.objective }
        expect({ seed, ours }).toEqual({ seed, ours: sweptSet(points, query) })
      }
    })
  }

  it('set after set at adjusted costs is what asking one by one gives', () => {
    const random = generator(77)
    const points = randomPoints(random, { size: 500, xStep: 100, yStep: 50, costStep: 2000, costSteps: 300 })
    const adjustments = Float64Array.from({ length: 500 }, () => Math.floor((random() - 0.3) * 300_000))
    const query = { count: 4, scale: SCALES[0], adjustments }
    const index = setIndex(points)
    const excluded = new Uint8Array(500)
    for (const set of nextSets(index, query, [], 6)) {
      const { places, objective } = sweptSet(points, { ...query, excluded }) ?? {}
      expect(set).toMatchObject({ places, objective })
      expect(set.cost).toBe(set.places.reduce((sum, place) => sum + (points.cost[place] as number), 0))
      for (const place of set.places) excluded[place] = 1
    }
    expect(excluded.reduce((sum, each) => sum + each, 0)).toBe(24)
  })

  it('of 900 tubes of nine readings and one cost, set after set without those before, when most are gone', () => {
    const size = 900
    const values = (step: number, least: number) =>
      Int32Array.from({ length: size }, (_, at) => least + step * (at % 3))
    const x = Int32Array.from({ length: size }, (_, at) => 70_000 + 1000 * (Math.floor(at / 3) % 3))
    const points = { x, y: values(100, 6000), cost: new Int32Array(size), price: values(0, 4000) }
    const scale = SCALES[0]
    const index = setIndex(points)
    const sets = nextSets(index, { count: 8, scale }, [], 200)
    // A hundred tubes a reading: twelve sets of eight each at no spread, four tubes left of each.
    expect(sets.filter(({ spread }) => spread === 0)).toHaveLength(108)
    expect(sets).toHaveLength(112)
    expect(new Set(sets.flatMap(({ places }) => places)).size).toBe(8 * 112)
    const excluded = new Uint8Array(size)
    for (const { places } of sets.slice(0, 100)) for (const place of places) excluded[place] = 1
    const query = { count: 3, scale, excluded }
    expect(bestSet(index, query)).toMatchObject(sweptSet(points, query) ?? {})
  })
})
