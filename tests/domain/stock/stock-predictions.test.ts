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
    ...{ shorts: false, leakage: '', gas: '', noise: '', note: '' },
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
})
