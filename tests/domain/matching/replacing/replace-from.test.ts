/** Out of a stock laid out: the very answers that trying every candidate by itself gives (`replaceOne`, which has tests of its own). */
import { describe, expect, it } from 'vitest'
import type { Band } from '@/lib/domain/circuit/band'
import type { Candidate, Carrying, MatchLimits, SocketDemand } from '@/lib/domain/matching/candidate'
import { carriedStock } from '@/lib/domain/matching/carried-stock'
import { comparedFigures, type Running } from '@/lib/domain/matching/line-up'
import { USUAL_WEIGHTS } from '@/lib/domain/matching/match-weights'
import { columnsOf } from '@/lib/domain/matching/predicted-columns'
import type { PredictedTube, Predictions } from '@/lib/domain/matching/predicted-tube'
import { replaceFrom } from '@/lib/domain/matching/replacing/replace-from'
import { carryingWith, placeIn, withSeats } from '@/lib/domain/matching/replacing/with-seats'
import { stockInOrder, tubeAt } from '@/lib/domain/matching/stock-in-order'
import { fail, ok, type Result } from '@/lib/domain/result'
import { amps, volts } from '@/lib/domain/units'
import { replaceOne } from '@/tests/domain/matching/replacing/replace-one'
import { aDemand, aTest, aTube, generator, randomStock, shuffled, someLimits } from '../tubes'

type Given = {
  readonly beside: readonly Candidate[]
  readonly out: Candidate | null
  readonly stock: readonly Candidate[]
  readonly demand: SocketDemand
  readonly limits: MatchLimits
}

type Told = { readonly now: unknown; readonly ranked: readonly string[]; readonly sets: readonly unknown[] }

function byTrying({ beside, out, stock, demand, limits }: Given): Result<Told, unknown> {
  const found = replaceOne({ beside, out, stock }, demand, limits)
  if (!found.ok) return found
  const { now, ranked, setWith } = found.value
  return ok({ now, ranked: ranked.map(({ mark }) => mark), sets: ranked.map(({ tubeId }) => setWith(tubeId)) })
}

/** As a page does it: the stock laid out and carried over by itself, then the seats that are not in it. */
function outOfColumns({ beside, out, stock, demand, limits }: Given): Result<Told, unknown> {
  const { predictions, carrying = { corrections: [] } } = limits
  const kept = laidOut(stock, carrying, predictions)
  const before = JSON.stringify([kept.stock.kinds, [...kept.stock.kindNumbers], kept.predicted?.rows.used])
  const away = [...beside, ...(out ? [out] : [])].filter((tube) => placeIn(kept.stock, tube) === null)
  const ofTube = predictions?.ofTube ?? new Map()
  const running = withSeats(kept, { tubes: away, carrying: carryingWith(kept, carrying), ofTube })
  const place = (tube: Candidate) => placeIn(running.stock, tube) ?? expect.fail(`${tube.mark} is nowhere`)
  const found = replaceFrom(running, { beside: beside.map(place), out: out && place(out) }, demand, limits)
  expect(JSON.stringify([kept.stock.kinds, [...kept.stock.kindNumbers], kept.predicted?.rows.used])).toBe(before)
  if (!found.ok) return found
  const { now, first, places, setWith } = found.value
  const ranked = first(places.length, () => true)
  return ok({ now, ranked: ranked.map((at) => tubeAt(running.stock, at).mark), sets: ranked.map(setWith) })
}

function laidOut(stock: readonly Candidate[], carrying: Carrying, predictions: Predictions | undefined): Running {
  const carried = carriedStock(stockInOrder(stock), carrying, predictions ? 'everywhere' : 'same-point')
  const predicted = predictions ? columnsOf(carried, predictions) : null
  return { stock: carried, predicted, ...comparedFigures(carried, predicted) }
}

function same(given: Given): Result<Told, unknown> {
  const told = outOfColumns(given)
  expect(told).toEqual(byTrying(given))
  return told
}

const FITTED = { kind: 'fitted', place: 'an amplifier' } as const
const band = (value: number, half: number): Band => ({ value, low: value - half, high: value + half })

function predictedOf(random: () => number): Result<PredictedTube, string> {
  if (random() < 0.1) return fail('The circuit has no operating point with it.')
  const current = 0.03 + Math.round(random() * 20) / 1000
  return ok({
    plateCurrent: band(current, 0.001 + random() / 1000),
    byReadings: amps(0.0005),
    ...(random() < 0.3 ? { byCarrying: amps(0.0003) } : {}),
    transconductance: band(0.005 + Math.round(random() * 10) / 10_000, 0.0002),
    plateDissipation: band(current * 430, 1),
    extrapolated: random() < 0.1,
  })
}

const predictionsFor = (tubes: readonly Candidate[], random: () => number): Predictions => ({
  readOn: '2031-05-19',
  ofTube: new Map(tubes.filter(({ test }) => test).map(({ tubeId }) => [tubeId, predictedOf(random)])),
})

const CORRECTIONS: Carrying['corrections'] = (['plateCurrent', 'transconductance'] as const).map((figure) => ({
  ...{ from: 'Bench tester 2', to: 'Bench tester 1', figure, factor: 0.96, readingUncertainty: 0.02 },
}))

/** Of two instruments and two test points, with untested, dead, old, held and rejected ones among them. */
function mixedStock(random: () => number): Candidate[] {
  const shape = random() < 0.5 ? [2, 0.25, 1000] : [0.01, 0.01, 1]
  const [currentStep, slopeStep, priceStep] = shape as [number, number, number]
  return randomStock(random, { size: 14, currentStep, slopeStep, priceStep }).map((tube) => varied(tube, random))
}

function varied(tube: Candidate, random: () => number): Candidate {
  const draw = random()
  if (draw < 0.05) return { ...tube, test: null }
  if (draw < 0.1) return { ...tube, state: { kind: 'reserved', holder: 'job 1001-2' } }
  if (draw < 0.13) return { ...tube, condition: 'reject' }
  const test = tube.test ?? aTest()
  if (draw < 0.18) return { ...tube, test: { ...test, testedAt: '2029-01-01T10:00:00.000Z' } }
  if (draw < 0.22) return { ...tube, test: { ...test, transconductance: null } }
  if (draw < 0.32) return { ...tube, designation: '5881', test: { ...test, instrument: ' bench  TESTER 1' } }
  if (draw < 0.5) return { ...tube, test: { ...test, instrument: 'Bench tester 2' } }
  if (draw < 0.55) return { ...tube, test: { ...test, testPoint: { ...test.testPoint, plateVoltage: volts(251) } } }
  return tube
}

function drawn(random: () => number, count: number): Given {
  const all = mixedStock(random)
  const set = shuffled(all, random).slice(0, count)
  // Of those of the set each may lie in no drawer any more.
  const away = new Set(set.filter(() => random() < 0.35).map(({ tubeId }) => tubeId))
  const seat = (tube: Candidate): Candidate => (away.has(tube.tubeId) ? { ...tube, state: FITTED } : tube)
  const [out, ...beside] = set.map(seat)
  const stock = shuffled(
    all.filter(({ tubeId }) => !away.has(tubeId)),
    random,
  )
  const demand = aDemand(count, { arrangement: random() < 0.5 ? 'one-trim' : 'cathode-shared', aim: amps(0.04) })
  const predictions = random() < 0.6 ? { predictions: predictionsFor(all, random) } : {}
  const carrying = random() < 0.6 ? { carrying: { corrections: CORRECTIONS } } : {}
  const weights = random() < 0.3 ? {} : { weights: USUAL_WEIGHTS[demand.arrangement] }
  const further = { oneDesignation: random() < 0.2, maximumTestAgeDays: random() < 0.5 ? 365 : null }
  const limits = someLimits({ ...predictions, ...carrying, ...weights, ...further })
  return { beside, out: random() < 0.9 ? (out ?? null) : null, stock, demand, limits }
}

describe('one tube for another out of a stock laid out', () => {
  it('1,200 draws of one to six sockets: order, sets, refusals as by trying every tube, and the stock stays as it was', () => {
    const random = generator(2031)
    const told = { ranked: 0, refused: 0, carried: 0 }
    for (let round = 0; round < 1200; round += 1) {
      const answer = same(drawn(random, 1 + (round % 6)))
      if (!answer.ok) told.refused += 1
      else if (answer.value.ranked.length > 0) told.ranked += 1
      if (JSON.stringify(answer).includes('"carried":')) told.carried += 1
    }
    // That the draws meet what they are to meet.
    expect(told.ranked).toBeGreaterThan(400)
    expect(told.refused).toBeGreaterThan(100)
    expect(told.carried).toBeGreaterThan(100)
  })

  it('asked for the first two that may, it gives the first two of the whole order that may', () => {
    const random = generator(11)
    for (let round = 0; round < 100; round += 1) {
      const stock = randomStock(random, { size: 20, currentStep: 1, slopeStep: 0.25, priceStep: 1000 })
      const running = laidOut(stock, { corrections: [] }, undefined)
      const found = replaceFrom(running, { beside: [0], out: 1 }, aDemand(2), someLimits())
      if (!found.ok) throw new Error(found.fault.code)
      const may = (place: number) => place % 3 !== 0
      const { first, places } = found.value
      expect(first(2, may)).toEqual(
        first(places.length, () => true)
          .filter(may)
          .slice(0, 2),
      )
    }
  })

  it('without a stock nothing may come, and nothing is refused', () => {
    const [out, stays] = [aTube('A', { state: FITTED }), aTube('B', { state: FITTED })]
    const given = { beside: [stays], out, stock: [], demand: aDemand(2), limits: someLimits() }
    const told = same(given)
    expect(told).toMatchObject({ ok: true, value: { ranked: [] } })
  })
})
