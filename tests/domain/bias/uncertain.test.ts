import { describe, expect, test } from 'vitest'
import {
  add,
  correlation,
  div,
  exactly,
  meanOfReadings,
  mul,
  scale,
  standardUncertainty,
  sub,
  through,
  withLimits,
  withStandard,
} from '@/lib/domain/bias/uncertain'

describe('uncertain quantities', () => {
  const three = withStandard(10, 'a', 3)
  const four = withStandard(20, 'b', 4)

  test('independent errors of 3 and 4 add to 5, in a sum and in a difference', () => {
    expect(standardUncertainty(add(three, four))).toBeCloseTo(5, 12)
    expect(standardUncertainty(sub(three, four))).toBeCloseTo(5, 12)
  })

  test('a quantity less itself is exactly 0 ± 0: the shared error cancels', () => {
    const nothing = sub(three, three)
    expect(nothing.value).toBe(0)
    expect(standardUncertainty(nothing)).toBe(0)
  })

  test('a shared error adds straight: 3 + 3 is 6, not 4.2', () => {
    expect(standardUncertainty(add(three, three))).toBeCloseTo(6, 12)
  })

  test('relative errors of 3 % and 4 % give 5 % in a product and in a quotient', () => {
    const a = withStandard(100, 'a', 3)
    const b = withStandard(50, 'b', 2)
    expect(standardUncertainty(mul(a, b)) / 5000).toBeCloseTo(0.05, 12)
    expect(standardUncertainty(div(a, b)) / 2).toBeCloseTo(0.05, 12)
  })

  test('limits of ± √3 are a standard uncertainty of 1', () => {
    expect(standardUncertainty(withLimits(7, 'a', Math.sqrt(3)))).toBeCloseTo(1, 12)
  })

  test('scaling by −2 doubles the uncertainty and turns the correlation round', () => {
    expect(standardUncertainty(scale(three, -2))).toBeCloseTo(6, 12)
    expect(correlation(three, scale(three, -2))).toBeCloseTo(-1, 12)
  })

  test('through a square, the slope 2x carries the error', () => {
    const squared = through(
      three,
      (x) => x * x,
      (x) => 2 * x,
    )
    expect(squared.value).toBe(100)
    expect(standardUncertainty(squared)).toBeCloseTo(60, 12)
  })

  test('the mean of 1, 2, 3 has the standard uncertainty s/√n = 1/√3', () => {
    expect(standardUncertainty(meanOfReadings([1, 2, 3], 'three'))).toBeCloseTo(1 / Math.sqrt(3), 12)
  })

  test('a division by zero is no number and throws', () => {
    expect(() => div(three, exactly(0))).toThrow(/finite/)
  })

  test('a negative standard uncertainty throws', () => {
    expect(() => withStandard(1, 'a', -0.1)).toThrow(/negative/)
  })
})
