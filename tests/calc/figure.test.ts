import { expect, test } from 'vitest'
import { bandFigures, figure, uncertainFigures } from '@/lib/calc/output/figure'

test('a plain number has four significant digits and no minus zero', () => {
  expect([44.3279, 0.920454, 12345.6, 0, -0, 1e-9].map((one) => figure(one))).toEqual([
    44.33, 0.9205, 12350, 0, 0, 1e-9,
  ])
  expect(Object.is(figure(-0), 0)).toBe(true)
})

// JCGM 100:2008, 7.2.6: at most two significant digits of an uncertainty, the value rounded to agree with it.
test('a band has two significant digits and the value ends where it does', () => {
  const given = { value: 38.8882, plusMinus: 0.3171, low: 38.5711, high: 39.2053, estimate: false }
  expect(uncertainFigures(given)).toEqual({ value: 38.89, plusMinus: 0.32, low: 38.57, high: 39.21, estimate: false })
  expect(bandFigures({ value: 1234.5, low: 1000, high: 1500 })).toEqual({ value: 1230, low: 1000, high: 1500 })
  expect(bandFigures({ value: 0.0123456, low: 0.0111, high: 0.0137 }, 1000)).toEqual({
    value: 12.3,
    low: 11.1,
    high: 13.7,
  })
})

test('a band of nothing leaves four digits', () => {
  expect(bandFigures({ value: 38.8882, low: 38.8882, high: 38.8882 })).toEqual({
    value: 38.89,
    low: 38.89,
    high: 38.89,
  })
})

test('a band far below the value prints no more than six digits', () => {
  expect(bandFigures({ value: 450.123456, low: 450.123455, high: 450.123457 }).value).toBe(450.123)
})
