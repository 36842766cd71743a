/** Readings of two testers brought together by reference tubes read on both. */
import { describe, expect, it } from 'vitest'
import type { Candidate, Carrying, KnownCorrection, MatchLimits, TubeTest } from '@/lib/domain/matching/candidate'
import { carriedCandidates, carriedStock, instrumentsOf } from '@/lib/domain/matching/carried-stock'
import { asRead } from '@/lib/domain/matching/carried-test'
import { carriedReadingText, carriedSetText, instrumentsText } from '@/lib/domain/matching/carried-text'
import { comparedFigures } from '@/lib/domain/matching/line-up'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { matchStatement } from '@/lib/domain/matching/match-statement'
import { exclusionText, type MatchingFormat, relaxationText } from '@/lib/domain/matching/matching-text'
import type { Proposal } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { matchStatementText } from '@/lib/domain/matching/statement-text'
import { stockInOrder, tubeAt } from '@/lib/domain/matching/stock-in-order'
import { stockSample } from '@/lib/domain/matching/stock-sample'
import { formatMoney, money } from '@/lib/domain/money'
import { instrumentCorrections, type ReferenceTube } from '@/lib/domain/stock/instrument-correction'
import type { TubeTest as StockTest } from '@/lib/domain/stock/tube'
import { amps, siemens, volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { replaceOne } from '@/tests/domain/matching/replacing/replace-one'
import { section } from '@/tests/support/stocked-shop'
import { aDemand, aTest, aTube, generator, randomStock, someLimits } from './tubes'

const US: MatchingFormat = { words: wordsFor('US'), formatMoney: (amount) => formatMoney(amount, 'USD', 'en-US') }

/** mA and mA/V; on A without a word. */
const on = (mark: string, milliamps: number, slope: number | null, over: Partial<TubeTest> = {}): Candidate =>
  aTube(mark, {
    test: aTest({
      instrument: 'A',
      plateCurrent: amps(milliamps / 1000),
      transconductance: slope === null ? null : siemens(slope / 1000),
      ...over,
    }),
  })

const B = { instrument: 'B' } as const

const known = (from: string, factor: number, share: number): KnownCorrection[] =>
  (['plateCurrent', 'transconductance'] as const).map((figure) => ({
    ...{ from, to: 'A', figure, factor, readingUncertainty: share },
  }))

const propose = (stock: readonly Candidate[], carrying?: Carrying, limits: Partial<MatchLimits> = {}, count = 2) =>
  proposeSet(stock, aDemand(count), someLimits({ ...(carrying ? { carrying } : {}), ...limits }))

const marksOf = ({ best }: Proposal) => best?.tubes.map(({ candidate }) => candidate.mark)
const reasonsFor = ({ excluded }: Proposal, mark: string) =>
  (excluded.find(({ candidate }) => candidate.mark === mark)?.reasons ?? []).map((reason) => exclusionText(reason, US))

const referenceOn = (instrumentName: string, milliamps: number, slope: number): StockTest => ({
  ...{ id: instrumentName, testedAt: new Date(0), testedBy: 'Ines', instrumentName, calibratedOn: null },
  ...{ shorts: false, leakage: '', gas: '', noise: '', microphony: '', note: '' },
  ...{ plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-14) },
  sections: [section(milliamps, slope)],
})

/**
 * By hand: five tubes read 1.020, 1.030, 1.040, 1.050 and 1.060 times as much on B as on A, so
 * the factor is their geometric mean 1.0399. They agree to 1.5 %, closer than a tester repeats,
 * so √2 · 2 % = 2.828 % stands for their spread: the factor ± 1.96 · 2.828 % / √5 = 2.48 %
 * (a standard uncertainty of 0.013), one reading carried ± 1.96 · 2.828 % · √1.2 = 6.07 %.
 */
const references: ReferenceTube[] = [1.02, 1.03, 1.04, 1.05, 1.06].map((times, at) => ({
  mark: `R-${at + 1}`,
  tests: [referenceOn('B', 50 * times, 5), referenceOn('A', 50, 5)],
}))
const BY_REFERENCES: Carrying = { corrections: instrumentCorrections(references) }

describe('a tube that read 41.6 mA on B, which reads 1.040 times A by five reference tubes', () => {
  const stock = [on('T-1', 40.1, 6), on('T-2', 43.6, 6), on('T-3', 41.6, 6, B)]

  it('is a tube of 40.0 ± 2.4 mA on A, and what was read is kept', () => {
    const [, , there] = carriedCandidates(stock, BY_REFERENCES, 'same-point')
    const test = there?.test ?? expect.fail('no test')
    expect(test.instrument).toBe('A')
    expect(test.plateCurrent).toBeCloseTo(0.0416 / Math.exp(Math.log(1.02 * 1.03 * 1.04 * 1.05 * 1.06) / 5), 12)
    expect(1000 * test.plateCurrent).toBeCloseTo(40, 2)
    expect(1000 * (test.carried?.current.share ?? 0) * test.plateCurrent).toBeCloseTo(2.43, 2)
    expect(carriedReadingText(test)).toBe('carried from 41.6\u00a0mA on B, ±2.4\u00a0mA')
    expect(asRead(test)).toEqual(stock[2]?.test)
  })

  it('makes the set another: T-1 with T-2 without the correction, T-1 with T-3 by it', () => {
    expect(marksOf(propose(stock))).toEqual(['T-1', 'T-2'])
    const proposal = propose(stock, BY_REFERENCES)
    expect(marksOf(proposal)).toEqual(['T-1', 'T-3'])
    // 0.1 mA apart and 2.4 mA of doubt are within 5 mA; 0 % and 6.1 % within 10 %.
    expect(proposal.best).toMatchObject({ instrument: 'A', match: 'both' })
    expect(1000 * (proposal.best?.doubt ?? 0)).toBeCloseTo(2.43, 2)
    expect(100 * (proposal.best?.slopeDoubt ?? 0)).toBeCloseTo(6.07, 2)
  })

  it('says so on the card and in the statement, with what the difference is known to', () => {
    const { best } = propose(stock, BY_REFERENCES)
    if (!best) throw new Error('No set')
    expect(carriedSetText(best)).toBe('Carried from B to A')
    const text = matchStatementText(matchStatement(best, USUAL_YARDSTICKS), US)
    expect(text).toContain('T-3 carried from B to A (current × 0.962 ± 6.1 %, transconductance × 1.000 ± 6.1 %, 95 %)')
    expect(text).toContain('the differences are known to ±2.4\u00a0mA and ±6.1 % (95 %)')
  })

  it('is uncertain where the doubt reaches beyond: 3.5 mA apart ± 2.4 mA', () => {
    const { best } = propose([on('T-2', 43.5, 6), on('T-3', 41.6, 6, B), on('T-4', 60, 6)], BY_REFERENCES)
    if (!best) throw new Error('No set')
    expect(best.match).toBe('uncertain')
    expect(matchStatementText(matchStatement(best, USUAL_YARDSTICKS), US)).toMatch(
      /Uncertain: within 5 mA and 10 % as carried over, but the difference is not known well enough to call it matched\.$/,
    )
  })

  it('stands in the picture of the stock at 40.0 mA, and says from where', () => {
    const carried = carriedStock(stockInOrder(stock), BY_REFERENCES, 'same-point')
    const running = { stock: carried, predicted: null, ...comparedFigures(carried, null) }
    const { points } = stockSample(running, propose(stock, BY_REFERENCES).best)
    expect(points.map(({ mark, at, carriedFrom }) => [mark, at.across.toFixed(1), carriedFrom])).toEqual([
      ['T-1', '40.1', undefined],
      ['T-2', '43.6', undefined],
      ['T-3', '40.0', 'B'],
    ])
  })

  it('comes for one that goes out of a set, and counts as carried', () => {
    const [one, two, three] = stock as [Candidate, Candidate, Candidate]
    const found = replaceOne(
      { beside: [one], out: two, stock: [three] },
      aDemand(2),
      someLimits({ carrying: BY_REFERENCES }),
    )
    if (!found.ok) throw new Error(found.fault.code)
    expect(found.value.ranked.map(({ mark }) => mark)).toEqual(['T-3'])
    expect(1000 * (found.value.setWith(three.tubeId)?.spreads.plateCurrent ?? 0)).toBeCloseTo(0.1, 2)
    const without = replaceOne({ beside: [one], out: two, stock: [three] }, aDemand(2), someLimits())
    expect(without.ok && without.value.ranked).toEqual([])
  })
})

describe('which instrument is compared on', () => {
  const stock = [on('T-1', 40, 6), on('T-2', 41.6, 6, B), on('T-3', 42, 6, B)]
  const instrumentOf = (given: readonly Candidate[], carrying: Carrying) =>
    carriedCandidates(given, carrying, 'everywhere').map(({ test }) => test?.instrument)
  const carrying: Carrying = { corrections: known('B', 1 / 1.04, 0.03) }

  it('the one that most were read on, of as many the earlier name, or the one asked for', () => {
    expect(instrumentOf(stock, carrying)).toEqual(['B', 'B', 'B'])
    expect(instrumentOf(stock.slice(0, 2), carrying)).toEqual(['A', 'A'])
    expect(instrumentOf(stock, { ...carrying, to: 'A' })).toEqual(['A', 'A', 'A'])
  })

  it('in whatever order the tubes are given; reserved ones count, rejects and those gone do not', () => {
    const rejected = { ...on('T-4', 40, 6), condition: 'reject' } as const
    const gone = { ...on('T-5', 40, 6), state: { kind: 'gone', cause: 'sold' } } as const
    const held = stock.map((tube) => ({ ...tube, state: { kind: 'reserved', holder: 'job 1' } }) as const)
    expect(instrumentOf([rejected, gone, ...held].reverse(), carrying)).toEqual(['B', 'B', 'B', 'B', 'B'])
  })

  it('the page says which, what was carried, and what would bring the others over', () => {
    const all = [...stock, on('T-6', 40, 6, { instrument: 'C' })]
    const carried = carriedStock(stockInOrder(all), carrying, 'same-point')
    expect(instrumentsText(instrumentsOf(carried, carrying), false, US)).toEqual([
      'Readings are compared as B shows them, which read most of them (2).',
      '1 tube read on A carried over to it.',
      '1 tube read on C compared only with each other: read 5 reference tubes on both it and B to carry them over.',
    ])
    expect(instrumentsText(instrumentsOf(stockInOrder(stock.slice(1)), carrying), false, US)).toEqual([])
  })

  it('at a point where nothing was read on it, tubes stay as read and make sets among themselves', () => {
    const elsewhere = {
      ...B,
      testPoint: { plateVoltage: volts(300), screenVoltage: volts(300), gridVoltage: volts(-20) },
    }
    const tubes = [
      on('T-1', 40, 6),
      on('T-2', 44, 6),
      on('T-3', 44.2, 6),
      on('T-4', 50, 6, elsewhere),
      on('T-5', 50, 6, elsewhere),
    ]
    const { best } = propose(tubes, carrying)
    const reasons = reasonsFor(propose(tubes.slice(0, 4), carrying), 'T-4')
    expect(reasons).toHaveLength(1)
    expect(reasons[0]).toMatch(/^Tested at plate 300 V/)
    expect(best).toMatchObject({ instrument: 'B', doubt: null, slopeDoubt: null })
    expect(best && carriedSetText(best)).toBeNull()
  })
})

describe('what cannot be carried cannot be said', () => {
  const stock = [on('T-1', 40, 6), on('T-2', 40.5, 6), on('T-3', 41.6, 6, B)]

  it('with no correction at all: read reference tubes on both', () => {
    expect(reasonsFor(propose(stock), 'T-3')).toEqual([
      'Cannot say: tested on B; the set on A. Readings from different instruments do not compare without a correction: read 5 reference tubes on both, and it can be carried over.',
    ])
  })

  it('with a correction of the current alone: its transconductance cannot be carried', () => {
    const carrying = { corrections: known('B', 0.96, 0.03).filter(({ figure }) => figure === 'plateCurrent') }
    expect(reasonsFor(propose(stock, carrying), 'T-3')).toEqual([
      'Cannot say: tested on B; the set on A. No correction of transconductance is known between them: read 5 reference tubes on both with both figures, and it can be carried over.',
    ])
    const bare = [on('T-1', 40, null), on('T-2', 45, null), on('T-3', 41.6, null, B)]
    expect(marksOf(propose(bare, carrying))).toEqual(['T-1', 'T-3'])
  })

  it('A with B and B with C is no correction of A with C', () => {
    const tubes = [on('T-1', 40, 6), on('T-2', 41, 6), on('T-3', 40, 6, { instrument: 'C' })]
    const chained = [...known('B', 0.96, 0.03), ...known('C', 0.9, 0.03).map((each) => ({ ...each, to: 'B' }))]
    expect(reasonsFor(propose(tubes, { corrections: chained }), 'T-3')[0]).toMatch(/^Cannot say: tested on C/)
  })

  it('where that leaves no set, the references are among what would help', () => {
    const { best, relax } = propose([on('T-1', 40, 6), on('T-3', 41.6, 6, B)])
    expect(best).toBeNull()
    expect(relax.map((each) => relaxationText(each, US))).toContain(
      'Read 5 shop references on both instruments, so that readings carry over, 1 tube more: at least 1 set.',
    )
  })
})

describe('laws of carrying, over 200 stocks of 12 tubes read on A, B and C', () => {
  const seeds = Array.from({ length: 200 }, (_, at) => at + 1)
  const made = (seed: number) => {
    const random = generator(seed)
    const shape = { size: 12, currentStep: 0.5, slopeStep: 0.1, priceStep: 500 }
    const stock = randomStock(random, shape).map((tube): Candidate => {
      const instrument = ['A', 'A', 'B', 'C'][Math.floor(4 * random())] as string
      return { ...tube, test: tube.test && { ...tube.test, instrument } }
    })
    const share = () => 0.01 + 0.05 * random()
    const corrections = [...known('B', 0.9 + 0.2 * random(), share()), ...known('C', 0.9 + 0.2 * random(), share())]
    return { stock, carrying: { corrections, to: 'A' } }
  }
  const groups = ({ best }: Proposal) => new Set(best?.tubes.map(({ candidate: { test } }) => test.carried?.from))

  it('a stock laid out and a list of tubes are carried alike', () => {
    for (const seed of seeds) {
      const { stock, carrying } = made(seed)
      const carried = carriedCandidates(stock, carrying, 'everywhere')
      const laid = carriedStock(stockInOrder(stock), carrying, 'everywhere')
      const byId = new Map(carried.map((tube) => [tube.tubeId, tube]))
      for (let place = 0; place < stock.length; place += 1) {
        const tube = tubeAt(laid, place)
        expect(tube).toEqual(byId.get(tube.tubeId))
        expect(laid.microamps[place]).toBe(Math.round(1e6 * (tube.test?.plateCurrent ?? 0)))
      }
    }
  })

  it('between tubes carried by one correction there is no doubt of it; across there is, and no less than of the widest', () => {
    let [across, alike] = [0, 0]
    for (const seed of seeds) {
      const { stock, carrying } = made(seed)
      const proposal = propose(stock, carrying)
      const { best } = proposal
      if (!best) throw new Error(`No set of seed ${seed}`)
      const halves = best.tubes.map(({ candidate: { test } }) => (test.carried?.current.share ?? 0) * test.plateCurrent)
      if (groups(proposal).size === 1) {
        alike += 1
        expect([best.doubt, best.slopeDoubt]).toEqual([null, null])
      } else {
        across += 1
        expect(best.doubt).toBeGreaterThanOrEqual(Math.max(...halves))
        expect(best.doubt).toBeCloseTo(Math.hypot(...halves), 12)
      }
    }
    expect(Math.min(across, alike)).toBeGreaterThan(20)
  })

  it('a set is never called surer than the same figures all read on A would be', () => {
    const rank = { both: 0, 'current-only': 1, uncertain: 2, outside: 3 }
    for (const seed of seeds) {
      const { stock, carrying } = made(seed)
      const best = propose(stock, carrying).best ?? expect.fail('no set')
      const plain = best.tubes.map(({ candidate }): Candidate => {
        const { carried: _, ...test } = candidate.test
        return { ...candidate, test }
      })
      const asIfRead = propose(plain).best ?? expect.fail('no set')
      expect(asIfRead.spreads).toEqual(best.spreads)
      expect(rank[best.match]).toBeGreaterThanOrEqual(rank[asIfRead.match])
    }
  })

  it('without a correction everything is as if nothing had been asked', () => {
    for (const seed of seeds) {
      const { stock } = made(seed)
      expect(propose(stock, { corrections: [] })).toEqual(propose(stock))
    }
  })

  it('carrying it never makes a tube cheaper to choose: of two alike the one read there goes first', () => {
    const weights = { ...someLimits().weights, confidence: 0.1 } as NonNullable<MatchLimits['weights']>
    const stock = [{ ...on('T-1', 41.6, 6, B), price: money(4000) }, on('T-2', 40, 6), on('T-3', 40, 6)]
    const carrying = {
      corrections: known('B', 40 / 41.6, 0.05).map((each) =>
        each.figure === 'plateCurrent' ? each : { ...each, factor: 1 },
      ),
    }
    expect(marksOf(propose(stock, carrying, { weights }))).toEqual(['T-2', 'T-3'])
  })
})
