/**
 * Pairing up against two general-purpose references that share nothing with it: the npm package
 * edmonds-blossom 1.0.0 on the complete graph, and HiGHS 1.15 on the linear program with odd-set
 * cuts (Edmonds, "Maximum matching and a polyhedron with 0,1-vertices", 1965, from memory: with
 * all of them the program's corners are the matchings).
 */
import loadHighs from 'highs'
import { expect, test } from 'vitest'
import { pairPlane } from '@/lib/domain/pairing/pair-plane'
import { distanceIn, type Plane, permittedIn } from '@/lib/domain/pairing/plane'
import { randomPlane } from '@/tests/domain/pairing/random-plane'
import { tubesPlane } from '@/tests/domain/pairing/random-tubes'
import { edmondsBlossom } from '@/tests/support/edmonds-blossom'

type Pair = readonly [number, number, number]

function allPairs(plane: Plane): readonly Pair[] {
  const points = [...plane.x.keys()]
  return points.flatMap((a) =>
    points.filter((b) => a < b && permittedIn(plane, a, b)).map((b) => [a, b, distanceIn(plane, a, b)] as const),
  )
}

/** A pair saves what two singles cost, less its distance: what saves nothing is left out. */
function costByPackage(plane: Plane): number {
  const gains = allPairs(plane).flatMap(([a, b, distance]) => {
    const gain = 2 * plane.singleCost - distance
    return gain > 0 ? [[a, b, gain] as const] : []
  })
  const most = plane.x.length * plane.singleCost
  if (gains.length === 0) return most
  const partner = edmondsBlossom(gains)
  const gainOf = new Map(gains.map(([a, b, gain]) => [`${a}/${b}`, gain]))
  return partner.reduce((cost, b, a) => (a < b ? cost - (gainOf.get(`${a}/${b}`) ?? Number.NaN) : cost), most)
}

test('120 planes of 11 to 60 points and 3 stocks of 150 tubes: the cost is that of edmonds-blossom', () => {
  const planes = Array.from({ length: 120 }, (_, place) => randomPlane(20_000 + place, 60, 11))
  const stocks = [
    tubesPlane(150, { microamps: 1, microsiemens: 1 }, 100_000),
    tubesPlane(149, { microamps: 100, microsiemens: 50 }, 100_000),
    tubesPlane(151, { microamps: 500, microsiemens: 100 }, 20_000),
  ]
  for (const plane of [...planes, ...stocks]) expect(pairPlane(plane)?.cost).toBe(costByPackage(plane))
})

/** Adds each broken odd set found by growing from every point, until the choice is whole. */
async function costByProgram(plane: Plane): Promise<{ readonly cost: number; readonly cuts: number }> {
  const highs = await loadHighs()
  const pairs = allPairs(plane)
  const points = plane.x.length
  const sets: (readonly number[])[] = []
  for (;;) {
    const { cost, chosen } = solve(highs, { plane, pairs, sets })
    if (chosen.every((share) => Math.abs(share - Math.round(share)) < 1e-7))
      return { cost: Math.round(cost), cuts: sets.length }
    const broken = oddSets(points, pairs, chosen)
    if (broken.length === 0) throw new Error('A choice in parts breaks no odd set that was looked for')
    sets.push(...broken)
  }
}

type Program = { readonly plane: Plane; readonly pairs: readonly Pair[]; readonly sets: readonly (readonly number[])[] }

function solve(highs: Awaited<ReturnType<typeof loadHighs>>, { plane, pairs, sets }: Program) {
  const points = plane.x.length
  const model = highs.createModel()
  try {
    model.options.set('output_flag', false)
    const costs = [...pairs.map(([, , distance]) => distance), ...new Array<number>(points).fill(plane.singleCost)]
    for (const cost of costs) model.addCol(cost, 0, 1, { indices: [], values: [] })
    for (let point = 0; point < points; point += 1) {
      const indices = pairs.flatMap(([a, b], place) => (a === point || b === point ? [place] : []))
      model.addRow(1, 1, { indices: [...indices, pairs.length + point], values: new Array(indices.length + 1).fill(1) })
    }
    for (const set of sets) {
      const indices = pairs.flatMap(([a, b], place) => (set.includes(a) && set.includes(b) ? [place] : []))
      model.addRow(-highs.infinity, (set.length - 1) / 2, { indices, values: new Array(indices.length).fill(1) })
    }
    model.run()
    return { cost: model.getObjectiveValue(), chosen: [...model.getSolution().colValue] }
  } finally {
    model.dispose()
  }
}

/** Odd sets that hold more of the choice than they can: groups of points joined by parts of it. */
function oddSets(points: number, pairs: readonly Pair[], chosen: readonly number[]): readonly (readonly number[])[] {
  const parts = pairs.filter((_, place) => (chosen[place] ?? 0) > 1e-7 && (chosen[place] ?? 0) < 1 - 1e-7)
  const group = Array.from({ length: points }, (_, point) => point)
  for (let again = true; again; ) {
    again = false
    for (const [a, b] of parts) {
      const least = Math.min(group[a] as number, group[b] as number)
      again ||= group[a] !== group[b]
      group[a] = least
      group[b] = least
    }
  }
  const found = [...new Set(group)].map((name) => [...group.keys()].filter((point) => group[point] === name))
  return found.filter((set) => {
    const held = pairs.reduce(
      (sum, [a, b], place) => (set.includes(a) && set.includes(b) ? sum + (chosen[place] ?? 0) : sum),
      0,
    )
    return set.length % 2 === 1 && held > (set.length - 1) / 2 + 1e-6
  })
}

test('stocks of 24 to 40 tubes: the cost is that of the linear program with odd-set cuts', async () => {
  let cutsNeeded = 0
  for (const count of [24, 31, 36, 40]) {
    const plane = tubesPlane(count, { microamps: 1, microsiemens: 1 }, 100_000)
    const { cost, cuts } = await costByProgram(plane)
    expect(pairPlane(plane)?.cost).toBe(cost)
    cutsNeeded += cuts
  }
  // Without a cut the program would be a plain assignment, and the test too easy.
  expect(cutsNeeded).toBeGreaterThan(0)
})
