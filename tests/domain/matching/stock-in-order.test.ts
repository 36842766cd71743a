/** A stock that is kept laid out and changed, against the same stock laid out anew; and long stocks against looking at every pair. */
import { describe, expect, it } from 'vitest'
import type { Candidate } from '@/lib/domain/matching/candidate'
import { comparedFigures, movedFigures } from '@/lib/domain/matching/line-up'
import { USUAL_WEIGHTS } from '@/lib/domain/matching/match-weights'
import { answerAt, columnsOf, movedColumns, STANDS, setPredicted } from '@/lib/domain/matching/predicted-columns'
import type { PredictedTube } from '@/lib/domain/matching/predicted-tube'
import { proposeFrom, proposeSet } from '@/lib/domain/matching/propose-set'
import { spreadCost } from '@/lib/domain/matching/search/spread-cost'
import { type StockInOrder, stockInOrder, tubeAt, withChanges, withStates } from '@/lib/domain/matching/stock-in-order'
import { stockSample } from '@/lib/domain/matching/stock-sample'
import { money } from '@/lib/domain/money'
import { fail, ok, type Result } from '@/lib/domain/result'
import { amps, siemens } from '@/lib/domain/units'
import { aDemand, aTest, aTube, generator, someLimits } from './tubes'

const tubesOf = (stock: StockInOrder) => stock.marks.map((_, place) => tubeAt(stock, place))

function randomTube(random: () => number, mark: string): Candidate {
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T
  const test = aTest({
    testedAt: pick(['2031-05-01T10:00:00.000Z', '2030-11-30', '2031-02-28']),
    instrument: pick(['Bench tester 1', 'Bench tester 2']),
    plateCurrent: amps(Math.round(6000 + 2000 * random()) / 100_000),
    transconductance: random() < 0.2 ? null : siemens(Math.round(5000 + 2000 * random()) / 1e6),
    leakageNote: random() < 0.1 ? 'gas: a trace' : null,
  })
  return aTube(mark, {
    tubeId: `${mark}-${Math.floor(random() * 1e9)}`,
    designation: pick(['6L6GC', '5881']),
    price: money(3000 + 100 * Math.floor(random() * 30)),
    test: random() < 0.1 ? null : test,
    state: random() < 0.1 ? { kind: 'reserved', holder: 'job 1' } : { kind: 'free' },
  })
}

const prediction = ({ test, price }: Candidate): Result<PredictedTube, string> | null => {
  if (!test) return null
  if (price === 3000) return fail('It cannot be said.')
  const band = (value: number) => ({ value, low: 0.9 * value, high: 1.1 * value })
  return ok({
    plateCurrent: band(test.plateCurrent / 2),
    byReadings: amps(0.001),
    transconductance: band(test.transconductance ?? 0.004),
    plateDissipation: band(200 * test.plateCurrent),
    extrapolated: price > 5500,
  })
}

const predictionsOf = (tubes: readonly Candidate[]) => ({
  readOn: '2031-05-01',
  ofTube: new Map(
    tubes.flatMap((tube): [string, Result<PredictedTube, string>][] => {
      const found = prediction(tube)
      return found ? [[tube.tubeId, found]] : []
    }),
  ),
})

/** In whatever order it was given, and however it came to be. */
function expectSame(stock: StockInOrder, all: readonly Candidate[]): void {
  const anew = stockInOrder(all)
  expect(tubesOf(stock)).toEqual(tubesOf(anew))
  expect(stock.byPrice).toEqual(anew.byPrice)
  expect([stock.microamps, stock.microsiemens, stock.testDay]).toEqual([
    anew.microamps,
    anew.microsiemens,
    anew.testDay,
  ])
}

describe('40 rounds of tubes gone, come and changed', () => {
  const random = generator(20_311_120)
  let all = Array.from({ length: 60 }, (_, at) => randomTube(random, `T-${at}`))
  let stock = stockInOrder(all)
  let predicted = columnsOf(stock, predictionsOf(all))
  let figures = { test: comparedFigures(stock, null), amp: comparedFigures(stock, predicted) }

  it.each(Array.from({ length: 40 }, (_, round) => round))('round %i is as laid out anew', (round) => {
    const gone = new Set(all.filter(() => random() < 0.15).map(({ tubeId }) => tubeId))
    // Some come back changed under their own mark, some are new.
    const back = all.filter(({ tubeId }) => gone.has(tubeId) && random() < 0.5)
    const added = [
      ...back.map(({ mark }) => randomTube(random, mark)),
      ...Array.from({ length: round % 4 }, (_, at) => randomTube(random, `N${at}-0${round}`)),
    ]
    all = [...all.filter(({ tubeId }) => !gone.has(tubeId)), ...added]
    const places = new Set(stock.tubeIds.flatMap((id, place) => (gone.has(id) ? [place] : [])))
    const change = withChanges(stock, places, added)
    stock = change.stock
    predicted = movedColumns(predicted, change.from, gone)
    const openPlaces = stock.tubeIds.flatMap((_, place) => (predicted.stands[place] === STANDS.open ? [place] : []))
    expect(openPlaces.map((place) => stock.tubeIds[place]).sort()).toEqual(added.map(({ tubeId }) => tubeId).sort())
    for (const place of openPlaces) {
      const tube = tubeAt(stock, place)
      setPredicted(predicted, place, tube.tubeId, prediction(tube))
    }
    figures = { test: movedFigures(figures.test, change, null), amp: movedFigures(figures.amp, change, predicted) }
    expectSame(stock, all)
    expect(figures).toEqual({ test: comparedFigures(stock, null), amp: comparedFigures(stock, predicted) })
    const { ofTube } = predictionsOf(all)
    expect(stock.tubeIds.map((id, place) => answerAt(predicted, place, id))).toEqual(
      stock.tubeIds.map((id) => ofTube.get(id)),
    )
    const limits = someLimits()
    expect(proposeFrom({ stock, predicted, ...figures.amp }, aDemand(2), limits)).toEqual(
      proposeSet([...all].reverse(), aDemand(2), { ...limits, predictions: predictionsOf(all) }),
    )
  })

  it('states restated are those of the tubes, free ones too', () => {
    const restated = withStates(
      stock,
      new Map([
        [0, { kind: 'gone', cause: 'sold' }],
        [1, { kind: 'free' }],
      ]),
    )
    expect([tubeAt(restated, 0).state, tubeAt(restated, 1).state]).toEqual([
      { kind: 'gone', cause: 'sold' },
      { kind: 'free' },
    ])
    expectSame(stock, all)
  })
})

describe('a stock of 6,000', () => {
  const random = generator(7)
  const all = Array.from({ length: 6000 }, (_, at) => {
    const transconductance = siemens(Math.round(5000 + 2000 * random()) / 1e6)
    const test = aTest({ plateCurrent: amps(Math.round(5000 + 4000 * random()) / 100_000), transconductance })
    return aTube(`T-${at}`, { price: money(3000 + Math.floor(4000 * random())), test })
  })
  const stock = stockInOrder(all)
  const running = { stock, predicted: null, ...comparedFigures(stock, null) }
  const limits = { ...someLimits(), weights: USUAL_WEIGHTS['one-trim'] }

  it('asked again, with other limits in between, answers the same as from scratch', () => {
    for (const maximumTestAgeDays of [365, 20, 365, 19]) {
      for (const count of [2, 4]) {
        const asked = { ...limits, maximumTestAgeDays }
        expect(proposeFrom(running, aDemand(count), asked)).toEqual(proposeSet(all, aDemand(count), asked))
      }
    }
  })

  it('the cheapest pair within the yardsticks is that of all 17,997,000 pairs', () => {
    const { leastPrice } = proposeFrom(running, aDemand(2), limits)
    const best = cheapestOfAll(stock)
    expect(leastPrice?.tubes.map(({ candidate }) => candidate.mark).sort()).toEqual(
      best.map((place) => stock.marks[place] as string).sort(),
    )
  })

  it('is drawn as 600 points, every tenth in the order of marks, and the set beside them', () => {
    const { best } = proposeFrom(running, aDemand(2), limits)
    const { points, all: count, every } = stockSample(running, best)
    expect([count, every]).toEqual([6000, 10])
    expect(
      points
        .filter(({ chosen }) => chosen)
        .map(({ tubeId }) => tubeId)
        .sort(),
    ).toEqual(best?.tubes.map(({ candidate }) => candidate.tubeId).sort())
    expect(points.filter(({ chosen }) => !chosen).every(({ mark }) => Number(mark.slice(2)) % 10 === 0)).toBe(true)
    expect(points.length).toBeLessThanOrEqual(602)
  })
})

/** Price, then the points of the spreads, then the earlier marks. */
function cheapestOfAll({ microamps, microsiemens, price }: StockInOrder): number[] {
  const scale = { xYard: 5000, yYard: 1000, xWeight: 1000, yWeight: 1000 }
  let [best, bestPrice, bestSpread]: [number[], number, number] = [[], Number.POSITIVE_INFINITY, 0]
  for (let a = 0; a < price.length; a += 1) {
    for (let b = a + 1; b < price.length; b += 1) {
      const both = (price[a] as number) + (price[b] as number)
      if (both > bestPrice) continue
      const apart = Math.abs((microamps[a] as number) - (microamps[b] as number))
      const [y, z] = [microsiemens[a] as number, microsiemens[b] as number]
      const [low, high] = [Math.min(y, z), Math.max(y, z)]
      if (apart > 5000 || (high - low) * 10 > low) continue
      const spread = spreadCost(scale, apart, low, high)
      if (both === bestPrice && spread >= bestSpread) continue
      ;[best, bestPrice, bestSpread] = [[a, b], both, spread]
    }
  }
  return best
}
