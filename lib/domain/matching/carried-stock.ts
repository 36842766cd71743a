/**
 * A stock with its readings carried over to one instrument, as far as corrections are known.
 *
 * That instrument is the one asked for, else the one that most tubes of the stock were read
 * on, reserved ones counting too, so that a hold that ends changes nothing; of as many the
 * earlier name. At the test point a reading is carried only where some tube was read on that
 * instrument at that very point: elsewhere there is nothing to compare it with, and tubes read
 * alike stay as read. Predicted figures compare wherever a tube was read, so for them all are
 * carried.
 */
import type { Candidate, Carrying, TestPoint, TubeTest } from './candidate'
import { type Carriages, carriageOf, carriagesTo, carriedTest } from './carried-test'
import { instrumentKey, samePoint } from './cohort'
import type { StockInOrder } from './stock-in-order'

export type CarryScope = 'same-point' | 'everywhere'

type Counted = { readonly name: string; readonly tubes: number }

/** By the key of each instrument. */
type Counts = ReadonlyMap<string, Counted>

export function carriedCandidates(
  stock: readonly Candidate[],
  carrying: Carrying | undefined,
  scope: CarryScope,
): readonly Candidate[] {
  if (!carrying || carrying.corrections.length === 0) return stock
  const to = targetOf(carrying, countedTubes(stock))
  if (to === null) return stock
  const carry = carrierTo(to, carrying, scope, () => stock.flatMap((tube) => (isThere(tube) && tube.test) || []))
  return stock.map((tube) => (tube.test ? withTest(tube, carry(tube.test)) : tube))
}

/** The same for a stock that is laid out. Its columns keep what was read; `microamps` and `microsiemens` are what is compared. */
export function carriedStock(stock: StockInOrder, carrying: Carrying | undefined, scope: CarryScope): StockInOrder {
  if (!carrying || carrying.corrections.length === 0) return stock
  const to = targetOf(carrying, countedPlaces(stock))
  if (to === null) return stock
  const present = tubesByKind(stock)
  const testsThere = () =>
    stock.kinds.flatMap(({ test, condition }, kind) => (present[kind] && condition !== 'reject' && test) || [])
  const carry = carrierTo(to, carrying, scope, testsThere)
  const kinds = stock.kinds.map((kind) => (kind.test ? withTest(kind, carry(kind.test)) : kind))
  if (kinds.every((kind, at) => kind === stock.kinds[at])) return stock
  const microamps = stock.microamps.slice()
  const microsiemens = stock.microsiemens.slice()
  for (let place = 0; place < microamps.length; place += 1) {
    const carried = kinds[stock.kindOf[place] as number]?.test?.carried
    if (!carried) continue
    microamps[place] = Math.round(1e6 * (stock.plateCurrent[place] as number) * carried.current.factor)
    if (carried.slope)
      microsiemens[place] = Math.round(1e6 * (stock.transconductance[place] as number) * carried.slope.factor)
  }
  return { ...stock, kinds, microamps, microsiemens }
}

/** The instrument that candidates are carried to. null: nothing is known of any two, or nothing was read. */
export const carryTarget = (stock: readonly Candidate[], carrying: Carrying): string | null =>
  carrying.corrections.length === 0 ? null : targetOf(carrying, countedTubes(stock))

export type InstrumentUse = {
  readonly instrument: string
  readonly tubes: number
  /** Of those, what is carried over to the first. */
  readonly carried: number
  /** A correction between the two is known. */
  readonly corrected: boolean
}

/** The instruments that a stock was read on, the one it is compared on first. `stock`: carried over already. */
export function instrumentsOf(stock: StockInOrder, carrying: Carrying): InstrumentUse[] {
  const counts = countedPlaces(stock)
  const to = targetOf(carrying, counts)
  const carried = new Map<string, number>()
  const present = tubesByKind(stock)
  stock.kinds.forEach(({ test }, kind) => {
    if (!test?.carried) return
    const key = instrumentKey(test.carried.from)
    carried.set(key, (carried.get(key) ?? 0) + (present[kind] as number))
  })
  const carriages = carriagesTo(to ?? '', carrying.corrections)
  const isFirst = (name: string) => to !== null && instrumentKey(name) === instrumentKey(to)
  return [...counts]
    .map(
      ([key, { name, tubes }]): InstrumentUse => ({
        ...{ instrument: name, tubes, carried: carried.get(key) ?? 0 },
        corrected: carriages.has(key),
      }),
    )
    .sort((a, b) => Number(isFirst(b.instrument)) - Number(isFirst(a.instrument)) || byUse(a, b))
}

const byUse = (a: InstrumentUse, b: InstrumentUse): number =>
  b.tubes - a.tubes || compareNames(a.instrument, b.instrument)

const compareNames = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

function withTest(tube: Candidate, test: TubeTest): Candidate {
  return test === tube.test ? tube : { ...tube, test }
}

function carrierTo(
  to: string,
  { corrections }: Carrying,
  scope: CarryScope,
  tests: () => readonly TubeTest[],
): (test: TubeTest) => TubeTest {
  const carriages: Carriages = carriagesTo(to, corrections)
  if (carriages.size === 0) return (test) => test
  const points = scope === 'everywhere' ? null : pointsReadOn(to, tests())
  return (test) => {
    const carriage = carriageOf(test, carriages)
    const isMet = points === null || points.some((point) => samePoint(point, test.testPoint))
    return carriage && isMet ? carriedTest(test, to, carriage) : test
  }
}

function pointsReadOn(to: string, tests: readonly TubeTest[]): TestPoint[] {
  const points = new Map<string, TestPoint>()
  for (const { instrument, testPoint } of tests)
    if (instrumentKey(instrument) === instrumentKey(to)) points.set(JSON.stringify(testPoint), testPoint)
  return [...points.values()]
}

/** null: nothing was read at all. */
function targetOf({ to }: Carrying, counts: Counts): string | null {
  if (to !== undefined) return counts.get(instrumentKey(to))?.name ?? to
  const [first] = [...counts.values()].sort((a, b) => b.tubes - a.tubes || compareNames(a.name, b.name))
  return first?.name ?? null
}

function countedTubes(stock: readonly Candidate[]): Counts {
  const counts = new Map<string, Counted>()
  for (const tube of stock) if (isThere(tube)) count(counts, tube.test, 1)
  return counts
}

function countedPlaces(stock: StockInOrder): Counts {
  const counts = new Map<string, Counted>()
  const present = tubesByKind(stock)
  stock.kinds.forEach(({ test, condition }, kind) => {
    if (condition !== 'reject' && (present[kind] as number) > 0) count(counts, test, present[kind] as number)
  })
  return counts
}

/** Tubes of each kind that are in stock, reserved or not. */
function tubesByKind({ kinds, kindOf, states }: StockInOrder): Int32Array {
  const tubes = new Int32Array(kinds.length)
  for (let place = 0; place < kindOf.length; place += 1) {
    const state = states.get(place)?.kind
    if (state === 'gone' || state === 'fitted') continue
    const kind = kindOf[place] as number
    tubes[kind] = (tubes[kind] as number) + 1
  }
  return tubes
}

const isThere = ({ state, condition }: Candidate): boolean =>
  condition !== 'reject' && state.kind !== 'gone' && state.kind !== 'fitted'

function count(counts: Map<string, Counted>, test: TubeTest | null, tubes: number): void {
  if (!test || test.shorts) return
  const read = (test.carried?.from ?? test.instrument).trim()
  const before = counts.get(instrumentKey(read))
  const name = before && compareNames(before.name, read) < 0 ? before.name : read
  counts.set(instrumentKey(read), { name, tubes: (before?.tubes ?? 0) + tubes })
}
