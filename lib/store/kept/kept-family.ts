/**
 * The stock of one family as it is kept in memory: laid out for choosing from it, and what
 * each tube would do in the amplifiers asked about last.
 *
 * Kept are columns, not objects. Holds are kept as they are written; whether they count is
 * judged whenever one asks. One thing at a time is done to a family (`inTurn`), and long work
 * lets others in between. What was handed out never changes afterwards.
 */
import type { Carrying, TubeState } from '@/lib/domain/matching/candidate'
import { type CarryScope, carriedStock } from '@/lib/domain/matching/carried-stock'
import { comparedFigures, type Running } from '@/lib/domain/matching/line-up'
import { copyRuns, placeNow, runsOf } from '@/lib/domain/matching/runs'
import {
  type ChangedStock,
  placeFor,
  type StockInOrder,
  stockInOrder,
  tubeAt,
  withChanges,
  withStates,
} from '@/lib/domain/matching/stock-in-order'
import { type CandidateView, candidatesOf, type HoldFacts, stateOf } from '@/lib/domain/stock/candidate-of'
import type { TubePredictor } from '@/lib/domain/stock/stock-predictions'
import type { StockedTube } from '@/lib/domain/stock/tube'
import { listIdsInStock, listStockOf } from '../tube'
import { KeptCircuit, type ReadStock } from './kept-circuit'
import { KeptFigures } from './kept-figures'
import { Slices } from './slices'
import type { TubeChanges } from './tube-writes'

type Read = ReadStock & {
  /** By place, of tubes with a hold written on them. */
  readonly held: ReadonlyMap<number, HoldFacts>
}

/** `figures`: at the test point. */
type Kept = Read & { readonly figures: KeptFigures }

export type KeptView = Pick<CandidateView, 'catalogue' | 'timeZone'>

/** A statement takes so many ids at most. */
const ASKED_AT_ONCE = 900
const LAID_AT_ONCE = 4 * ASKED_AT_ONCE
/** More changes than this share, and the stock is read anew. */
const MOST_CHANGED = 0.25

const noneYet = (): Kept => ({
  stock: stockInOrder([]),
  figures: new KeptFigures(),
  screenCurrent: new Float64Array(0),
  held: new Map(),
})

export class KeptFamily {
  private kept = noneYet()
  private isRead = false
  private viewKey = ''
  private readonly pending = new Set<string>()
  private turn: Promise<unknown> = Promise.resolve()
  /** Those asked about last stand last. */
  readonly circuits = new Map<string, KeptCircuit>()

  constructor(private readonly family: string) {}

  get size(): number {
    return this.kept.stock.marks.length
  }

  inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.turn.then(work)
    this.turn = mine.catch(() => {})
    return mine
  }

  note({ everything, tubes, jobs }: TubeChanges): void {
    if (everything) this.isRead = false
    for (const id of tubes) this.pending.add(id)
    if (jobs.size === 0) return
    for (const [place, { heldForJob }] of this.kept.held) {
      if (heldForJob !== null && jobs.has(heldForJob)) this.pending.add(this.kept.stock.tubeIds[place] as string)
    }
  }

  get isDue(): boolean {
    return !this.isRead || this.pending.size > 0
  }

  /** In turn only. Fails as reading the records fails, and then nothing counts as read. */
  async bringUpToDate(view: KeptView): Promise<void> {
    const viewKey = JSON.stringify([view.catalogue.ownTypes, view.timeZone])
    if (viewKey !== this.viewKey || this.pending.size > MOST_CHANGED * this.size) this.isRead = false
    this.viewKey = viewKey
    if (this.isRead && this.pending.size === 0) return
    const ids = [...this.pending]
    this.pending.clear()
    const wasRead = this.isRead
    this.isRead = true
    try {
      if (wasRead) await this.readAnew(ids, view)
      else await this.readAll(view)
    } catch (error) {
      this.isRead = false
      throw error
    }
  }

  private async readAll(view: KeptView): Promise<void> {
    this.circuits.clear()
    this.kept = noneYet()
    const slices = new Slices()
    let read: Read = this.kept
    const ids = await listIdsInStock(this.family)
    for (let from = 0; from < ids.length; from += LAID_AT_ONCE) {
      const tubes = await this.tubesOf(ids.slice(from, from + LAID_AT_ONCE), slices)
      read = changed(read, new Set(), tubes, view).read
    }
    this.kept = { ...read, figures: new KeptFigures() }
  }

  private async readAnew(ids: readonly string[], view: KeptView): Promise<void> {
    const tubes = await this.tubesOf(ids, new Slices())
    const places = placesOf(this.kept.stock, new Set(ids))
    // As many as before, each as before: most often nothing but a hold was written, or a tube of another family.
    const same = tubes.length === places.size ? alikeBut(this.kept, tubes, view) : null
    if (same) {
      this.kept = { ...this.kept, ...same }
      return
    }
    const { read, change } = changed(this.kept, places, tubes, view)
    const { figures } = this.kept
    figures.moveTo(change)
    this.kept = { ...read, figures }
    for (const circuit of this.circuits.values()) circuit.moveTo(change, ids)
  }

  private async tubesOf(ids: readonly string[], slices: Slices): Promise<StockedTube[]> {
    const tubes: StockedTube[] = []
    for (let from = 0; from < ids.length; from += ASKED_AT_ONCE) {
      if (from > 0) await slices.yield()
      tubes.push(...(await listStockOf(this.family, ids.slice(from, from + ASKED_AT_ONCE))))
    }
    await slices.yield()
    return tubes
  }

  /** In turn only, and up to date. `predictor`: null where the circuit is kept. */
  async predictedIn(key: string, predictor: TubePredictor | null, compared: StockInOrder): Promise<Running> {
    const circuit = this.circuits.get(key) ?? (predictor && new KeptCircuit(predictor, this.size))
    if (!circuit) throw new Error('A circuit that is not kept needs a predictor')
    this.circuits.delete(key)
    this.circuits.set(key, circuit)
    const { predicted, figures } = await circuit.complete(this.kept, compared, new Slices())
    return { stock: compared, predicted, ...figures }
  }

  /** Its readings on one instrument, as far as they can be carried there; the same object where none is. */
  carried(carrying: Carrying | undefined, scope: CarryScope): StockInOrder {
    return carriedStock(this.kept.stock, carrying, scope)
  }

  atTestPoint(carrying: Carrying | undefined): Running {
    const stock = this.carried(carrying, 'same-point')
    const isAsRead = stock === this.kept.stock
    const figures = isAsRead ? this.kept.figures.laidOut(stock, null) : comparedFigures(stock, null)
    return { stock, predicted: null, ...figures }
  }

  /** As the holds of its tubes count now, for this job. */
  asOf(running: Running, { now, jobInHand }: Pick<CandidateView, 'now' | 'jobInHand'>): Running {
    const states = new Map([...this.kept.held].map(([place, facts]) => [place, stateOf(facts, { now, jobInHand })]))
    return { ...running, stock: withStates(running.stock, states) }
  }
}

const asKept = (view: KeptView): CandidateView => ({ ...view, now: new Date(0), jobInHand: null })

/** All columns stay where only holds differ. null: something else does. */
function alikeBut(before: Read, tubes: readonly StockedTube[], view: KeptView): Pick<Kept, 'stock' | 'held'> | null {
  const held = new Map(before.held)
  const states = new Map<number, TubeState>()
  for (const [at, candidate] of candidatesOf(tubes, asKept(view)).entries()) {
    const stocked = tubes[at] as StockedTube
    const place = placeFor(before.stock, candidate)
    const isAlike =
      before.stock.tubeIds[place] === candidate.tubeId &&
      JSON.stringify({ ...tubeAt(before.stock, place), state: null }) ===
        JSON.stringify({ ...candidate, state: null }) &&
      Object.is(before.screenCurrent[place], screenCurrentOf(stocked))
    if (!isAlike) return null
    states.set(place, candidate.state)
    const facts = holdOf(stocked)
    if (facts) held.set(place, facts)
    else held.delete(place)
  }
  return { stock: withStates(before.stock, states), held }
}

/** Without the tubes at those places, and with these. */
function changed(
  before: Read,
  gone: ReadonlySet<number>,
  tubes: readonly StockedTube[],
  view: KeptView,
): { readonly read: Read; readonly change: ChangedStock } {
  const candidates = candidatesOf(tubes, asKept(view))
  const change = withChanges(before.stock, gone, candidates)
  const { stock, from } = change
  const added = new Map(tubes.map((stocked) => [stocked.tube.id, stocked]))
  const runs = runsOf(from)
  const screenCurrent = new Float64Array(from.length)
  copyRuns(screenCurrent, before.screenCurrent, runs)
  const held = new Map<number, HoldFacts>()
  for (const [old, facts] of before.held) {
    const at = placeNow(old, runs)
    if (at >= 0) held.set(at, facts)
  }
  for (let at = 0; at < from.length; at += 1) {
    const fresh = (from[at] as number) < 0 ? added.get(stock.tubeIds[at] as string) : undefined
    if (!fresh) continue
    screenCurrent[at] = screenCurrentOf(fresh)
    const facts = holdOf(fresh)
    if (facts) held.set(at, facts)
  }
  return { read: { stock, screenCurrent, held }, change }
}

function placesOf({ tubeIds }: StockInOrder, ids: ReadonlySet<string>): Set<number> {
  const places = new Set<number>()
  if (ids.size === 0) return places
  for (let place = 0; place < tubeIds.length; place += 1) if (ids.has(tubeIds[place] as string)) places.add(place)
  return places
}

const screenCurrentOf = ({ test }: StockedTube): number => test?.sections[0]?.screenCurrent ?? Number.NaN

function holdOf({ tube }: StockedTube): HoldFacts | undefined {
  const { whereabouts, hold, heldForJob, heldForJobNumber, heldUntil, further } = tube
  if (hold === '') return undefined
  return { whereabouts, hold, heldForJob, heldForJobNumber, heldUntil, further: { reference: further.reference } }
}
