/**
 * A stock laid out for choosing from it again and again: in natural order of marks, a
 * column for each figure, and the tubes that differ in readings, price, age and state alone
 * gathered in kinds, so that a rule which looks at nothing else is asked once a kind.
 *
 * A place is where a tube stands in that order. Nothing here depends on the hour but
 * `states`, which `withStates` restates.
 */
import { daysBetween, readDay } from '../calendar'
import { money } from '../money'
import { amps, siemens } from '../units'
import type { Candidate, TubeRatings, TubeState, TubeTest } from './candidate'
import { withFigures } from './carried-test'
import { microamps, microsiemens } from './eligibility'
import { compareKeys, type NaturalKey, naturalKey } from './natural-order'
import { placesBy, placesMerged } from './places-by'
import { copyRuns, copyTextRuns, placeNow, type Run, runsOf } from './runs'

export type StockInOrder = {
  readonly tubeIds: readonly string[]
  readonly marks: readonly string[]
  readonly kindOf: Int32Array
  /** One tube of each kind; kinds that no tube has any more may be among them. */
  readonly kinds: Candidate[]
  /** Their numbers by what makes a kind; both are shared by all states of a stock and only ever grow. */
  readonly kindNumbers: Map<string, number>
  /** Minor units. */
  readonly price: Int32Array
  /** As read, A and S; 0 where nothing was. */
  readonly plateCurrent: Float64Array
  readonly transconductance: Float64Array
  /** The same in µA and µS, where it was carried over to another instrument as carried; -1: not read. */
  readonly microamps: Int32Array
  readonly microsiemens: Int32Array
  /** Empty without a test. */
  readonly testedAt: readonly string[]
  /** The same in days since 1970; UNDATED without one. */
  readonly testDay: Int32Array
  /** Of tubes that are not free, by place. */
  readonly states: ReadonlyMap<number, TubeState>
  /** Places by price, then place. */
  readonly byPrice: Int32Array
}

export const UNDATED = -(2 ** 31)
const EPOCH = readDay('1970-01-01')

/** Days since 1970 of an ISO date; UNDATED when it is none. */
export function dayNumber(iso: string): number {
  const day = readDay(iso.slice(0, 10))
  return day && EPOCH ? daysBetween(EPOCH, day) : UNDATED
}

/** Each tube once. */
export function stockInOrder(candidates: readonly Candidate[]): StockInOrder {
  const tubes = sortedByMark(candidates)
  const writer = newWriter(tubes.length, { kinds: [], kindNumbers: new Map() })
  for (let at = 0; at < tubes.length; at += 1) writer.write(at, tubes[at] as Candidate)
  return { ...writer.columns, byPrice: placesBy(writer.columns.price) }
}

export function tubeAt(stock: StockInOrder, place: number): Candidate {
  const kind = stock.kinds[stock.kindOf[place] as number] as Candidate
  return {
    ...kind,
    tubeId: stock.tubeIds[place] as string,
    mark: stock.marks[place] as string,
    price: money(stock.price[place] as number),
    state: stock.states.get(place) ?? FREE,
    test: kind.test && testAt(stock, place, kind.test),
  }
}

function testAt(stock: StockInOrder, place: number, alike: TubeTest): TubeTest {
  const testedAt = stock.testedAt[place] as string
  const plateCurrent = amps(stock.plateCurrent[place] as number)
  const transconductance = alike.transconductance === null ? null : siemens(stock.transconductance[place] as number)
  const { carried } = alike
  if (carried) return withFigures({ ...alike, testedAt }, { ...carried, plateCurrent, transconductance })
  return { ...alike, testedAt, plateCurrent, transconductance }
}

const FREE: TubeState = { kind: 'free' }

export type ChangedStock = {
  readonly stock: StockInOrder
  /** Per place, where the same tube stood before; -1: new. */
  readonly from: Int32Array
}

/** The same as laying out the whole stock anew, in the time it takes to copy its columns. */
export function withChanges(
  before: StockInOrder,
  gone: ReadonlySet<number>,
  added: readonly Candidate[],
): ChangedStock {
  const news = sortedByMark(added)
  const from = mergedOrder(before, gone, news)
  const writer = newWriter(from.length, before)
  writer.copy(before, runsOf(from))
  let next = 0
  for (let at = 0; at < from.length; at += 1) {
    if ((from[at] as number) < 0) writer.write(at, news[next++] as Candidate)
  }
  const { columns } = writer
  return { stock: { ...columns, byPrice: placesMerged(before.byPrice, from, columns.price) }, from }
}

/** With the states of some places as they are now. */
export function withStates(stock: StockInOrder, now: ReadonlyMap<number, TubeState>): StockInOrder {
  if (now.size === 0) return stock
  const states = new Map(stock.states)
  for (const [place, state] of now) {
    if (state.kind === 'free') states.delete(place)
    else states.set(place, state)
  }
  return { ...stock, states }
}

/** Where a tube of this mark and id stands, or would have to. */
export function placeFor({ marks, tubeIds }: StockInOrder, tube: Pick<Candidate, 'mark' | 'tubeId'>): number {
  const key = keysOf(tube)
  let [low, high] = [0, marks.length]
  while (low < high) {
    const middle = (low + high) >> 1
    const there = keysOf({ mark: marks[middle] as string, tubeId: tubeIds[middle] as string })
    if (compareMarked(there, key) < 0) low = middle + 1
    else high = middle
  }
  return low
}

type MarkKeys = { readonly mark: NaturalKey; readonly tubeId: string }

const keysOf = ({ mark, tubeId }: Pick<Candidate, 'mark' | 'tubeId'>): MarkKeys => ({ mark: naturalKey(mark), tubeId })

const compareMarked = (a: MarkKeys, b: MarkKeys): number =>
  compareKeys(a.mark, b.mark) || compareKeys(naturalKey(a.tubeId), naturalKey(b.tubeId))

function sortedByMark(candidates: readonly Candidate[]): Candidate[] {
  return candidates
    .map((tube) => ({ tube, keys: keysOf(tube) }))
    .sort((a, b) => compareMarked(a.keys, b.keys))
    .map(({ tube }) => tube)
}

type Columns = Omit<StockInOrder, 'byPrice'>

type Writer = {
  readonly columns: Columns
  readonly write: (at: number, tube: Candidate) => void
  readonly copy: (before: StockInOrder, runs: readonly Run[]) => void
}

function newWriter(size: number, { kinds, kindNumbers }: Kinds): Writer {
  const numberOf = kindNumbering({ kinds, kindNumbers })
  const [tubeIds, marks, testedAt] = [new Array<string>(size), new Array<string>(size), new Array<string>(size)]
  const [plateCurrent, transconductance] = [new Float64Array(size), new Float64Array(size)]
  const numbers = {
    kindOf: new Int32Array(size),
    price: new Int32Array(size),
    microamps: new Int32Array(size),
    microsiemens: new Int32Array(size),
    testDay: new Int32Array(size),
  }
  const states = new Map<number, TubeState>()
  const textOf = remembered((text) => text)
  const dayOf = remembered(dayNumber)
  const names = Object.keys(numbers) as (keyof typeof numbers)[]
  return {
    columns: { tubeIds, marks, testedAt, plateCurrent, transconductance, ...numbers, kinds, kindNumbers, states },
    write(at, tube) {
      const { tubeId, mark, test, price, state } = tube
      tubeIds[at] = tubeId
      marks[at] = mark
      // One text for a day, however many tubes were tested on it.
      testedAt[at] = textOf(test?.testedAt ?? '')
      plateCurrent[at] = test?.plateCurrent ?? 0
      transconductance[at] = test?.transconductance ?? 0
      numbers.kindOf[at] = numberOf(tube)
      numbers.price[at] = price
      numbers.microamps[at] = test ? microamps(test) : -1
      numbers.microsiemens[at] = (test && microsiemens(test)) ?? -1
      numbers.testDay[at] = test ? dayOf(test.testedAt.slice(0, 10)) : UNDATED
      if (state.kind !== 'free') states.set(at, state)
    },
    copy(before, runs) {
      copyTextRuns(tubeIds, before.tubeIds, runs)
      copyTextRuns(marks, before.marks, runs)
      copyTextRuns(testedAt, before.testedAt, runs)
      copyRuns(plateCurrent, before.plateCurrent, runs)
      copyRuns(transconductance, before.transconductance, runs)
      for (const name of names) copyRuns(numbers[name], before[name], runs)
      for (const [old, state] of before.states) {
        const at = placeNow(old, runs)
        if (at >= 0) states.set(at, state)
      }
    },
  }
}

type Kinds = Pick<StockInOrder, 'kinds' | 'kindNumbers'>

function kindNumbering({ kinds, kindNumbers }: Kinds): (tube: Candidate) => number {
  const keyOf = kindKeys()
  return (tube) => {
    const key = keyOf(tube)
    const number = kindNumbers.get(key) ?? kinds.push(tube) - 1
    kindNumbers.set(key, number)
    return number
  }
}

/** All of a tube but its names, price, day, readings and state. */
function kindKeys(): (tube: Candidate) => string {
  const ratingsOf = new Map<TubeRatings, string>()
  return ({ designation, family, base, ratings, condition, test }) => {
    const rated = ratingsOf.get(ratings) ?? JSON.stringify(Object.entries(ratings).sort())
    ratingsOf.set(ratings, rated)
    const named = `${designation}\n${family}\n${base}\n${condition}\n${rated}`
    if (test === null) return named
    const { testedAt: _, plateCurrent: __, transconductance, ...alike } = test
    return `${named}\n${JSON.stringify([transconductance === null, alike])}`
  }
}

function remembered<T>(work: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>()
  return (text) => {
    const found = known.get(text) ?? work(text)
    known.set(text, found)
    return found
  }
}

function mergedOrder(before: StockInOrder, gone: ReadonlySet<number>, news: readonly Candidate[]): Int32Array {
  const from = new Int32Array(before.marks.length - gone.size + news.length)
  let [to, old] = [0, 0]
  const takeOld = (end: number) => {
    for (; old < end; old += 1) if (!gone.has(old)) from[to++] = old
  }
  for (const tube of news) {
    takeOld(placeFor(before, tube))
    from[to++] = -1
  }
  takeOld(before.marks.length)
  return from
}
