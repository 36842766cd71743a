import { describe, expect, test } from 'vitest'
import { axisAround, axisFromZero, roundStep } from '@/lib/domain/plot/axis'
import { spreadLabels } from '@/lib/domain/plot/spread-labels'

describe('round ticks', () => {
  test.each([
    [1, 1],
    [1.1, 2],
    [2, 2],
    [3, 5],
    [0.021, 0.05],
    [67, 100],
    [100, 100],
    [0.1, 0.1],
  ])('the step that is not below %d is %d', (least, step) => {
    expect(roundStep(least)).toBe(step)
  })

  test('0 to 520 V in 8 steps at the most: 0, 100, … 600', () => {
    const { ticks, to, step } = axisFromZero(520, 8)
    expect([step, to]).toEqual([100, 600])
    expect(ticks).toEqual([0, 100, 200, 300, 400, 500, 600])
  })

  test('34.1 to 40.1 mA in 4 steps: 34 to 42 by 2', () => {
    expect(axisAround(34.1, 40.1, 4).ticks).toEqual([34, 36, 38, 40, 42])
  })

  test('law: any reach is held, in steps of 1, 2 or 5 × 10ⁿ, no more of them than asked and one', () => {
    for (let reach = 0.013; reach < 2000; reach *= 1.37) {
      const { from, to, step, ticks, fine } = axisFromZero(reach, 8)
      expect(from).toBe(0)
      expect(to).toBeGreaterThanOrEqual(reach * (1 - 1e-9))
      expect([1, 2, 5]).toContain(Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9)))
      expect(ticks.length).toBeLessThanOrEqual(10)
      expect(ticks.every((tick) => Math.abs(tick / step - Math.round(tick / step)) < 1e-9)).toBe(true)
      expect([4, 5, 10]).toContain(fine)
    }
  })

  test('an axis that does not rise, or a step of nothing, is a broken assumption', () => {
    expect(() => axisAround(5, 5, 4)).toThrow('must rise')
    expect(() => roundStep(0)).toThrow('above zero')
  })
})

describe('labels moved apart', () => {
  test('labels a gap apart stay where they are', () => {
    expect(spreadLabels([10, 30, 60], 17)).toEqual([10, 30, 60])
  })

  test('two that coincide at 50 move 8.5 each way for a gap of 17', () => {
    expect(spreadLabels([50, 50], 17)).toEqual([41.5, 58.5])
  })

  test('law: in order, a gap apart, none below zero', () => {
    for (const places of [[0, 1, 2, 3], [2, 2.1, 40, 41, 42, 90], [0, 0, 0], [5]]) {
      const spread = spreadLabels(places, 17)
      expect(spread.every((place, i) => place >= 0 && (i === 0 || place - (spread[i - 1] ?? 0) >= 17 - 1e-9))).toBe(
        true,
      )
    }
  })
})
