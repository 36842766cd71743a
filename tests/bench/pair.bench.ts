/**
 * Pairing up a stock. Against the npm package edmonds-blossom on the same near pairs in the same
 * run, where both must find the same cost; then the complete graph, each pairing held against
 * its proof by the independent check, whose time counts. Seconds are those of a person who waits, on
 * the wall.
 */
import { performance } from 'node:perf_hooks'
import type { EdgeList } from '@/lib/domain/pairing/blossom/neighbours'
import { checkCertificate } from '@/lib/domain/pairing/check/check-certificate'
import { nearPairs } from '@/lib/domain/pairing/near-pairs'
import { pairOnEdges, pairPlane } from '@/lib/domain/pairing/pair-plane'
import { distanceIn, type Plane } from '@/lib/domain/pairing/plane'
import type { Figure } from '@/lib/setup/bench'
import { tubesPlane } from '@/tests/domain/pairing/random-tubes'
import { edmondsBlossom } from '@/tests/support/edmonds-blossom'

export const name = 'pair'

const NEIGHBOURS = 8
const ROUNDS = 5
/** As read: to 0.1 mA and 0.05 mA/V, so that many tubes are alike. */
const COARSE = { microamps: 100, microsiemens: 50 }
const FINE = { microamps: 1, microsiemens: 1 }
const SINGLE = 100_000

const stock = (count: number, coarseness = FINE): Plane => tubesPlane(count, coarseness, SINGLE)

function milliseconds(work: () => void): number {
  const began = performance.now()
  work()
  return performance.now() - began
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN

function costByPackage(plane: Plane, { from, to }: EdgeList): number {
  const gains = from.flatMap((a, place) => {
    const gain = 2 * SINGLE - distanceIn(plane, a, to[place] as number)
    return gain > 0 ? [[a, to[place] as number, gain] as const] : []
  })
  return edmondsBlossom(gains).reduce(
    (cost, b, a) => (a < b ? cost + distanceIn(plane, a, b) - 2 * SINGLE : cost),
    plane.x.length * SINGLE,
  )
}

function againstPackage(count: number, goal: number): readonly Figure[] {
  const plane = stock(count)
  const edges = nearPairs(plane, NEIGHBOURS)
  const ours = median(Array.from({ length: ROUNDS }, () => milliseconds(() => pairOnEdges(plane, edges))))
  let cost = 0
  const theirs = milliseconds(() => {
    cost = costByPackage(plane, edges)
  })
  if (cost !== pairOnEdges(plane, edges).cost) throw new Error(`${count} tubes: ${cost} by the package, not ours`)
  const figure = `${count} tubes, near pairs`
  return [
    { figure, value: ours, unit: 'ms', reference: theirs, goal: null, better: 'lower' },
    { figure: `${figure}, quicker`, value: theirs / ours, unit: '×', reference: null, goal, better: 'higher' },
  ]
}

function complete(figure: string, plane: Plane, goal: number | null): Figure {
  const value = milliseconds(() => {
    const pairing = pairPlane(plane)
    const fault = pairing ? checkCertificate(plane, pairing) : 'stopped'
    if (fault) throw new Error(`${figure}: ${fault}`)
  })
  return { figure, value: value / 1000, unit: 's', reference: null, goal, better: 'lower' }
}

export async function run(): Promise<readonly Figure[]> {
  for (let warm = 0; warm < 5; warm += 1) pairPlane(stock(500))
  return [
    ...againstPackage(1000, 25),
    ...againstPackage(3000, 10),
    complete('10000 tubes, all pairs, proved', stock(10_000), 5),
    complete('10000 tubes as read, all pairs, proved', stock(10_000, COARSE), 5),
    complete('10001 tubes, as many pairs as can be, proved', tubesPlane(10_001, FINE, 2_000_000_000), 5),
    // The goal is that it ends and its proof holds.
    complete('30000 tubes, all pairs, proved', stock(30_000), null),
    complete('100000 tubes, all pairs, proved', stock(100_000), 60),
    complete('100000 tubes as read, all pairs, proved', stock(100_000, COARSE), 60),
  ]
}
