import { describe, expect, it } from 'vitest'
import { inFrame } from '@/lib/domain/plot/frame'
import { type StockPoint, stockScatter } from '@/lib/domain/plot/stock-scatter'

const point = (at: number, chosen = false): StockPoint => ({
  tubeId: `id-${at}`,
  mark: `T-${at}`,
  designation: '6L6GC',
  at: { across: 60 + (at % 37), up: 5 + (at % 11) / 10 },
  chosen,
})

const many = (count: number) => Array.from({ length: count }, (_, at) => point(at, at === 3 || at === 5))

describe('a stock as points', () => {
  it('nothing to draw is no drawing; a single tube still has its axes', () => {
    expect(stockScatter([])).toBeNull()
    const one = stockScatter([point(1)])
    expect(one && inFrame(one.frame, point(1).at)).toBe(true)
  })

  it('all lie inside the frame, the chosen ones last so that they lie on top', () => {
    const scatter = stockScatter(many(50))
    expect(scatter?.points.every(({ at }) => inFrame(scatter.frame, at))).toBe(true)
    expect(scatter?.points.slice(-2).map(({ mark }) => mark)).toEqual(['T-3', 'T-5'])
    expect(scatter).toMatchObject({ left: 0, reachable: 50 })
  })

  it('of 5,000 tubes 1,500 and the chosen ones are drawn, the rest counted; only the chosen ones are stops', () => {
    const scatter = stockScatter(many(5000))
    expect(scatter?.points).toHaveLength(1502)
    expect(scatter).toMatchObject({ left: 3498, reachable: 2 })
  })
})
