/**
 * Least squares by the Levenberg–Marquardt method of the package ml-levenberg-marquardt.
 *
 * Minimises Σ rᵢ(θ)². The package keeps a step even where it made things worse and stops
 * only at its iteration limit, so it is run in short rounds, each from the best point so
 * far, until a round gains less than 1e-12 of the sum. Slopes are central differences,
 * so every θ should be of order one: fit logarithms.
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt'

export type LeastSquares = {
  readonly residuals: (theta: readonly number[]) => readonly number[]
  readonly start: readonly number[]
}

export type Minimum = { readonly theta: readonly number[]; readonly sumOfSquares: number; readonly settled: boolean }

const ROUNDS = 60
const ITERATIONS = 12
const STEP = 1e-5
const GAIN = 1e-12

export const sumOfSquares = (residuals: readonly number[]): number => residuals.reduce((sum, one) => sum + one * one, 0)

function oneRound(problem: LeastSquares, from: readonly number[], damping: number): readonly number[] {
  const count = problem.residuals(from).length
  const fitted = levenbergMarquardt(
    { x: Array.from({ length: count }, (_, i) => i), y: new Array<number>(count).fill(0) },
    (theta) => {
      const residuals = problem.residuals(theta)
      return (i) => residuals[i] ?? Number.NaN
    },
    {
      initialValues: [...from],
      damping,
      maxIterations: ITERATIONS,
      errorTolerance: 1e-300,
      gradientDifference: STEP,
      centralDifference: true,
    },
  )
  return fitted.parameterValues
}

export function minimise(problem: LeastSquares): Minimum {
  let theta = problem.start
  let best = sumOfSquares(problem.residuals(theta))
  let idle = 0
  for (let round = 0; round < ROUNDS && idle < 2; round++) {
    // A timid round follows one that gained nothing: a bold first step may have left the valley.
    const found = oneRound(problem, theta, idle === 0 ? 0.01 : 10)
    const sum = sumOfSquares(problem.residuals(found))
    idle = sum < best * (1 - GAIN) ? 0 : idle + 1
    if (sum < best) [theta, best] = [found, sum]
  }
  return { theta, sumOfSquares: best, settled: idle >= 2 }
}
