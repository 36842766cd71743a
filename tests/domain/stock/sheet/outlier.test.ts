import { describe, expect, it } from 'vitest'
import { isFar, median, robustSpread } from '@/lib/domain/stock/sheet/outlier'

describe('the odd one of a run', () => {
  // P. J. Rousseeuw and M. Hubert, "Robust statistics for outlier detection" (2011), section 2: five lengths, of
  // which one lost its decimal point; median 6.28, MAD 1.483 × 0.03 (from memory).
  const lengths = [6.27, 6.34, 6.25, 63.1, 6.28]

  it('is found where mean and standard deviation hide it', () => {
    expect(median(lengths)).toBe(6.28)
    const spread = robustSpread(lengths)
    if (!spread) throw new Error('five readings are a run')
    // Their scale is 0.044; here the least scale of 2 % of the median stands in.
    expect(spread.scale).toBeCloseTo(0.02 * 6.28, 10)
    expect(lengths.filter((length) => isFar(length, spread))).toEqual([63.1])
  })

  it('1.4826 times the median deviation is the scale of a wider run', () => {
    // Sorted by hand: 40 45 45 50 55 60 60; deviations from 50 sorted: 0 5 5 5 10 10 10, the middle one 5.
    const spread = robustSpread([40, 60, 45, 55, 50, 45, 60])
    expect(spread).toEqual({ median: 50, scale: 1.4826 * 5 })
  })

  it('is not told below five readings', () => {
    expect(robustSpread([40, 41, 42, 90])).toBeNull()
  })

  it('stays an outlier when more than half of the run is alike', () => {
    const spread = robustSpread([45, 45, 45, 45, 46, 60])
    if (!spread) throw new Error('six readings are a run')
    expect([45, 46, 48].filter((value) => isFar(value, spread))).toEqual([])
    expect(isFar(60, spread)).toBe(true)
  })
})
