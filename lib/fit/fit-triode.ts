/**
 * Koren's five triode parameters from the rows of a type.
 *
 * Priors, weak and the same for every type, around the values Koren's paper gives for
 * common types (from memory): x 1.4 ± 0.12 (it moves little), kvb 300 V² within a
 * factor 2.7, kp 5·µ within a factor 2.7. µ: within a factor 1.1 of the mean printed µ,
 * see muPrior for rows that print none.
 * Three fixed starts, the best wins.
 */
import type { TriodeParameters } from '@/lib/domain/model/plate-curves'
import { type Minimum, minimise } from './least-squares'
import type { ModelRow } from './model-row'
import { predictRow } from './row-prediction'
import { rowResiduals } from './row-residuals'

const X = { centre: 1.4, spread: 0.12 } as const
const MU_SPREAD = 0.1
const KP_OVER_MU = { centre: 5, spread: 1 } as const
const KVB = { centre: 300, spread: 1 } as const
const STARTS = [2, 5, 12] as const

const triode = (theta: readonly number[]): TriodeParameters => {
  const [mu = 0, x = 0, kg = 0, kp = 0, kvb = 0] = theta.map(Math.exp)
  return { kind: 'triode', mu, x, kg, kp, kvb }
}

const geometricMean = (values: readonly number[]): number =>
  Math.exp(values.reduce((sum, one) => sum + Math.log(one), 0) / values.length)

/** Without a printed µ: 0.8·Va/|Vg|, what the 3/2 law leaves a class A point at half its cutoff voltage or so. */
function muPrior(rows: readonly ModelRow[]): { centre: number; spread: number } {
  const printed = rows.map((row) => row.mu).filter((mu) => mu !== null)
  if (printed.length > 0) return { centre: geometricMean(printed), spread: MU_SPREAD }
  return { centre: geometricMean(rows.map((row) => (0.8 * row.plate) / Math.max(-row.grid, 0.5))), spread: 0.3 }
}

function startFrom(row: ModelRow, mu: number, kpOverMu: number): number[] {
  const shape = [mu, X.centre, 1000, mu * kpOverMu, KVB.centre].map(Math.log)
  const scale = row.ia / Math.max(predictRow(triode(shape), row).ia, 1e-7)
  shape[2] = (shape[2] ?? 0) - Math.log(scale)
  return shape
}

export function fitTriode(rows: readonly ModelRow[]): TriodeParameters {
  const [first] = rows
  if (!first) throw new Error('A triode is fitted to at least one row, got none')
  const mu = muPrior(rows)
  const residuals = (theta: readonly number[]): number[] => {
    const tube = triode(theta)
    return [
      ...rows.flatMap((row) => rowResiduals(tube, row)),
      Math.log(tube.mu / mu.centre) / mu.spread,
      (tube.x - X.centre) / X.spread,
      Math.log(tube.kp / tube.mu / KP_OVER_MU.centre) / KP_OVER_MU.spread,
      Math.log(tube.kvb / KVB.centre) / KVB.spread,
    ]
  }
  const minima: Minimum[] = STARTS.map((kp) => minimise({ residuals, start: startFrom(first, mu.centre, kp) }))
  return triode(minima.reduce((a, b) => (b.sumOfSquares < a.sumOfSquares ? b : a)).theta)
}
