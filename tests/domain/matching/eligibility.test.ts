import { describe, expect, it } from 'vitest'
import type { Candidate, MatchLimits, SocketDemand } from '@/lib/domain/matching/candidate'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { money } from '@/lib/domain/money'
import { amps, siemens, volts, watts } from '@/lib/domain/units'
import { aDemand, aTest, aTube, readTube, someLimits } from './tubes'

function reasonsFor(over: Partial<Candidate>, demand: Partial<SocketDemand> = {}, limits: Partial<MatchLimits> = {}) {
  const proposal = proposeSet([aTube('X', over)], aDemand(1, demand), someLimits(limits))
  return proposal.excluded[0]?.reasons ?? []
}

const ratings = (plate: number, screen: number, dissipation: number) => ({
  ratings: { maxPlateVoltage: volts(plate), maxScreenVoltage: volts(screen), maxPlateDissipation: watts(dissipation) },
})

describe('why a tube is left out', () => {
  it('a good tube has no reason', () => expect(reasonsFor({})).toEqual([]))

  it('wrong type is said alone; wrong base goes with the rest', () => {
    expect(reasonsFor({ family: 'EL34', base: 'rimlock', test: null })).toEqual([
      { code: 'wrong-type', family: 'EL34', wanted: '6L6' },
    ])
    expect(reasonsFor({ base: 'loctal', test: null })).toEqual([
      { code: 'wrong-base', base: 'loctal', wanted: 'octal' },
      { code: 'untested' },
    ])
  })

  it('reserved, fitted, gone and reject are each named', () => {
    expect(reasonsFor({ state: { kind: 'reserved', holder: 'quote 17' } })).toEqual([
      { code: 'reserved', holder: 'quote 17' },
    ])
    expect(reasonsFor({ state: { kind: 'fitted', place: 'job 4, V3' } })).toEqual([
      { code: 'fitted', place: 'job 4, V3' },
    ])
    expect(reasonsFor({ state: { kind: 'gone', cause: 'broken' }, condition: 'reject' })).toEqual([
      { code: 'gone', cause: 'broken' },
      { code: 'condition-reject' },
    ])
  })

  it('a short, no current or no transconductance ends it', () => {
    expect(reasonsFor({ test: aTest({ shorts: true }) })).toMatchObject([{ code: 'shorted' }])
    expect(reasonsFor({ test: aTest({ plateCurrent: amps(0) }) })).toMatchObject([{ code: 'dead' }])
    expect(reasonsFor({ test: aTest({ transconductance: siemens(0) }) })).toMatchObject([{ code: 'dead' }])
  })

  it('a test 19 days old stands at a limit of 19 and falls at 18; one two days ahead is a wrong date', () => {
    expect(reasonsFor({}, {}, { maximumTestAgeDays: 19 })).toEqual([])
    expect(reasonsFor({}, {}, { maximumTestAgeDays: 18 })).toMatchObject([
      { code: 'test-too-old', ageDays: 19, maximumDays: 18 },
    ])
    expect(reasonsFor({ test: aTest({ testedAt: '2001-01-01' }) }, {}, { maximumTestAgeDays: null })).toEqual([])
    expect(reasonsFor({ test: aTest({ testedAt: '2031-05-21' }) })).toEqual([])
    expect(reasonsFor({ test: aTest({ testedAt: '2031-05-22' }) })).toMatchObject([{ code: 'test-in-future' }])
  })

  it('430 V stands at a rating of 430 V and falls at 429.9 V, plate and screen alike', () => {
    expect(reasonsFor(ratings(430, 420, 19))).toEqual([])
    expect(reasonsFor(ratings(429.9, 419.9, 18.9))).toEqual([
      { code: 'plate-voltage-over-rating', designation: '6L6GC', voltage: 430, rating: 429.9 },
      { code: 'screen-voltage-over-rating', designation: '6L6GC', voltage: 420, rating: 419.9 },
      { code: 'idle-over-dissipation', designation: '6L6GC', dissipation: 19, rating: 18.9 },
    ])
  })

  it('0.1 + 0.2 V is not above 0.3 V', () => {
    expect(reasonsFor(ratings(0.3, 500, 30), { plateToCathodeVoltage: volts(0.1 + 0.2) })).toEqual([])
  })

  it('voltages over the rating become cautions when the shop allows it; dissipation does not', () => {
    const over = { ...ratings(400, 400, 30), test: aTest({ leakageNote: 'slight gas' }) }
    const allowed = proposeSet([aTube('X', over)], aDemand(1), someLimits({ allowOverPrintedRating: true }))
    expect(allowed.closest?.tubes[0]?.cautions).toEqual([
      { code: 'plate-voltage-over-rating', designation: '6L6GC', voltage: 430, rating: 400 },
      { code: 'screen-voltage-over-rating', designation: '6L6GC', voltage: 420, rating: 400 },
      { code: 'leakage-noted', note: 'slight gas' },
    ])
    expect(reasonsFor(ratings(400, 400, 18), {}, { allowOverPrintedRating: true })).toMatchObject([
      { code: 'idle-over-dissipation' },
    ])
  })

  it('what was not measured or not printed is said, not guessed', () => {
    const unknown = { ratings: { maxPlateVoltage: null, maxScreenVoltage: volts(450), maxPlateDissipation: null } }
    const proposal = proposeSet([aTube('X', unknown)], aDemand(1, { screenVoltage: null }), someLimits())
    expect(proposal.cautions).toEqual([{ code: 'screen-voltage-not-measured' }])
    expect(proposal.closest?.tubes[0]?.cautions).toMatchObject([{ of: 'plate-voltage' }, { of: 'plate-dissipation' }])
  })

  it('a tube dearer than the whole set may be is left out: 40.01 against 40.00', () => {
    expect(reasonsFor({ price: money(4001) }, {}, { priceCap: money(4000) })).toEqual([
      { code: 'over-price-cap', price: 4001, cap: 4000 },
    ])
  })
})

describe('what giving up one limit would bring', () => {
  const relaxOf = (stock: readonly Candidate[], limits: Partial<MatchLimits>, demand: Partial<SocketDemand> = {}) =>
    proposeSet(stock, aDemand(2, demand), someLimits(limits)).relax

  const old = (mark: string, testedAt: string) => aTube(mark, { test: aTest({ testedAt }) })

  it('one fresh tube and two tested 30 and 40 days ago: one set, from 30 days on', () => {
    const stock = [aTube('A'), old('B', '2031-04-20'), old('C', '2031-04-10')]
    expect(relaxOf(stock, { maximumTestAgeDays: 20 })).toEqual([
      { limit: 'test-age', tubes: 2, sets: 1, neededDays: 30, neededPrice: null },
    ])
  })

  it('two pairs over the printed rating, one tube reserved, three untested', () => {
    const over = ['A', 'B', 'C', 'D'].map((mark) => aTube(mark, ratings(400, 400, 30)))
    const held = aTube('E', { state: { kind: 'reserved', holder: 'quote 2' } })
    const untested = ['F', 'G', 'H'].map((mark) => aTube(mark, { test: null }))
    expect(relaxOf([...over, held, ...untested], {})).toMatchObject([
      { limit: 'printed-rating', tubes: 4, sets: 2 },
      { limit: 'untested', tubes: 3, sets: 1 },
      { limit: 'reserved', tubes: 1, sets: 0 },
    ])
  })

  it('a tube held back by two limits is freed by neither alone', () => {
    const twice = ['A', 'B'].map((mark) => aTube(mark, { ...ratings(400, 450, 30), test: null }))
    expect(relaxOf(twice, {})).toEqual([])
  })

  it('a price limit of 90.00 over two tubes at 50.00: the set costs 100.00', () => {
    const stock = [readTube('A', 70, 6, 5000), readTube('B', 70, 6, 5000)]
    expect(relaxOf(stock, { priceCap: money(9000) })).toEqual([
      { limit: 'price-cap', tubes: 2, sets: 1, neededDays: null, neededPrice: 10000 },
    ])
  })

  it('idle of 19 W on tubes of 12 W: two would do once the idle is brought down', () => {
    const stock = ['A', 'B'].map((mark) => aTube(mark, ratings(500, 450, 12)))
    expect(relaxOf(stock, {})).toMatchObject([{ limit: 'idle-dissipation', tubes: 2, sets: 1 }])
  })

  it('nothing is offered once a set was found', () => {
    expect(relaxOf([aTube('A'), aTube('B'), aTube('C', { test: null })], {})).toEqual([])
  })
})
