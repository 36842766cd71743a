import { describe, expect, test } from 'vitest'
import { banded } from '@/lib/domain/bias/banded'
import { COVERED, halfWidth, normalShareBelow, shareWithin } from '@/lib/domain/bias/coverage'
import { add, withLimits, withStandard } from '@/lib/domain/bias/uncertain'

/** P(|U1 + b·U2| ≤ t) of two rectangles ± 1 and ± b, by quadrature. */
function trapeziumWithin(t: number, b: number): number {
  const steps = 4000
  let sum = 0
  for (let n = 0; n < steps; n++) {
    const other = b * ((2 * (n + 0.5)) / steps - 1)
    sum += Math.max(0, Math.min(1, t - other) - Math.max(-1, -t - other)) / 2 / steps
  }
  return sum
}

describe('half-width of the 95 % band', () => {
  // JCGM 100:2008, table G.1: 95.45 % goes with k = 2; 95 % with 1.960, 99.73 % with 3.
  test.each([
    [1.96, 0.975],
    [2, 0.97724987],
    [3, 0.99865],
    [0, 0.5],
    [-1.645, 0.05],
  ])('a normal distribution has below %d: %d', (z, share) => {
    expect(normalShareBelow(z)).toBeCloseTo(share, 4)
  })

  test('is 2 u with no error between limits, and 1.65 u with nothing else (EA-4/02: k = 1.65)', () => {
    expect(halfWidth(0, 0.7)).toBeCloseTo(1.4, 12)
    expect(halfWidth(1, 0) * Math.sqrt(3)).toBeCloseTo(1.653, 3)
    expect((halfWidth(1, 0) * Math.sqrt(3)).toFixed(2)).toBe('1.65')
  })

  test.each([1e-4, 0.0009, 0.0011, 0.01, 0.1, 0.3, 1, 3, 3.3, 3.4, 100])(
    'with s = %d of the limit the share within is 95.45 %',
    (s) => {
      expect(shareWithin(halfWidth(1, s), 1, s)).toBeCloseTo(COVERED, 4)
    },
  )

  test('the factor climbs from 1.65 to 2 as the rest grows', () => {
    const factors = [0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2].map((s) => halfWidth(1, s) / Math.hypot(1 / Math.sqrt(3), s))
    expect(factors).toEqual([...factors].sort((a, b) => a - b))
    expect(factors.every((factor) => factor > 1.65 && factor < 2)).toBe(true)
  })

  test('two errors between limits, the second taken as normal: 94.8 to 96 % are held, whatever their sizes', () => {
    for (let b = 0.02; b <= 1; b += 0.02) {
      const share = trapeziumWithin(halfWidth(1, b / Math.sqrt(3)), b)
      expect(share).toBeGreaterThan(0.948)
      expect(share).toBeLessThan(0.96)
    }
  })
})

describe('a banded value', () => {
  test('a stated screen current alone is normal: 2 u', () => {
    expect(banded(withStandard(3, 'screen-current:V1', 0.2), false).plusMinus).toBeCloseTo(0.4, 12)
  })

  test('an assumed screen share alone lies within its limits: 95.45 % of them', () => {
    expect(banded(withLimits(3, 'screen-share:V1', 0.2), true).plusMinus).toBeCloseTo(0.1909, 4)
  })

  test('what is exact has no band', () => {
    expect(banded({ value: 3, errors: {} }, false)).toMatchObject({ plusMinus: 0, low: 3, high: 3 })
  })

  test('the largest limit leads, not the first: either order gives the same', () => {
    const [small, large] = [withLimits(1, 'resistor:R1', 0.1), withLimits(1, 'screen-share:V1', 1)]
    expect(banded(add(small, large), false).plusMinus).toBeCloseTo(banded(add(large, small), false).plusMinus, 12)
    expect(banded(add(small, large), false).plusMinus).toBeCloseTo(halfWidth(1, 0.1 / Math.sqrt(3)), 12)
  })
})
