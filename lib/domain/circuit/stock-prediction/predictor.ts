/** One stage laid for many tubes; stock-prediction.ts says what for. */
import type { Band } from '@/lib/domain/circuit/band'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import { WORST_IMBALANCE, worstImbalance } from '@/lib/domain/circuit/solver/conservation'
import { at } from '@/lib/domain/circuit/solver/dense-lu'
import { solveCurrents } from '@/lib/domain/circuit/solver/solve-currents'
import { layWires, MOST_UNKNOWNS } from '@/lib/domain/circuit/solver/wiring'
import type { IndividualTube } from '@/lib/domain/model/individual-tube'
import { type AmplifyingParameters, CURVE_NUMBERS } from '@/lib/domain/model/plate-curves'
import { fail, ok, type Result } from '@/lib/domain/result'
import { factorJacobian, layPulls } from './answers'
import { ANSWERS, type Desk, newDesk } from './desk'
import { firstLike } from './like-places'
import type { PredictedSocket, StageToFill, StockPrediction, StockPredictor } from './prediction'
import { fillMovedPart, type MovedPart, movedPart, placeMovedPart, varianceByParts } from './spread-of-parts'
import {
  FAR,
  layTubeSlopes,
  plateToCathodeOf,
  type Seated,
  seatedTube,
  varianceByTubes,
  WIDEST,
} from './spread-of-tubes'
import { startAt, type TypeStart, typeStart } from './type-start'

const COVERAGE = 2
/** A, W or S, as in circuit-bands.ts: below it nothing flows. */
const FLOOR = 1e-15
/** Types beyond these start from a guess. */
const MOST_STARTS = 500

type Room = {
  readonly desk: Desk
  readonly places: readonly number[]
  /** For each place, the first that stands like it in the circuit. */
  readonly likes: readonly number[]
  readonly seats: (Seated | null)[]
  readonly parts: readonly MovedPart[]
  readonly starts: Map<AmplifyingParameters, TypeStart | null>
  /** Tubes with the same curves share a number (desk.curves). */
  readonly curveNumbers: Map<string, number>
  readonly sockets: readonly string[]
}

function curveNumbersOf({ stage, fitted }: StageToFill, places: readonly number[]): Map<string, number> {
  const numbers = new Map<string, number>()
  for (let i = 0; i < stage.tubes.length; i++) {
    const curvesOf = places.includes(i) ? undefined : fitted[i]?.type.curvesOf
    if (curvesOf !== undefined && !numbers.has(curvesOf)) numbers.set(curvesOf, numbers.size)
  }
  return numbers
}

function newRoom(toFill: StageToFill, places: readonly number[]): Room {
  const { stage, fitted, partDoubts = [] } = toFill
  const desk = newDesk()
  layWires(desk.wiring, stage)
  const curveNumbers = curveNumbersOf(toFill, places)
  const seats = stage.tubes.map((_, i): Seated | null => {
    const tube = places.includes(i) ? null : (fitted[i] ?? null)
    desk.curves[i] = tube ? (curveNumbers.get(tube.type.curvesOf) ?? -1) : -1
    return tube && seatedTube(tube)
  })
  const parts = partDoubts.map(movedPart)
  return {
    desk,
    places,
    likes: firstLike([desk.wiring, ...parts.flatMap(({ up, down }) => [up, down])], places),
    seats,
    parts,
    starts: new Map(),
    curveNumbers,
    sockets: stage.tubes.map(({ socket }) => socket),
  }
}

function startOf({ starts, desk, places }: Room, type: AmplifyingParameters): TypeStart | null {
  const known = starts.get(type)
  if (known !== undefined || starts.size >= MOST_STARTS) return known ?? null
  const start = typeStart(desk.wiring, places, type)
  starts.set(type, start)
  return start
}

function seat(room: Room, tube: IndividualTube): void {
  const { desk, places, seats, parts, curveNumbers } = room
  const seated = seatedTube(tube)
  // A type that no other socket holds is alone: the next number is free, there being at most as many as tubes.
  const number = curveNumbers.get(tube.type.curvesOf) ?? curveNumbers.size
  for (const place of places) {
    seats[place] = seated
    desk.curves[place] = number
    desk.wiring.parameters[place] = tube.parameters
    for (const part of parts) fillMovedPart(part, place, tube.parameters)
  }
}

/** Leaves the operating point in the wiring. */
function solve(room: Room, tube: IndividualTube): SolveFault | null {
  const { wiring } = room.desk
  const start = startOf(room, tube.type.parameters)
  seat(room, tube)
  if (start) startAt(wiring, start, tube.scales)
  const search = solveCurrents(wiring, start !== null)
  const imbalance = search.stepped || !search.converged ? worstImbalance(wiring) : 0
  if (search.converged && imbalance <= WORST_IMBALANCE) return null
  return { code: 'did-not-converge', iterations: search.steps, worstImbalance: imbalance }
}

function plainBand(value: number, variance: number): Band {
  const half = COVERAGE * Math.sqrt(variance)
  return { value, low: value - half, high: value + half }
}

function loggedBand(value: number, variance: number): Band {
  const share = value > FLOOR ? Math.min(Math.sqrt(variance) / value, WIDEST) : 0
  const factor = Math.exp(COVERAGE * share)
  return { value, low: value / factor, high: value * factor }
}

function variance({ desk, seats, parts }: Room, answer: number, place: number): number {
  const from = answer * MOST_UNKNOWNS
  const own = answer === ANSWERS.transconductance ? place : -1
  return varianceByTubes(desk, seats, from, own) + varianceByParts(desk, parts, from, answer, place)
}

function predicted(room: Room, place: number): PredictedSocket {
  const { desk } = room
  const { wiring } = desk
  layPulls(desk, place)
  const plate = at(wiring.currents, 2 * place)
  const volts = plateToCathodeOf(desk, place)
  const gm = at(wiring.curves, place * CURVE_NUMBERS + 3)
  return {
    socket: room.sockets[place] ?? '',
    plateCurrent: loggedBand(plate, variance(room, ANSWERS.plateCurrent, place)),
    screenCurrent: loggedBand(at(wiring.currents, 2 * place + 1), variance(room, ANSWERS.screenCurrent, place)),
    plateToCathode: plainBand(volts, variance(room, ANSWERS.plateToCathode, place)),
    transconductance: loggedBand(gm, variance(room, ANSWERS.transconductance, place)),
    plateDissipation: loggedBand(volts * plate, variance(room, ANSWERS.plateDissipation, place)),
  }
}

/** Places that stand alike are worked out once. */
function socketsOf(room: Room): PredictedSocket[] {
  const { places, likes, sockets } = room
  const found: PredictedSocket[] = []
  for (let n = 0; n < places.length; n++) {
    const place = places[n] as number
    const like = likes[n] as number
    const known = like === place ? undefined : found[places.indexOf(like)]
    found.push(known ? { ...known, socket: sockets[place] ?? '' } : predicted(room, place))
  }
  return found
}

function predict(room: Room, tube: IndividualTube): Result<StockPrediction, SolveFault> {
  const { desk, places, seats, parts } = room
  const fault = solve(room, tube)
  if (fault) return fail(fault)
  if (!factorJacobian(desk)) return fail({ code: 'did-not-converge', iterations: 0, worstImbalance: 0 })
  for (const part of parts) placeMovedPart(desk, part)
  let extrapolated = false
  for (let i = 0; i < desk.wiring.count; i++) {
    const outside = layTubeSlopes(desk, i, seats[i] ?? null)
    if (outside > FAR && places.includes(i)) extrapolated = true
  }
  return ok({ sockets: socketsOf(room), extrapolated })
}

export function predictorFor(toFill: StageToFill, places: readonly number[]): StockPredictor {
  const room = newRoom(toFill, places)
  return (tube) => predict(room, tube)
}
