import { describe, expect, it } from 'vitest'
import { type Money, money } from '@/lib/domain/money'
import { priceLines } from '@/lib/domain/stock/price-lines'
import type { PriceNeighbours } from '@/lib/domain/stock/price-neighbours'

const wanted = { designation: '6L6GC', condition: 'used-tested' } as const
const show = (amount: Money) => `$${amount / 100}`
const asked = (price: number, count = 1) => ({ price: money(price), low: money(price), high: money(price), count })
const texts = (neighbours: PriceNeighbours) => priceLines(neighbours, wanted, show).map(({ text }) => text)

describe('the three lines of a price', () => {
  it('each say “none in stock” where the list says nothing', () => {
    const lines = texts({ same: null, pair: null, lesser: null })
    expect(lines).toHaveLength(3)
    for (const line of lines) expect(line).toMatch(/^none in stock: /)
  })

  it('each begin with a figure where it does', () => {
    expect(
      texts({
        same: { ...asked(5750, 4), low: money(4000), high: money(6500), byStrength: true },
        pair: { adds: money(600), paired: asked(5000, 2), alone: asked(4400, 3) },
        lesser: { ...asked(1500), designation: '6L6GB' },
      }),
    ).toEqual([
      '$57.5: 6L6GC, used, tested, as strong within 10 %; 4 of them, $40 to $65.',
      '+ $6 for each: $50 in a set against $44 alone.',
      '$15: 6L6GB; one of them.',
    ])
  })

  it('a set that costs less than one alone adds a figure below nothing, without a plus', () => {
    const pair = { adds: money(-200), paired: asked(4000, 2), alone: asked(4200) }
    expect(texts({ same: null, pair, lesser: null })[1]).toMatch(/^\$-2 for each/)
  })
})
