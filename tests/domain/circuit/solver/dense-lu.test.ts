import { describe, expect, test } from 'vitest'
import { solveInPlace } from '@/lib/domain/circuit/solver/dense-lu'
import { dice } from '../random-stage'

describe('solving A·x = b', () => {
  test('2x + y = 5, x − 3y = −1 gives 2 and 1', () => {
    const right = Float64Array.of(5, -1)
    expect(solveInPlace(Float64Array.of(2, 1, 1, -3), right, 2, 2)).toBe(-1)
    expect([...right].map((x) => x.toFixed(12))).toEqual(['2.000000000000', '1.000000000000'])
  })

  test('a zero in the first pivot only exchanges rows', () => {
    const right = Float64Array.of(3, 7)
    expect(solveInPlace(Float64Array.of(0, 1, 1, 0), right, 2, 2)).toBe(-1)
    expect([...right]).toEqual([7, 3])
  })

  test('the sign is that of the determinant: 6, −2, −24 and 24', () => {
    const sign = (size: number, ...rows: number[]) =>
      solveInPlace(Float64Array.from(rows), new Float64Array(size), size, size)
    expect(sign(2, 2, 0, 0, 3)).toBe(1)
    expect(sign(2, 1, 2, 3, 4)).toBe(-1)
    expect(sign(3, 0, 3, 0, 2, 0, 0, 0, 0, 4)).toBe(-1)
    expect(sign(3, 2, 0, 0, 0, -3, 0, 0, 0, -4)).toBe(1)
  })

  test('two equal rows, and NaN, are refused', () => {
    expect(solveInPlace(Float64Array.of(1, 2, 1, 2), Float64Array.of(1, 1), 2, 2)).toBe(0)
    expect(solveInPlace(Float64Array.of(Number.NaN, 2, 1, 2), Float64Array.of(1, 1), 2, 2)).toBe(0)
  })

  test('100 random systems up to 16 × 16, put back, give their right side to 1e-11', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const roll = dice(seed)
      const size = 1 + Math.floor(16 * roll())
      const stride = 17
      const matrix = Float64Array.from({ length: stride * stride }, () => 2 * roll() - 1)
      // A heavier diagonal keeps the worst condition number near a hundred.
      for (let k = 0; k < size; k++) matrix[k * stride + k] = (matrix[k * stride + k] ?? 0) + 4
      const right = Float64Array.from({ length: size }, () => 2 * roll() - 1)
      const x = right.slice()
      expect(solveInPlace(matrix.slice(), x, size, stride)).not.toBe(0)
      right.forEach((wanted, row) => {
        const sum = x.reduce((total, value, column) => total + (matrix[row * stride + column] ?? 0) * value, 0)
        expect(Math.abs(sum - wanted)).toBeLessThan(1e-11)
      })
    }
  })
})
