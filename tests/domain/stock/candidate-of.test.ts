import { describe, expect, it } from 'vitest'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { money } from '@/lib/domain/money'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import { stockedTube } from '@/lib/domain/stock/latest-test'
import { stockType } from '@/lib/domain/stock/stock-type'
import type { Tube, TubeTest } from '@/lib/domain/stock/tube'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { volts } from '@/lib/domain/units'
import { section } from '@/tests/support/stocked-shop'
import { aDemand, someLimits } from '../matching/tubes'

const NOW = new Date('2031-05-20T15:00:00Z')
const view = { now: NOW, timeZone: 'America/New_York', jobInHand: 'job-1', catalogue: HANDBOOK_ONLY }

const aTube = (over: Partial<Tube> = {}): Tube => ({
  ...{ id: 'id-1', mark: 'T-0001', designation: '6L6GC', family: '6L6', condition: 'used-tested', price: money(4000) },
  ...{ acquired: '', construction: '', location: '', cost: null, whereabouts: 'in-stock', version: 1 },
  ...{ hold: '', heldForJob: null, heldForJobNumber: null, heldByQuoteId: null, heldUntil: null },
  further: NOTHING_FURTHER,
  createdAt: NOW,
  ...over,
})

const aTest = (over: Partial<TubeTest> = {}): TubeTest => ({
  ...{ id: 'test-1', testedAt: new Date('2031-05-02T02:00:00Z'), testedBy: 'Ines', instrumentName: 'Bench tester 1' },
  ...{ calibratedOn: null, shorts: false, leakage: '', gas: '', noise: '', microphony: '', note: '' },
  ...{ plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-14), sections: [section(72, 6)] },
  ...over,
})

const shortOn = (at: string) =>
  aTest({
    id: at,
    testedAt: new Date(at),
    shorts: true,
    sections: [section(null)],
    plateVoltage: null,
    gridVoltage: null,
  })

const candidate = (tube: Partial<Tube> = {}, tests: readonly TubeTest[] = [aTest()]) =>
  candidateOf(stockedTube(aTube(tube), tests), view)

describe('a stocked tube as a candidate', () => {
  it('carries the printed ratings of its own variant: a 6L6GC 30 W and 500 V, a 6L6G less', () => {
    expect(candidate().ratings).toMatchObject({ maxPlateDissipation: 30, maxPlateVoltage: 500 })
    expect(candidate({ designation: '6L6G' }).ratings.maxPlateDissipation).toBeLessThan(30)
    expect(candidate().family).toBe(candidate({ designation: '6L6G' }).family)
  })

  it('of a ruggedised issue says whose ratings stand in; of a plain one nothing stands in', () => {
    expect(candidate({ designation: '6L6WGC' }).ratings.standsIn).toMatch(/6L6GC/)
    expect(candidate().ratings.standsIn).toBeUndefined()
    const limits = someLimits()
    const tubes = ['6L6WGC', '6L6WGC'].map((designation, at) =>
      candidate({ designation, id: `id-${at}`, mark: `T-${at}` }),
    )
    const [first] = proposeSet(tubes, aDemand(2), limits).closest?.tubes ?? []
    expect(first?.cautions.map(({ code }) => code)).toContain('rating-stands-in')
  })

  it('of a type the handbook does not know has no ratings and no base', () => {
    const { ratings, base, family } = candidate({ designation: '6XYZ7' })
    expect({ ratings, base, family }).toEqual({
      ratings: { maxPlateVoltage: null, maxScreenVoltage: null, maxPlateDissipation: null },
      base: '',
      family: '6XYZ7',
    })
  })

  it('dates its test by the day in the shop: 02:00 UTC on 2 May is 1 May in New York', () => {
    expect(candidate().test?.testedAt).toBe('2031-05-01')
  })

  it('tells leakage and gas, not noise', () => {
    expect(candidate({}, [aTest({ leakage: 'slight', gas: '2 µA', noise: 'hiss' })]).test?.leakageNote).toBe(
      'heater to cathode: slight; gas: 2 µA',
    )
  })
})

describe('its hold', () => {
  const held = { hold: 'held', heldForJob: 'job-2', heldForJobNumber: '1002-7', heldByQuoteId: 'q' } as const

  it('for another job names that job', () => {
    expect(candidate(held).state).toEqual({ kind: 'reserved', holder: 'job 1002-7' })
  })

  it('for the job in hand is none', () => {
    expect(candidate({ ...held, heldForJob: 'job-1' }).state).toEqual({ kind: 'free' })
  })

  it('counts up to its last instant and not after it', () => {
    expect(candidate({ ...held, heldUntil: NOW }).state.kind).toBe('reserved')
    expect(candidate({ ...held, heldUntil: new Date(NOW.getTime() - 1) }).state.kind).toBe('free')
  })
})

describe('the record that speaks for it', () => {
  it('is the latest with a reading: a note without a current does not hide it', () => {
    const note = aTest({ id: 'note', testedAt: new Date('2031-05-10'), sections: [section(null)], note: 'looked at' })
    expect(candidate({}, [note, aTest()]).test?.plateCurrent).toBe(0.072)
  })

  it('is shorted when a short was found after it, on the day of the short', () => {
    const { test } = candidate({}, [shortOn('2031-05-12T15:00:00Z'), aTest()])
    expect(test).toMatchObject({ shorts: true, testedAt: '2031-05-12', plateCurrent: 0.072 })
  })

  it('is good when it was read after the short', () => {
    expect(candidate({}, [aTest(), shortOn('2031-04-12T15:00:00Z')]).test?.shorts).toBe(false)
  })

  it('is none when the short is all there is', () => {
    expect(candidate({}, [shortOn('2031-05-12T15:00:00Z')]).test).toBeNull()
  })

  it('of a rectifier is none: without a grid there is no point to match at', () => {
    const test = aTest({ screenVoltage: null, gridVoltage: null, sections: [section(100)] })
    expect(candidate({ designation: '5AR4' }, [test]).test).toBeNull()
  })
})

it('four tubes of stock make a pair: the closest two, not the one held elsewhere', () => {
  const read = (mark: string, milliamps: number, over: Partial<Tube> = {}) =>
    candidate({ id: mark, mark, ...over }, [aTest({ sections: [section(milliamps, 6)] })])
  const elsewhere = { hold: 'reserved', heldForJob: 'job-9', heldForJobNumber: '1009-2' } as const
  const stock = [read('A', 70), read('B', 70, elsewhere), read('C', 71), read('D', 78)]
  const { family, base } = stockType('6L6GC', HANDBOOK_ONLY)
  const { closest, excluded } = proposeSet(stock, aDemand(2, { family, base }), someLimits())
  expect(closest?.tubes.map(({ candidate: { mark } }) => mark).sort()).toEqual(['A', 'C'])
  expect(excluded.map(({ candidate: { mark }, reasons }) => [mark, reasons])).toEqual([
    ['B', [{ code: 'reserved', holder: 'job 1009-2' }]],
  ])
})
