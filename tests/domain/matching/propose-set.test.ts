import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { matchStatement } from '@/lib/domain/matching/match-statement'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { money } from '@/lib/domain/money'
import { siemens, volts } from '@/lib/domain/units'
import { aDemand, aTest, aTube, generator, randomStock, readTube, shuffled, someLimits } from './tubes'

const marksOf = (option: SetOption | null | undefined) => option?.tubes.map((tube) => tube.candidate.mark)

describe('by hand', () => {
  const stock = [
    readTube('T-1', 70, 6.0, 5000),
    readTube('T-2', 71, 6.1, 5000),
    readTube('T-3', 74, 6.3, 2500),
    readTube('T-4', 78, 6.9, 2000),
  ]
  const proposal = proposeSet(stock, aDemand(2), someLimits())

  it('70 and 71 mA with 6.0 and 6.1 mA/V score 1/5 + (0.1/6.0)/0.1 = 0.3667 and are the closest pair', () => {
    expect(marksOf(proposal.closest)).toEqual(['T-1', 'T-2'])
    expect(proposal.closest?.score).toBeCloseTo(0.2 + 1 / 6, 12)
    expect(proposal.closest?.spreads).toEqual({ plateCurrent: 0.001, transconductance: 0.1 / 6.0 })
    expect(proposal.closest?.match).toBe('both')
  })

  it('74 and 78 mA with 6.3 and 6.9 mA/V lie within 5 mA and 10 % at 45.00 against 100.00', () => {
    expect(marksOf(proposal.leastPrice)).toEqual(['T-3', 'T-4'])
    expect(proposal.leastPrice?.price).toBe(4500)
    expect(proposal.leastPrice?.lost).toEqual({
      plateCurrent: 0.003,
      transconductance: 0.6 / 6.3 - 0.1 / 6.0,
      price: -5500,
    })
  })

  it('says of exactly 5 mA and exactly 10 % that they are within, and of 1 µA more that it is not', () => {
    const at = proposeSet([readTube('A', 70, 6.0), readTube('B', 75, 6.6)], aDemand(2), someLimits())
    expect([at.closest?.match, at.closest?.score]).toEqual(['both', 2])
    const over = proposeSet([readTube('A', 70, 6.0), readTube('B', 75.001, 6.6)], aDemand(2), someLimits())
    expect([over.closest?.match, over.leastPrice]).toEqual(['outside', null])
  })

  it('breaks a tie by price, then by marks as people count: T-9 before T-10', () => {
    const even = ['T-10', 'T-9', 'T-11', 'T-100'].map((mark) => readTube(mark, 70, 6, 4000))
    expect(marksOf(proposeSet(even, aDemand(2), someLimits()).closest)).toEqual(['T-9', 'T-10'])
    const cheap = [...even, readTube('T-200', 70, 6, 3999)]
    expect(marksOf(proposeSet(cheap, aDemand(2), someLimits()).closest)).toEqual(['T-9', 'T-200'])
  })
})

describe('laws on random stocks', () => {
  const cases = fc.record({
    seed: fc.integer({ min: 0, max: 1e9 }),
    size: fc.integer({ min: 0, max: 60 }),
    count: fc.constantFrom(1, 2, 3, 4, 6, 8),
    cap: fc.option(fc.integer({ min: 2000, max: 8000 })),
  })
  const shape = { currentStep: 1, slopeStep: 0.2, priceStep: 500 }

  it('no tube stands twice, no set is over the price limit, every set is whole', () => {
    fc.assert(
      fc.property(cases, ({ seed, size, count, cap }) => {
        const stock = randomStock(generator(seed), { size, ...shape })
        const priceCap = cap === null ? null : money(cap * count)
        const { closest, leastPrice, next } = proposeSet(stock, aDemand(count), someLimits({ priceCap }))
        const sets = [closest, ...next].filter((option) => option !== null)
        const shown = sets.flatMap((option) => marksOf(option) ?? [])
        expect(new Set(shown).size).toBe(shown.length)
        for (const option of [...sets, ...(leastPrice ? [leastPrice] : [])]) {
          const tubes = option.tubes.map((tube) => tube.candidate)
          expect(new Set(tubes.map((tube) => tube.tubeId)).size).toBe(count)
          expect(option.price).toBe(tubes.reduce((total, tube) => total + tube.price, 0))
          if (priceCap !== null) expect(option.price).toBeLessThanOrEqual(priceCap)
          expect(option.score).toBeGreaterThanOrEqual(closest?.score ?? Number.NaN)
        }
        if (leastPrice) expect(leastPrice.match).toBe('both')
        if (size < count) expect(closest).toBeNull()
        if (size >= count && priceCap === null) expect(closest).not.toBeNull()
      }),
      { seed: 11, numRuns: 200 },
    )
  })

  it('the order of the stock changes nothing', () => {
    fc.assert(
      fc.property(cases, ({ seed, size, count }) => {
        const random = generator(seed)
        const stock = randomStock(random, { size, ...shape })
        const straight = proposeSet(stock, aDemand(count), someLimits())
        expect(proposeSet(shuffled(stock, random), aDemand(count), someLimits())).toEqual(straight)
      }),
      { seed: 12, numRuns: 100 },
    )
  })
})

describe('test points and instruments', () => {
  const otherPoint = { plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-15) }
  const moved = (mark: string, over: Parameters<typeof aTest>[0]) => aTube(mark, { test: aTest(over) })

  it('makes no pair of -14 V and -15 V of grid, however alike the readings', () => {
    const stock = [moved('A', {}), moved('B', { testPoint: otherPoint })]
    const proposal = proposeSet(stock, aDemand(2), someLimits())
    expect(proposal.closest).toBeNull()
    expect(proposal.usable).toBe(2)
    expect(proposal.relax).toEqual([{ limit: 'test-point', tubes: 2, sets: 1, neededDays: null, neededPrice: null }])
  })

  it('takes -14.05 V for -14 V, and not -14.06 V', () => {
    const at = (gridVoltage: number) => ({ ...otherPoint, gridVoltage: volts(gridVoltage) })
    const pair = (gridVoltage: number) =>
      proposeSet([moved('A', {}), moved('B', { testPoint: at(gridVoltage) })], aDemand(2), someLimits()).closest
    expect(pair(-14.05)).not.toBeNull()
    expect(pair(-14.06)).toBeNull()
  })

  it('searches every group and says of the other one how it differs', () => {
    const stock = [
      readTube('A-1', 70, 6),
      readTube('A-2', 74, 6),
      readTube('A-3', 90, 6),
      moved('B-1', { instrument: 'Bench tester 2' }),
      moved('B-2', { instrument: ' bench  TESTER 2 ' }),
      moved('C-1', { testPoint: otherPoint }),
      moved('D-1', { transconductance: null }),
    ]
    const proposal = proposeSet(stock, aDemand(2), someLimits())
    expect(marksOf(proposal.closest)).toEqual(['B-1', 'B-2'])
    expect(proposal.next.map(marksOf)).toEqual([['A-1', 'A-2']])
    expect(
      proposal.excluded.map(({ candidate, reasons }) => [candidate.mark, reasons.map((reason) => reason.code)]),
    ).toEqual(
      expect.arrayContaining([
        ['A-3', ['other-instrument']],
        ['C-1', ['other-instrument', 'other-test-point']],
        ['D-1', ['other-instrument', 'transconductance-differs']],
      ]),
    )
    expect(proposal.excluded).toHaveLength(3)
  })

  it('charges one yardstick where transconductance was not measured, and calls it matched by current only', () => {
    const unmeasured = [readTube('N-1', 70, null, 1000), readTube('N-2', 70, null, 1000)]
    const alone = proposeSet(unmeasured, aDemand(2), someLimits())
    expect([alone.closest?.score, alone.closest?.match, alone.leastPrice?.key]).toEqual([
      1,
      'current-only',
      alone.closest?.key,
    ])
    expect(alone.closest?.cautions).toEqual([{ code: 'transconductance-not-measured' }])
    const beside = proposeSet(
      [...unmeasured, readTube('M-1', 70, 6), readTube('M-2', 72, 6.2)],
      aDemand(2),
      someLimits(),
    )
    expect(marksOf(beside.closest)).toEqual(['M-1', 'M-2'])
    expect(marksOf(beside.leastPrice)).toEqual(['M-1', 'M-2'])
    expect(beside.next.map(marksOf)).toEqual([['N-1', 'N-2']])
  })

  it('keeps variants apart when asked, and warns of a mixed set when not', () => {
    const stock = [readTube('A', 70, 6), { ...readTube('B', 70, 6), designation: '6L6GB' }, readTube('C', 72, 6)]
    const mixed = proposeSet(stock, aDemand(2), someLimits()).closest
    expect(mixed?.cautions).toEqual([{ code: 'mixed-designations', designations: ['6L6GB', '6L6GC'] }])
    const apart = proposeSet(stock, aDemand(2), someLimits({ oneDesignation: true }))
    expect(marksOf(apart.closest)).toEqual(['A', 'C'])
    expect(apart.excluded.map((each) => each.reasons)).toEqual([
      [{ code: 'other-designation', designation: '6L6GB', setDesignation: '6L6GC' }],
    ])
  })
})

describe('sides of a push-pull set', () => {
  it('70, 71, 74, 75 mA sit as 70 + 75 against 71 + 74: 145 mA on both', () => {
    const stock = [readTube('A', 70, 6), readTube('B', 71, 6), readTube('C', 74, 6), readTube('D', 75, 6)]
    const { closest } = proposeSet(stock, aDemand(4), someLimits())
    expect(closest?.tubes.map((tube) => [tube.candidate.mark, tube.side])).toEqual([
      ['A', 'A'],
      ['D', 'A'],
      ['B', 'B'],
      ['C', 'B'],
    ])
    expect(closest?.arrangement).toEqual({ sideA: 0.145, sideB: 0.145, difference: 0 })
  })

  it('gives no sides to a single-ended pair or to three tubes', () => {
    const stock = [readTube('A', 70, 6), readTube('B', 71, 6), readTube('C', 74, 6)]
    expect(proposeSet(stock, aDemand(2, { pushPull: false }), someLimits()).closest?.arrangement).toBeNull()
    expect(proposeSet(stock, aDemand(3, { pushPull: true }), someLimits()).closest?.arrangement).toBeNull()
  })
})

describe('statement and bad input', () => {
  it('a match states first and last day of test, instrument, point and yardsticks', () => {
    const later = aTube('B', { test: aTest({ testedAt: '2031-05-11', transconductance: siemens(0.0061) }) })
    const { closest } = proposeSet([aTube('A'), later], aDemand(2), someLimits())
    const statement = closest && matchStatement(closest, USUAL_YARDSTICKS)
    expect(statement).toMatchObject({
      firstTested: '2031-05-01',
      lastTested: '2031-05-11',
      instrument: 'Bench tester 1',
      testPoint: { plateVoltage: 250, screenVoltage: 250, gridVoltage: -14 },
      yardsticks: { plateCurrent: 0.005, transconductance: 0.1 },
      match: 'both',
    })
  })

  it('an empty stock proposes nothing, excludes nothing and offers nothing', () => {
    const proposal = proposeSet([], aDemand(4), someLimits())
    expect(proposal).toMatchObject({ closest: null, leastPrice: null, next: [], excluded: [], relax: [], usable: 0 })
  })

  it('refuses the same tube twice, 0, 9 or 2.5 tubes, a yardstick of nothing, a date that is none', () => {
    expect(() => proposeSet([aTube('A'), aTube('A')], aDemand(2), someLimits())).toThrow('"id-A" was given twice')
    for (const count of [0, 9, 2.5]) expect(() => proposeSet([], aDemand(count), someLimits())).toThrow(`got ${count}`)
    const nothing = { ...USUAL_YARDSTICKS, transconductance: 0 as never }
    expect(() => proposeSet([], aDemand(2), someLimits({ yardsticks: nothing }))).toThrow('above zero')
    expect(() => proposeSet([aTube('A')], aDemand(2), someLimits({ asOf: 'today' }))).toThrow('"today"')
  })
})
