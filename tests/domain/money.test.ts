import fc from 'fast-check'
import { expect, it, test } from 'vitest'
import {
  depositOf,
  exactDecimal,
  formatMoney,
  LARGEST_AMOUNT,
  lineAmount,
  minorDigits,
  money,
  sum,
  taxOn,
} from '@/lib/domain/money'

// Minor units by ISO 4217:2015, list one (six of its entries, from memory).
test.each([
  ['USD', 2],
  ['EUR', 2],
  ['GBP', 2],
  ['JPY', 0],
  ['KRW', 0],
  ['BHD', 3],
  ['KWD', 3],
  ['TND', 3],
])('%s has %i decimals', (currency, digits) => expect(minorDigits(currency)).toBe(digits))

test.each([
  [10_000, 1000, 10_000],
  [9000, 750, 6750],
  [7250, 750, 5438], // 54.375
  [1, 500, 1], // half a cent goes up …
  [-1, 500, -1], // … and away from zero below it
  [1, 499, 0],
  [-1, 499, 0],
  [333, 3000, 999],
])('%i a piece, %i thousandths of it, is %i', (price, thousandths, expected) =>
  expect(lineAmount(money(price), thousandths)).toBe(expected),
)

test.each([
  [10_000, 19_000, 1900], // 19 %
  [12_345, 8875, 1096], // 8.875 % is 1095.61875
  [100, 8500, 9], // 8.5 exactly: away from zero
  [-100, 8500, -9],
  [100, 8499, 8],
  [0, 19_000, 0],
])('tax on %i at %i thousandths of a percent is %i', (base, rate, expected) =>
  expect(taxOn(money(base), rate)).toBe(expected),
)

test.each([
  [10_000, 33, 3300],
  [10_001, 33, 3301],
  [1, 1, 1],
  [0, 50, 0],
  [999, 100, 999],
])('a deposit on %i of %i %% is %i: rounded up', (total, percent, expected) =>
  expect(depositOf(money(total), percent)).toBe(expected),
)

test('a line is never more than half a minor unit off, and a tie goes away from zero', () => {
  const price = fc.integer({ min: -LARGEST_AMOUNT, max: LARGEST_AMOUNT })
  fc.assert(
    fc.property(price, fc.integer({ min: -1_000_000, max: 1_000_000 }), (unit, thousandths) => {
      const exact = BigInt(unit) * BigInt(thousandths)
      const off = BigInt(lineAmount(money(unit), thousandths)) * 1000n - exact
      expect(off <= 500n && off >= -500n).toBe(true)
      if (off === 500n) expect(exact > 0n).toBe(true)
      if (off === -500n) expect(exact < 0n).toBe(true)
    }),
  )
})

test('as decimals and back nothing is lost, with 0, 2 and 3 decimals', () => {
  const digits = fc.constantFrom(0, 2, 3)
  fc.assert(
    fc.property(fc.integer({ min: -LARGEST_AMOUNT, max: LARGEST_AMOUNT }), digits, (amount, places) => {
      const [whole = '', fraction = ''] = exactDecimal(money(amount), places).split('.')
      expect(fraction).toHaveLength(places)
      expect(Number(`${whole}${fraction}`)).toBe(amount === 0 ? 0 : amount)
    }),
  )
})

test.each([
  [5, 2, '0.05'],
  [-5, 2, '-0.05'],
  [123_450, 2, '1234.50'],
  [1250, 0, '1250'],
  [1250, 3, '1.250'],
])('%i with %i decimals is written %s', (amount, digits, text) =>
  expect(exactDecimal(money(amount), digits)).toBe(text),
)

test.each([
  [123_450, 'USD', 'en-US', '$1,234.50'],
  [123_450, 'GBP', 'en-GB', '£1,234.50'],
  [1250, 'JPY', 'en-US', '¥1,250'],
])('%i %s reads %s as %s', (amount, currency, locale, text) =>
  expect(formatMoney(money(amount), currency, locale)).toBe(text),
)

it('refuses half a minor unit and what no integer holds', () => {
  expect(() => money(0.5)).toThrow('whole minor units')
  expect(() => money(Number.NaN)).toThrow('whole minor units')
  expect(() => money(2 ** 53)).toThrow('whole minor units')
  expect(() => lineAmount(money(100), 0.5)).toThrow('whole thousandths')
})

it('has one zero, and adds up in whole units', () => {
  expect(Object.is(money(-0), 0)).toBe(true)
  expect(sum([money(10), money(20), money(-5)])).toBe(25)
  expect(sum([])).toBe(0)
})
