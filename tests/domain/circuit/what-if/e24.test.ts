import { describe, expect, test } from 'vitest'
import { E24, e24Around } from '@/lib/domain/circuit/what-if/e24'
import { ohms } from '@/lib/domain/units'

describe('E24 (IEC 60063)', () => {
  test('holds 24 rising values, each within 5 % and a rounding of 10^(n/24)', () => {
    expect(E24).toHaveLength(24)
    E24.forEach((value, place) => {
      expect(value).toBeGreaterThan(E24[place - 1] ?? 0)
      expect(Math.abs(value / 10 ** (place / 24) - 1)).toBeLessThan(0.06)
    })
  })

  test.each([
    [250, 240, 270],
    [240, 240, 240],
    [1000, 1000, 1000],
    [0.95, 0.91, 1],
    [9.5, 9.1, 10],
    [137_000, 130_000, 150_000],
    [999.999, 910, 1000],
  ])('%d Ω lies between %d and %d Ω', (resistance, below, above) => {
    expect(e24Around(ohms(resistance))).toEqual({ below, above })
  })

  test('nothing has no neighbours', () => {
    expect(() => e24Around(ohms(0))).toThrow('above 0')
  })
})
