import { describe, expect, it } from 'vitest'
import { shownByMeter } from '@/seed/bench/shown-by-meter'
import { chanceFrom } from '@/seed/chance'
import { BOOK_VALUES } from '@/seed/stock/book-values'
import { grownTube } from '@/seed/stock/grow-tube'

describe('the chance of the demo', () => {
  it('gives the same figures for the same name, and others for another', () => {
    const drawn = (name: string) => {
      const { next } = chanceFrom(name)
      return [next(), next(), next()]
    }
    expect(drawn('box 3')).toEqual(drawn('box 3'))
    expect(drawn('box 3')).not.toEqual(drawn('box 4'))
  })

  it('scatters normally: mean 0 and deviation 1 within 3 standard errors of 20,000 draws, cut at 2.5', () => {
    const { normal } = chanceFrom('a large box')
    const draws = Array.from({ length: 20_000 }, normal)
    const mean = draws.reduce((sum, each) => sum + each, 0) / draws.length
    const deviation = Math.sqrt(draws.reduce((sum, each) => sum + each * each, 0) / draws.length)
    expect(Math.abs(mean)).toBeLessThan(3 / Math.sqrt(draws.length))
    // Cutting at 2.5 takes 1.2 % off the deviation: E[min(|z|, 2.5)²] = 0.9775.
    expect(deviation).toBeGreaterThan(0.97)
    expect(deviation).toBeLessThan(1.01)
    expect(Math.max(...draws.map(Math.abs))).toBeLessThanOrEqual(2.5)
  })
})

describe('a tube of the demo stock', () => {
  it('has transconductance that follows plate current: correlation between 0.6 and 0.95 over 2000 tubes', () => {
    const chance = chanceFrom('a large delivery')
    const logs = Array.from({ length: 2000 }, () => {
      const [read] = grownTube(BOOK_VALUES['6L6GC'], { strength: 1, spread: 0.12 }, chance)
      return [Math.log(read?.plateCurrent ?? 0), Math.log(read?.transconductance ?? 0)] as const
    })
    const mean = (of: (pair: readonly [number, number]) => number) =>
      logs.reduce((sum, pair) => sum + of(pair), 0) / logs.length
    const [x, y] = [mean(([a]) => a), mean(([, b]) => b)]
    const covariance = mean(([a, b]) => (a - x) * (b - y))
    const correlation = covariance / Math.sqrt(mean(([a]) => (a - x) ** 2) * mean(([, b]) => (b - y) ** 2))
    expect(correlation).toBeGreaterThan(0.6)
    expect(correlation).toBeLessThan(0.95)
  })
})

describe('the display of a meter', () => {
  it('shows 437.24 V as 437.2 on 6000 counts and as 437 on 4000, and 39.84 mV as 39.8 mV', () => {
    expect(shownByMeter(437.24, 6000)).toBe(437.2)
    expect(shownByMeter(437.24, 4000)).toBe(437)
    expect(shownByMeter(0.03984, 6000)).toBe(0.0398)
    expect(shownByMeter(-46.08, 6000)).toBe(-46.08)
    expect(shownByMeter(0, 6000)).toBe(0)
  })
})
