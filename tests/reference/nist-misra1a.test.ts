/**
 * The fitter on a certified problem: NIST Statistical Reference Datasets, nonlinear
 * regression, Misra1a (dental research, y = b1·(1 − exp(−b2·x)), 14 observations).
 * Data, starts and certified values from memory of the published set; that the certified
 * sum of squares comes out to its last digits shows that no figure is misremembered.
 */
import { describe, expect, it } from 'vitest'
import { minimise } from '@/lib/fit/least-squares'

const OBSERVATIONS: readonly (readonly [y: number, x: number])[] = [
  [10.07, 77.6],
  [14.73, 114.9],
  [17.94, 141.1],
  [23.93, 190.8],
  [29.61, 239.9],
  [35.18, 289.0],
  [40.02, 332.8],
  [44.82, 378.4],
  [50.76, 434.8],
  [55.05, 477.3],
  [61.01, 536.8],
  [66.4, 593.1],
  [75.47, 689.1],
  [81.78, 760.0],
]
const CERTIFIED = { b1: 238.94212918, b2: 5.5015643181e-4, sumOfSquares: 0.12455138894 }

const residuals = (theta: readonly number[]): number[] => {
  const [b1 = 0, b2 = 0] = theta.map(Math.exp)
  return OBSERVATIONS.map(([y, x]) => b1 * (1 - Math.exp(-b2 * x)) - y)
}

describe('NIST StRD Misra1a', () => {
  it.each([
    { name: 'start 1, far', start: [500, 1e-4] },
    { name: 'start 2, near', start: [250, 5e-4] },
  ])('$name: both parameters to 7 digits, the sum of squares to 9', ({ start }) => {
    const found = minimise({ residuals, start: start.map(Math.log) })
    const [b1 = 0, b2 = 0] = found.theta.map(Math.exp)
    expect(found.settled).toBe(true)
    expect(Math.abs(b1 / CERTIFIED.b1 - 1)).toBeLessThan(1e-7)
    expect(Math.abs(b2 / CERTIFIED.b2 - 1)).toBeLessThan(1e-7)
    expect(Math.abs(found.sumOfSquares / CERTIFIED.sumOfSquares - 1)).toBeLessThan(1e-9)
  })
})
