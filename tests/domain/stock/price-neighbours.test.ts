import { describe, expect, it } from 'vitest'
import { money } from '@/lib/domain/money'
import { priceNeighbours } from '@/lib/domain/stock/price-neighbours'
import type { StockedTube, Tube, TubeTest } from '@/lib/domain/stock/tube'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'
import { volts } from '@/lib/domain/units'
import { section } from '@/tests/support/stocked-shop'

const test = (milliamps: number): TubeTest => ({
  ...{ id: '', testedAt: new Date(0), testedBy: '', instrumentName: 'Tester', calibratedOn: null, shorts: false },
  ...{ leakage: '', gas: '', noise: '', microphony: '', note: '', sections: [section(milliamps)] },
  ...{ plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-14) },
})

function stocked(
  id: string,
  price: number,
  over: Partial<Tube> & { milliamps?: number; set?: string } = {},
): StockedTube {
  const { milliamps, set = '', ...rest } = over
  const tube: Tube = {
    ...{ id, mark: id, designation: '6L6GC', family: '6L6', condition: 'used-tested', price: money(price), cost: null },
    ...{ acquired: '', construction: '', location: '', whereabouts: 'in-stock', version: 1, createdAt: new Date(0) },
    ...{ hold: '', heldForJob: null, heldForJobNumber: null, heldByQuoteId: null, heldUntil: null },
    further: { ...NOTHING_FURTHER, setName: set },
    ...rest,
  }
  return { tube, test: milliamps === undefined ? null : test(milliamps), shortsFoundAt: null }
}

const wanted = { designation: '6L6GC', condition: 'used-tested', test: test(72), tubeId: 'own' } as const

describe('what the shop asks beside a price', () => {
  const family = [
    stocked('own', 9900, { milliamps: 72 }),
    stocked('a', 4000, { milliamps: 70 }),
    stocked('b', 5000, { milliamps: 79 }),
    stocked('c', 2000, { milliamps: 50 }),
    stocked('d', 6500, { set: 'Quad 3', milliamps: 71 }),
    stocked('e', 6500, { set: 'Quad 3', milliamps: 72 }),
    stocked('f', 1500, { designation: '6L6GB' }),
    stocked('g', 1200, { designation: '5881' }),
    stocked('h', 100, { condition: 'reject' }),
  ]

  it('the same are those within 10 % of its plate current, without itself and without rejects', () => {
    // 70, 79, 71 and 72 mA at 40, 50, 65 and 65; 79 mA is 9.7 % above 72, 50 mA far below.
    expect(priceNeighbours(wanted, family).same).toEqual({
      price: 5750,
      low: 4000,
      high: 6500,
      count: 4,
      byStrength: true,
    })
  })

  it('an untested one is compared with all of its condition', () => {
    expect(priceNeighbours({ ...wanted, test: null }, family).same).toMatchObject({ count: 5, byStrength: false })
  })

  it('a pair adds 25.00 for each: 65.00 in a set against 40.00, the middle of those alone', () => {
    expect(priceNeighbours(wanted, family).pair).toMatchObject({
      adds: 2500,
      paired: { price: 6500 },
      alone: { price: 4000 },
    })
  })

  it('the lesser variant is the dearest of those that cost less', () => {
    expect(priceNeighbours(wanted, family).lesser).toMatchObject({ designation: '6L6GB', price: 1500 })
  })

  it('says nothing where the list says nothing', () => {
    expect(priceNeighbours(wanted, [])).toEqual({ same: null, pair: null, lesser: null })
  })
})
