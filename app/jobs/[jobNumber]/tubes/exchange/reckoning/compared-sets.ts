/** What every tube in stock would make of the set: out of the stock that is kept, worked out anew at every look. */
import 'server-only'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { solveFaultText } from '@/lib/domain/circuit/circuit-text'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import type { Carrying, MatchLimits } from '@/lib/domain/matching/candidate'
import type { Running } from '@/lib/domain/matching/line-up'
import { answerAt } from '@/lib/domain/matching/predicted-columns'
import type { Predictions } from '@/lib/domain/matching/predicted-tube'
import type { SetOption } from '@/lib/domain/matching/proposal'
import type { ReplaceFault } from '@/lib/domain/matching/replacing/replace-from'
import { type PlacedReplacements, replaceFrom } from '@/lib/domain/matching/replacing/replace-from'
import { carryingWith, placeIn, withSeats } from '@/lib/domain/matching/replacing/with-seats'
import { fail, ok, type Result } from '@/lib/domain/result'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import type { StockedTube } from '@/lib/domain/stock/tube'
import { findCarrying } from '@/lib/store/carrying'
import { stockToChooseFrom } from '@/lib/store/kept/kept-stock'
import { predictionsIn } from '../../../bench/group-circuit'
import type { ExchangeView } from './exchange-view'

export type Sets = PlacedReplacements & { readonly running: Running }

export type Compared = {
  /** A fault is a sentence: no set can be compared. null: in this socket nothing is. */
  readonly sets: Result<Sets, string> | null
  /** With what is predicted of the tubes of the set and of the one that is looked at. */
  readonly limits: MatchLimits
  /** Why what was to be predicted is compared at the test point after all; empty: it is not. */
  readonly notPredicted: string
}

export async function comparedSets(asked: ExchangeView): Promise<Compared> {
  const { circuit, place, limits, words, chosen } = asked
  if (place.group === null) return { sets: null, limits, notPredicted: '' }
  const carrying = await findCarrying(chosen.on)
  const first = await replaced(asked, { circuit: circuit.ok ? circuit.value : null, carrying })
  if (first.sets.ok || first.sets.fault.code !== 'beside-not-predicted') {
    const fault = first.fault && solveFaultText(first.fault, words)
    return { sets: worded(first.sets), limits: first.limits, notPredicted: circuit.ok ? (fault ?? '') : circuit.fault }
  }
  const atTestPoint = await replaced(asked, { circuit: null, carrying })
  const [mark] = first.sets.fault.marks
  return {
    sets: worded(atTestPoint.sets),
    limits: atTestPoint.limits,
    notPredicted: `What ${mark} would do here cannot be said.`,
  }
}

/** The set with a tube of the stock. Null: it does not compare with those that stay. */
export function setWith({ sets }: Compared, { id, mark }: StockedTube['tube']): SetOption | null {
  const place = sets?.ok ? placeIn(sets.value.running.stock, { tubeId: id, mark }) : null
  return sets?.ok && place !== null ? sets.value.setWith(place) : null
}

type Comparing = {
  /** null: at the test point. */
  readonly circuit: AmpCircuit | null
  readonly carrying: Carrying
}

type Replaced = {
  readonly sets: Result<Sets, ReplaceFault>
  readonly limits: MatchLimits
  /** Why nothing is predicted although a circuit was given. */
  readonly fault: SolveFault | null
}

async function replaced(asked: ExchangeView, { circuit, carrying }: Comparing): Promise<Replaced> {
  const { place, view, words, limits } = asked
  const given = { ...view, words, family: place.demand.family, circuit, carrying }
  const { running: stock, fault } = await stockToChooseFrom(given)
  const seats = asked.place.sockets.flatMap(({ position }) => seatAt(asked, position))
  const known = knownTubes(asked, stock, { circuit, carrying: carryingWith(stock, carrying) }, seats)
  const running = withSeats(stock, {
    tubes: seats.filter((each) => placeOf(stock, each) === null).map((each) => candidateOf(each, view)),
    carrying: carryingWith(stock, carrying),
    ofTube: known?.ofTube ?? new Map(),
  })
  const own = {
    beside: asked.beside.flatMap(({ stocked }) => placeOf(running, stocked) ?? []),
    out: placeOf(running, asked.out),
  }
  const sets = replaceFrom(running, own, place.demand, limits)
  return {
    sets: sets.ok ? ok({ ...sets.value, running }) : sets,
    limits: known ? { ...limits, predictions: known } : limits,
    fault,
  }
}

const placeOf = ({ stock }: Running, { tube: { id, mark } }: StockedTube): number | null =>
  placeIn(stock, { tubeId: id, mark })

function seatAt({ asked, out, beside }: ExchangeView, position: string): readonly StockedTube[] {
  if (position === asked.position) return [out]
  return beside.filter((seat) => seat.position === position).map(({ stocked }) => stocked)
}

/** Of the tubes of the set and of the one looked at, wherever they are. null: nothing is predicted. */
function knownTubes(
  { into, shop, bench, view }: ExchangeView,
  { stock, predicted }: Running,
  { circuit, carrying }: Comparing,
  seats: readonly StockedTube[],
): Predictions | null {
  if (!circuit || !predicted) return null
  const all = [...seats, ...(into ? [into] : [])].map((stocked) => ({
    stocked,
    place: placeIn(stock, { tubeId: stocked.tube.id, mark: stocked.tube.mark }),
  }))
  const away = all.flatMap(({ stocked, place }) => (place === null ? [stocked] : []))
  const elsewhere = predictionsIn(circuit, away, { bench, shop, now: view.now, carrying })
  if (!elsewhere.ok) return null
  const here = all.flatMap(({ stocked: { tube }, place }) => {
    const answer = place === null ? undefined : answerAt(predicted, place, tube.id)
    return answer ? [[tube.id, answer] as const] : []
  })
  return { ...elsewhere.value, ofTube: new Map([...elsewhere.value.ofTube, ...here]) }
}

const worded = (sets: Result<Sets, ReplaceFault>): Result<Sets, string> =>
  sets.ok ? sets : fail(replaceFaultText(sets.fault))

function replaceFaultText({ code, marks }: ReplaceFault): string {
  const named = marks.join(', ')
  switch (code) {
    case 'beside-not-tested':
      return `${named} stays and has no usable test, so no set can be compared.`
    case 'beside-not-predicted':
      return `What ${named} would do here cannot be said, so no set can be compared.`
    case 'beside-not-comparable':
      return `${named} stay and were tested at different points or on different instruments, so no set can be compared.`
  }
}
