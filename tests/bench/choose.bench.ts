/**
 * The best 2, 4 and 6 of 100,000 invented tubes of one type (support/invented-stock.ts), by the
 * weights of a push-pull stage with one adjustment: kept index, warm queries. Then 6 of stocks
 * of other shapes, 8 as well, and sets whose sides are to balance.
 *
 * The reference is the plain sweep of tests/bench/support, exact too. It finds the set anew,
 * and it proves that none counts less: "same set" says that both gave the very same tubes. On
 * other shapes it would take minutes; tests/domain/matching/search holds them to it in small.
 * The goal is for one core, so processor time of the process counts, its garbage collection
 * included; the time on the wall stands beside it. Of several rounds the median is taken.
 */
import { performance } from 'node:perf_hooks'
import { USUAL_WEIGHTS } from '@/lib/domain/matching/match-weights'
import { type BestSet, bestSet, type SetQuery } from '@/lib/domain/matching/search/best-set'
import { type SetIndex, setIndex } from '@/lib/domain/matching/search/set-index'
import type { SpreadScale } from '@/lib/domain/matching/search/spread-cost'
import type { Figure } from '@/lib/setup/bench'
import { inventedStock, type StockShape, USUAL_STOCK } from './support/invented-stock'
import { type PlainSet, plainSweep } from './support/plain-sweep'

export const name = 'choose'

const ROUNDS = 7
const GOES = 10
const WEIGHTS = USUAL_WEIGHTS['one-trim']

/** The usual weights of spread, times a part. */
const scaleOf = (part: number): SpreadScale => ({
  xYard: 5000,
  yYard: 1000,
  xWeight: Math.round(1000 * part * WEIGHTS.currentSpread),
  yWeight: Math.round(1000 * part * WEIGHTS.slopeSpread),
})

type Shape = Partial<StockShape> & { readonly spreadPart?: number }

const SHAPES: Readonly<Record<string, Shape>> = {
  'another stock': { seed: 1 },
  'a third stock': { seed: 2 },
  'no tube costs more than another': { free: true },
  'forty clusters': { clusters: 40 },
  'readings to 0.5 mA and 0.05 mA/V, coarse costs': { xStep: 500, yStep: 50, costStep: 10_000 },
  'readings to 1 mA and 0.1 mA/V, very coarse costs': { xStep: 1000, yStep: 100, costStep: 100_000 },
  '3,000 different readings': { distinct: 3000 },
  'spreads count a fifth': { spreadPart: 0.2 },
  'spreads count a twentieth': { spreadPart: 0.05 },
}

type Spent = { readonly core: number; readonly wall: number }

/** Milliseconds of one go; a round takes several, as the processor's clock is coarse. */
function medianOf(work: () => void, rounds: number, goes: number): Spent {
  const spent = Array.from({ length: rounds }, (): Spent => {
    const [began, used] = [performance.now(), process.cpuUsage()]
    for (let go = 0; go < goes; go += 1) work()
    const wall = performance.now() - began
    const { user, system } = process.cpuUsage(used)
    return { core: (user + system) / 1000 / goes, wall: wall / goes }
  })
  const median = (key: keyof Spent) => spent.map((one) => one[key]).toSorted((x, y) => x - y)[Math.floor(rounds / 2)]
  return { core: median('core') ?? Number.NaN, wall: median('wall') ?? Number.NaN }
}

type Queried = Spent & { readonly set: BestSet }

function warm(index: SetIndex, query: SetQuery): Queried {
  for (let go = 0; go < GOES; go += 1) bestSet(index, query)
  const set = bestSet(index, query)
  if (!set) throw new Error(`No set of ${query.count}`)
  return { set, ...medianOf(() => bestSet(index, query), ROUNDS, GOES) }
}

const isSame = (ours: BestSet, theirs: PlainSet | null): boolean =>
  theirs?.objective === ours.objective && theirs.places.every((place, at) => place === ours.places[at])

const MILLISECONDS = { unit: 'ms', better: 'lower' } as const
const sameness = (figure: string, same: boolean): Figure => ({
  figure,
  value: same ? 1 : 0,
  unit: '1 is yes',
  reference: null,
  goal: 1,
  better: 'higher',
})

function figuresFor(count: number): Figure[] {
  const points = inventedStock(count, USUAL_STOCK)
  const scale = scaleOf(1)
  const { set, core, wall } = warm(setIndex(points), { count, scale })
  let theirs = null as PlainSet | null
  const sweep = () => {
    theirs = plainSweep(points, count, scale, Number.POSITIVE_INFINITY)
  }
  const plain = medianOf(sweep, 1, 1)
  const [times, none] = [{ unit: '×', better: 'higher' } as const, { reference: null, goal: null }]
  return [
    { figure: `${count} of 100,000, warm, one core`, value: core, reference: plain.core, goal: 20, ...MILLISECONDS },
    { figure: `${count}: the same on the wall`, value: wall, reference: plain.wall, goal: null, ...MILLISECONDS },
    sameness(`${count}: same set as the plain sweep`, isSame(set, theirs)),
    { figure: `${count}: quicker than the plain sweep`, value: plain.core / core, ...none, ...times },
  ]
}

function shapeFigure(shapeName: string, { spreadPart = 1, ...shape }: Shape): Figure {
  const index = setIndex(inventedStock(6, { ...USUAL_STOCK, ...shape }))
  const { core } = warm(index, { count: 6, scale: scaleOf(spreadPart) })
  return { figure: `6 of 100,000, ${shapeName}`, value: core, reference: null, goal: 20, ...MILLISECONDS }
}

/** Beyond the goal, which is for sets of up to six whose sides weigh nothing. */
function furtherFigures(): Figure[] {
  const scale = scaleOf(1)
  const watched = { reference: null, goal: null, ...MILLISECONDS }
  const eight = warm(setIndex(inventedStock(8, USUAL_STOCK)), { count: 8, scale })
  const balanced = [4, 6, 8].map((count): Figure => {
    const query = { count, scale, balance: { yard: 5000, weight: 500 } }
    const { core } = warm(setIndex(inventedStock(count, USUAL_STOCK)), query)
    return { figure: `${count} of 100,000, sides to balance`, value: core, ...watched }
  })
  return [{ figure: '8 of 100,000', value: eight.core, ...watched }, ...balanced]
}

/** The index, and its layout, which the first query makes: so that query stands with it. */
function buildFigure(): Figure {
  const points = inventedStock(2, USUAL_STOCK)
  const build = medianOf(() => bestSet(setIndex(points), { count: 2, scale: scaleOf(1) }), 5, 2).core
  return {
    figure: 'index of 100,000 tubes and its first query',
    value: build,
    reference: null,
    goal: 300,
    ...MILLISECONDS,
  }
}

export async function run(): Promise<readonly Figure[]> {
  return [
    buildFigure(),
    ...[2, 4, 6].flatMap(figuresFor),
    ...Object.entries(SHAPES).map(([shapeName, shape]) => shapeFigure(shapeName, shape)),
    ...furtherFigures(),
  ]
}
