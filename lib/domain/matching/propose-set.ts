/**
 * The best matched set in stock for a group of sockets by the weights of its arrangement,
 * three ready-made choices, and the next best, each exact for the figures given.
 *
 * Same tubes in, same proposal out, in whatever order they are given: ties go to the earlier
 * marks.
 */
import type { Candidate, MatchLimits, SocketDemand } from './candidate'
import { carriedStock } from './carried-stock'
import { type Bounds, type Choice, choose, chooseFirst, chooseFurther, chooseLeastPrice, turnsOf } from './choose'
import type { Numbers } from './cohort'
import type { Costs } from './kept-index'
import { leftOut } from './left-out'
import { comparedFigures, type LineUp, lineUps, type Running } from './line-up'
import { MARGIN_CODES, type MarginCode } from './margin-code'
import { FURTHER_SETS, LARGEST_SET } from './match-limits'
import { closenessOf, type MatchWeights, USUAL_WEIGHTS } from './match-weights'
import { notComparable } from './not-comparable'
import { columnsOf } from './predicted-columns'
import type { Proposal, ProposalCaution, SetOption, TestedCandidate } from './proposal'
import { relaxations } from './relaxation'
import { marginsByPlace, marginsIn } from './safe-margins'
import { setOption } from './set-option'
import { type Sifted, sift } from './sift'
import { narrowed, reweighed, type Standing, standing } from './standing'
import { type StockInOrder, stockInOrder, tubeAt } from './stock-in-order'
import { placeCosts } from './tube-costs'
import { weighedSides } from './weighed-sides'

export function proposeSet(
  candidates: readonly Candidate[],
  demand: SocketDemand,
  limits: MatchLimits,
  listed = Number.POSITIVE_INFINITY,
): Proposal {
  assertOnce(candidates)
  const stock = carriedStock(
    stockInOrder(candidates),
    limits.carrying,
    limits.predictions ? 'everywhere' : 'same-point',
  )
  const predicted = limits.predictions ? columnsOf(stock, limits.predictions) : null
  return proposeFrom({ stock, predicted, ...comparedFigures(stock, predicted) }, demand, limits, listed)
}

/**
 * Out of a stock that is kept laid out. What is predicted is in its columns, not in the limits,
 * and what is carried over was so before. `listed`: so many of those left out are told of one by
 * one, all of them are counted.
 */
export function proposeFrom(
  running: Running,
  demand: SocketDemand,
  given: MatchLimits,
  listed = Number.POSITIVE_INFINITY,
): Proposal {
  assertSound(demand, given)
  const weights = given.weights ?? USUAL_WEIGHTS[demand.arrangement]
  const { predictions: _, ...plain } = given
  const limits = { ...plain, weights }
  const { stock, predicted } = running
  const sifted = sift({ stock, columns: predicted, demand, limits })
  const cohorts = lineUps(running, sifted.usable, demand.count, limits)
  const margins = marginsByPlace({ running, demand, asOf: limits.asOf })
  const scene: Scene = { running, cohorts, demand, limits, margins }
  const choices = chosen(scene)
  const { best, further } = choices
  const option = best && setOption(best, demand, null)
  const against = (choice: Choice | null): SetOption | null =>
    choice && setOption(choice, demand, isSame(best, choice) ? null : option)
  const shown = [best, choices.closest, choices.safe, choices.leastPrice, ...further].filter((each) => each !== null)
  return {
    best: option,
    closest: against(choices.closest),
    safe: against(choices.safe),
    leastPrice: against(choices.leastPrice),
    unsafe: best && !choices.safe ? unsafe(scene) : [],
    next: further.map((choice) => setOption(choice, demand, option)),
    usable: sifted.usable.length,
    ...leftOut(stock, { sifted, apart: best && notComparable(stock, { cohorts, best, shown, limits }), listed }),
    relax: best ? [] : relaxed(scene, sifted),
    cautions: proposalCautions(stock, demand),
    yardsticks: limits.yardsticks,
    weights,
  }
}

type Choices = {
  readonly best: Choice | null
  readonly closest: Choice | null
  readonly safe: Choice | null
  readonly leastPrice: Choice | null
  readonly further: readonly Choice[]
}

type Scene = {
  readonly running: Running
  readonly cohorts: readonly LineUp[]
  readonly demand: SocketDemand
  readonly limits: MatchLimits & { readonly weights: MatchWeights }
  /** By place. */
  readonly margins: Uint16Array
}

function chosen(scene: Scene): Choices {
  const { cohorts, demand, limits, running } = scene
  const bounds: Bounds = {
    count: demand.count,
    cap: limits.priceCap ?? Number.POSITIVE_INFINITY,
    sides: weighedSides({ weights: limits.weights, demand, yard: yardOf(limits) }),
  }
  const members = cohorts.map((cohort) => cohort.members)
  const costs = costsOf(scene, limits.weights, members)
  const all = cohorts.map((cohort) => standing(cohort, running, costs))
  const turns = turnsOf(all, bounds)
  const best = chooseFirst(turns)
  if (!best) return { best, closest: null, safe: null, leastPrice: null, further: [] }
  const closely = costsOf(scene, closenessOf(limits.weights), members)
  const closest = choose(
    all.map((each) => reweighed(each, closely)),
    bounds,
  )
  const safe = safest(scene, { all, best }, bounds)
  const leastPrice = chooseLeastPrice(all, bounds)
  const shown = [best, closest, safe, leastPrice].filter((choice) => choice !== null)
  return { best, closest, safe, leastPrice, further: chooseFurther(turns, shown, FURTHER_SETS) }
}

/** Microamps in one yardstick. */
const yardOf = ({ yardsticks }: MatchLimits): number => Math.round(yardsticks.plateCurrent * 1e6)

const costsOf = ({ running, demand, limits }: Scene, weights: MatchWeights, places: readonly Numbers[]): Costs =>
  placeCosts({
    weights,
    demand,
    yard: yardOf(limits),
    running,
    places,
    asOf: limits.asOf,
  })

type Judged = { readonly all: readonly Standing[]; readonly best: Choice }

function keepingAll(places: Int32Array, margins: Uint16Array): Int32Array {
  const kept = new Int32Array(places.length)
  let count = 0
  for (let at = 0; at < places.length; at += 1) {
    if (margins[places[at] as number] === 0) kept[count++] = places[at] as number
  }
  return kept.subarray(0, count)
}

/** Of those that keep every margin, which are then the ones in the running. */
function safest(scene: Scene, { all, best }: Judged, bounds: Bounds): Choice | null {
  const { limits, margins } = scene
  const kept = all.map(({ places }) => keepingAll(places, margins))
  if (kept.every(({ length }, at) => length === all[at]?.places.length)) return best
  if (kept.every(({ length }) => length < bounds.count)) return null
  const costs = costsOf(scene, limits.weights, kept)
  return choose(
    all.map((each, at) => narrowed(each, kept[at] as Int32Array, costs)),
    bounds,
  )
}

function unsafe({ cohorts, margins }: Scene): Proposal['unsafe'] {
  const counts = new Int32Array(2 ** MARGIN_CODES.length)
  for (const { members } of cohorts) {
    for (let at = 0; at < members.length; at += 1) {
      const broken = margins[members[at] as number] as number
      counts[broken] = (counts[broken] as number) + 1
    }
  }
  const tubesThatBreak = (code: MarginCode) =>
    counts.reduce((tubes, some, margins) => tubes + (marginsIn(margins).includes(code) ? some : 0), 0)
  return MARGIN_CODES.map((code) => ({ code, tubes: tubesThatBreak(code) }))
    .filter(({ tubes }) => tubes > 0)
    .sort((a, b) => b.tubes - a.tubes)
}

function relaxed({ running, demand, limits }: Scene, sifted: Sifted) {
  const usable = Array.from(sifted.usable, (place) => tubeAt(running.stock, place) as TestedCandidate)
  const excluded = Array.from(sifted.excluded, (place) => ({
    candidate: tubeAt(running.stock, place),
    reasons: sifted.reasonsAt(place),
  }))
  return relaxations({ usable, excluded, demand, limits, predicted: running.predicted !== null })
}

function assertSound({ count }: SocketDemand, { yardsticks }: MatchLimits): void {
  if (!Number.isInteger(count) || count < 1 || count > LARGEST_SET) {
    throw new Error(`A set has 1 to ${LARGEST_SET} tubes, got ${count}`)
  }
  if (Math.round(yardsticks.plateCurrent * 1e6) < 1 || Math.round(yardsticks.transconductance * 1e6) < 1) {
    const { plateCurrent, transconductance } = yardsticks
    throw new Error(`Yardsticks must be above zero, got ${plateCurrent} A and ${transconductance}`)
  }
}

function assertOnce(candidates: readonly Candidate[]): void {
  const seen = new Set<string>()
  for (const { tubeId } of candidates) {
    if (seen.has(tubeId)) throw new Error(`Tube "${tubeId}" was given twice`)
    seen.add(tubeId)
  }
}

const isSame = (a: Choice | null, b: Choice): boolean =>
  a?.points.every((point) => b.points.some((other) => other.rank === point.rank)) ?? false

function proposalCautions({ kinds, kindOf }: StockInOrder, demand: SocketDemand): ProposalCaution[] {
  const isRated = ({ family, ratings }: Candidate) => family === demand.family && ratings.maxScreenVoltage !== null
  const ratedKinds = kinds.map(isRated)
  const cautions: ProposalCaution[] = []
  if (demand.plateToCathodeVoltage === null) cautions.push({ code: 'plate-voltage-not-measured' })
  if (demand.screenVoltage === null && kindOf.some((kind) => ratedKinds[kind]))
    cautions.push({ code: 'screen-voltage-not-measured' })
  if (demand.idlePlateDissipation === null) cautions.push({ code: 'idle-not-measured' })
  return cautions
}
