import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { money } from '@/lib/domain/money'
import { type LineKind, quoteTotals } from '@/lib/domain/quote/quote'
import { spendingOf, spendingText } from '@/lib/domain/quote/spending'

const line = (kind: LineKind, thousandths: number, unitPrice: number, taxable = true) => ({
  kind,
  thousandths,
  unitPrice: money(unitPrice),
  taxable,
})

describe('totals of a quote', () => {
  it('1.25 h at 95.00, 45.00 flat, 2 parts at 3.85, two tubes at 42.00, 12.00 untaxed, at 8.875 % and 30 % deposit', () => {
    const lines = [
      line('labour', 1250, 9500),
      line('labour', 1000, 4500),
      line('part', 2000, 385),
      line('tube', 1000, 4200),
      line('tube', 1000, 4200),
      line('fee', 1000, 1200, false),
    ]
    // By hand: 118.75 + 45.00 + 7.70 + 84.00 + 12.00 = 267.45; taxed 255.45 × 0.08875 = 22.6711875 → 22.67;
    // 267.45 + 22.67 = 290.12; 30 % is 87.036, rounded up 87.04.
    expect(quoteTotals(lines, 8875, 30)).toEqual({
      byKind: { labour: 16375, part: 770, tube: 8400, fee: 1200 },
      subtotal: 26745,
      taxed: 25545,
      tax: 2267,
      total: 29012,
      deposit: 8704,
    })
  })

  it('a third of an hour at 95.00 is 31.635, rounded away from nothing: 31.64, and −31.64 as a credit', () => {
    expect(quoteTotals([line('labour', 333, 9500)], 0, 0).total).toBe(3164)
    expect(quoteTotals([line('fee', 333, -9500)], 0, 0).total).toBe(-3164)
  })

  it('takes tax once, on the sum: three times 0.33 at 10 % is 0.10, where line by line would be 0.09', () => {
    expect(quoteTotals([line('part', 1000, 33), line('part', 1000, 33), line('part', 1000, 33)], 10_000, 0).tax).toBe(
      10,
    )
  })

  it('a bench fee already paid comes off: 100.00 less 40.00, both taxed at 20 %, is 72.00', () => {
    expect(quoteTotals([line('labour', 1000, 10_000), line('fee', 1000, -4000)], 20_000, 0).total).toBe(7200)
  })

  it('asks no deposit on nothing or less', () => {
    expect(quoteTotals([], 8875, 50)).toMatchObject({ total: 0, deposit: 0 })
    expect(quoteTotals([line('fee', 1000, -500)], 0, 50)).toMatchObject({ total: -500, deposit: 0 })
  })

  it('adds up whatever the lines: parts make the subtotal, subtotal and tax the total, in any order', () => {
    const anyLine = fc.record({
      kind: fc.constantFrom<LineKind>('labour', 'part', 'tube', 'fee'),
      thousandths: fc.integer({ min: 1, max: 9_999_999 }),
      unitPrice: fc.integer({ min: -1_000_000, max: 1_000_000 }).map(money),
      taxable: fc.boolean(),
    })
    fc.assert(
      fc.property(fc.array(anyLine, { maxLength: 30 }), fc.integer({ min: 0, max: 40_000 }), (lines, rate) => {
        const { byKind, subtotal, tax, total, taxed } = quoteTotals(lines, rate, 25)
        expect(byKind.labour + byKind.part + byKind.tube + byKind.fee).toBe(subtotal)
        expect(subtotal + tax).toBe(total)
        // Never more than half a minor unit from the exact tax.
        expect(Math.abs(tax - (taxed * rate) / 100_000)).toBeLessThanOrEqual(0.5 + 1e-6)
        expect(quoteTotals([...lines].reverse(), rate, 25)).toEqual(quoteTotals(lines, rate, 25))
      }),
    )
  })
})

describe('a total against the spending limit', () => {
  const show = (amount: number) => (amount / 100).toFixed(2)
  it('is within when equal, over by the one cent more', () => {
    expect(spendingOf(money(25_000), money(25_000))).toEqual({ kind: 'within', limit: 25_000, left: 0 })
    const over = spendingOf(money(25_001), money(25_000))
    expect(over).toEqual({ kind: 'over', limit: 25_000, over: 1 })
    expect(spendingText(over, show)).toContain("Over the customer's limit of 250.00 by 0.01.")
  })
  it('without a limit says that every amount is asked first', () => {
    expect(spendingText(spendingOf(money(1), null), show)).toContain('No spending limit was agreed')
  })
})
