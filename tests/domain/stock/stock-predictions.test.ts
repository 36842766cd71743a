/**
 * Predictions of a stock against the what-if of one tube in all sockets, which solves the
 * stage anew for every doubt instead of using slopes.
 */
import { describe, expect, it } from 'vitest'
import { whatIf } from '@/lib/domain/circuit/change/what-if'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { money } from '@/lib/domain/money'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import { proposedFromStock } from '@/lib/domain/stock/proposed-from-stock'
import { stockPredictions } from '@/lib/domain/stock/stock-predictions'
import type { StockedTube, Tube, TubeTest } from '@/lib/domain/stock/tube'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { section } from '@/tests/support/stocked-shop'
import { circuitOf, trueStage } from '../circuit/amp/read-amp'
import { given } from '../circuit/solved'
import { aDemand, someLimits } from '../matching/tubes'

const NOW = new Date('2031-05-20T15:00:00Z')
const VIEW = { catalogue: HANDBOOK_ONLY, now: NOW, words: wordsFor('US'), readOn: '2031-05-19' }

function stocked(mark: string, milliamps: number, slope: number | null, over: Partial<TubeTest> = {}): StockedTube {
  const tube: Tube = {
    ...{ id: `id-${mark}`, mark, designation: '6L6GC', family: '6L6', condition: 'used-tested', price: money(4000) },
    ...{ acquired: '', construction: '', location: '', cost: null, whereabouts: 'in-stock', version: 1 },
    ...{ hold: '', heldForJob: null, heldForJobNumber: null, heldByQuoteId: null, heldUntil: null },
    further: NOTHING_FURTHER,
    createdAt: NOW,
  }
  const test: TubeTest = {
    ...{ id: `test-${mark}`, testedAt: NOW, testedBy: 'Ines', instrumentName: 'Bench tester 1', calibratedOn: null },
    ...{ shorts: false, leakage: '', gas: '', noise: '', microphony: '', note: '' },
    ...{ plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-14) },
    sections: [section(milliamps, slope)],
    ...over,
  }
  return { tube, test, shortsFoundAt: null }
}

const circuit = circuitOf(trueStage())
const high = { plateVoltage: volts(400), screenVoltage: volts(400), gridVoltage: volts(-36) }
const stock = [
  stocked('A', 72, 6),
  stocked('B', 80, 5.6),
  stocked('C', 65, 6.2),
  stocked('D', 60, null),
  stocked('E', 62, 5, high),
]

describe('a stock foretold in an amplifier', () => {
  const { ofTube } = given(stockPredictions(stock, circuit, VIEW))
  const predicted = (mark: string) => given(ofTube.get(`id-${mark}`) ?? { ok: false, fault: 'not there' })

  it.each(stock.map((each) => [each.tube.mark, each] as const))(
    '%s idles as the what-if says of it in every socket',
    (mark, each) => {
      const all = given(proposedFromStock(each, HANDBOOK_ONLY, NOW))
      const sockets = given(whatIf(circuit, { tubes: { all } })).sockets.flatMap(({ changed }) => changed ?? [])
      const currents = sockets.map(({ plateAmps }) => plateAmps)
      const hottest = currents.reduce((a, b) => (b.value > a.value ? b : a))
      const { plateCurrent } = predicted(mark)
      expect(plateCurrent.value / hottest.value).toBeCloseTo(1, 6)
      // Bands by slopes against bands by differences.
      expect((plateCurrent.high - plateCurrent.low) / (hottest.high - hottest.low)).toBeCloseTo(1, 2)
    },
  )

  it('10 % more current at no more transconductance idles far more than 10 % higher in the amplifier', () => {
    const ratio = predicted('B').plateCurrent.value / predicted('A').plateCurrent.value
    expect(ratio).toBeGreaterThan(1.15)
  })

  it('what its own readings leave is less than the whole band, and nearer test points leave less', () => {
    for (const { tube } of stock) {
      const { plateCurrent, byReadings } = predicted(tube.mark)
      expect(byReadings).toBeGreaterThan(0)
      expect(2 * byReadings).toBeLessThan(plateCurrent.high - plateCurrent.low)
    }
    const share = (mark: string) => predicted(mark).byReadings / predicted(mark).plateCurrent.value
    expect(share('E')).toBeLessThan(share('A'))
  })

  it('without a usable test it is not in it, or with the reason', () => {
    const odd = [
      { ...stocked('N', 70, 6), test: null },
      { ...stocked('S', 70, 6), shortsFoundAt: NOW },
      stocked('V', 70, 6, { plateVoltage: null }),
    ]
    const found = given(stockPredictions(odd, circuit, VIEW)).ofTube
    expect(found.has('id-N')).toBe(false)
    expect(found.get('id-S')).toEqual({ ok: false, fault: 'S showed a short at its last test.' })
    expect(found.get('id-V')).toMatchObject({ ok: false, fault: expect.stringContaining('no test') })
  })

  it('proposes by these figures: the pair that idles alike, though others test alike', () => {
    const tubes = [stocked('P', 72, 6), stocked('Q', 72, 6.9), stocked('R', 73, 6.06)]
    const predictions = given(stockPredictions(tubes, circuit, VIEW))
    const view = { now: NOW, timeZone: 'UTC', jobInHand: null, catalogue: HANDBOOK_ONLY }
    const { best } = proposeSet(
      tubes.map((each) => candidateOf(each, view)),
      aDemand(2),
      someLimits({ predictions, allowOverPrintedRating: true }),
    )
    expect(best?.tubes.map(({ candidate }) => candidate.mark)).toEqual(['P', 'R'])
    expect(best?.predicted).toBe(true)
  })

  describe('with readings carried over from another tester', () => {
    // B reads 4 % more plate current than A, and as much transconductance; one reading carried is ± 6 % and ± 5 %.
    const corrections = [
      { from: 'B', to: 'Bench tester 1', figure: 'plateCurrent', factor: 1 / 1.04, readingUncertainty: 0.06 },
      { from: 'B', to: 'Bench tester 1', figure: 'transconductance', factor: 1, readingUncertainty: 0.05 },
    ] as const
    const carrying = { corrections, to: 'Bench tester 1' }
    const onB = { instrumentName: 'B' }
    const both = (tubes: readonly StockedTube[]) =>
      given(stockPredictions(tubes, circuit, { ...VIEW, carrying })).ofTube
    const of = (mark: string, tubes: readonly StockedTube[]) =>
      given(both(tubes).get(`id-${mark}`) ?? { ok: false, fault: 'not there' })

    it('74.88 mA on B idles as 72 mA on A does, its band wider by just what carrying adds', () => {
      const there = of('A', [stocked('A', 74.88, 6, onB)])
      const here = predicted('A')
      expect(there.plateCurrent.value / here.plateCurrent.value).toBeCloseTo(1, 9)
      expect(there.byReadings / here.byReadings).toBeCloseTo(1, 6)
      const [wide, narrow] = [there, here].map(({ plateCurrent: { low, high } }) => (high - low) / 2) as [
        number,
        number,
      ]
      expect(wide).toBeGreaterThan(narrow)
      // Variances add up; the rectangular and the normal part of the whole band to a few per cent.
      expect(Math.hypot(narrow, there.byCarrying ?? 0) / wide).toBeCloseTo(1, 1)
      expect(here.byCarrying).toBeUndefined()
    })

    it('carrying never narrows a band, with transconductance or without, at any test point', () => {
      for (const slope of [5.6, 6, null])
        for (const milliamps of [55, 65, 75, 85])
          for (const point of [{}, high]) {
            const asRead = of('X', [stocked('X', milliamps, slope, point)])
            const carried = of('X', [stocked('X', milliamps * 1.04, slope, { ...point, ...onB })])
            const width = ({ low, high }: { low: number; high: number }) => high - low
            expect(width(carried.plateCurrent)).toBeGreaterThan(width(asRead.plateCurrent))
            expect(width(carried.plateDissipation)).toBeGreaterThan(width(asRead.plateDissipation))
            expect(width(carried.transconductance)).toBeGreaterThanOrEqual(width(asRead.transconductance))
          }
    })

    it('two carried alike differ as surely as two read alike; one carried and one read less surely, yet more than tested apart', () => {
      const doubtOf = (tubes: readonly StockedTube[], carry = true) => {
        const view = { now: NOW, timeZone: 'UTC', jobInHand: null, catalogue: HANDBOOK_ONLY }
        const predictions = given(stockPredictions(tubes, circuit, { ...VIEW, ...(carry ? { carrying } : {}) }))
        const limits = someLimits({ predictions, allowOverPrintedRating: true, ...(carry ? { carrying } : {}) })
        const candidates = tubes.map((each) => candidateOf(each, view))
        return proposeSet(candidates, aDemand(2), limits).best?.doubt ?? 0
      }
      const read = doubtOf([stocked('A', 72, 6), stocked('B', 73, 6)])
      const alike = doubtOf([stocked('A', 74.88, 6, onB), stocked('B', 75.92, 6, onB)])
      const across = doubtOf([stocked('A', 74.88, 6, onB), stocked('B', 73, 6)])
      const apart = doubtOf([stocked('A', 74.88, 6, onB), stocked('B', 73, 6)], false)
      expect(alike / read).toBeCloseTo(1, 6)
      expect(across).toBeGreaterThan(read)
      expect(across).toBeLessThan(apart)
    })

    it('no correction known: every tube is foretold by what it was read as', () => {
      const tubes = [stocked('A', 74.88, 6, onB), ...stock.slice(1)]
      const none = given(stockPredictions(tubes, circuit, { ...VIEW, carrying: { corrections: [], to: 'B' } }))
      expect(none).toEqual(given(stockPredictions(tubes, circuit, VIEW)))
    })
  })
})
