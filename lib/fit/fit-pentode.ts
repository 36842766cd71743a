/**
 * Five parameters of a pentode or beam tetrode from its rows.
 *
 * Fitted are the logarithms. Priors are weak and the same for every type: where rows
 * say something they hardly matter, where rows are few they keep the shape sane.
 *   µ    printed µ(g1,g2) ± 8 %; where none is printed 9, within a factor 1.65
 *   µa   25·µ, within a factor 2.2
 *   r    0.1, within a factor 2.2
 *   kp   20, within a factor 1.8
 * ("within": one standard deviation of the logarithm.) Three fixed starts, the best wins.
 */
import type { PentodeParameters } from '@/lib/domain/model/plate-curves'
import { type Minimum, minimise } from './least-squares'
import type { ModelRow } from './model-row'
import { predictRow } from './row-prediction'
import { rowResiduals } from './row-residuals'

const PRIORS = {
  mu: { centre: 9, spread: 0.5 },
  muAOverMu: { centre: 25, spread: 0.8 },
  r: { centre: 0.1, spread: 0.8 },
  kp: { centre: 20, spread: 0.6 },
} as const
const PRINTED_MU_SPREAD = 0.08
const STARTS = [10, 20, 40] as const

const pentode = (theta: readonly number[]): PentodeParameters => {
  const [p = 0, mu = 0, muA = 0, r = 0, kp = 0] = theta.map(Math.exp)
  return { kind: 'pentode', p, mu, muA, r, kp }
}

const away = (value: number, prior: { readonly centre: number; readonly spread: number }): number =>
  Math.log(value / prior.centre) / prior.spread

export type PentodeFitOptions = {
  /** µ(g1,g2) as one of the rows prints it. */
  readonly printedMu: number | null
  /** Small-signal pentodes print rp of megohms, which current division cannot give: not fitted. */
  readonly plateResistance: boolean
}

function priorResiduals(tube: PentodeParameters, printedMu: number | null): number[] {
  const mu = printedMu === null ? PRIORS.mu : { centre: printedMu, spread: PRINTED_MU_SPREAD }
  return [
    away(tube.mu, mu),
    away(tube.muA / tube.mu, PRIORS.muAOverMu),
    away(tube.r, PRIORS.r),
    away(tube.kp, PRIORS.kp),
  ]
}

/** P that gives the first row its current, the shape being the start's. */
function startFrom(row: ModelRow, printedMu: number | null, kp: number): number[] {
  const mu = printedMu ?? PRIORS.mu.centre
  const shape = [1e-3, mu, mu * PRIORS.muAOverMu.centre, PRIORS.r.centre, kp].map(Math.log)
  const scale = row.ia / Math.max(predictRow(pentode(shape), row).ia, 1e-6)
  shape[0] = (shape[0] ?? 0) + Math.log(scale)
  return shape
}

export function fitPentode(rows: readonly ModelRow[], options: PentodeFitOptions): PentodeParameters {
  const [first] = rows
  if (!first) throw new Error('A pentode is fitted to at least one row, got none')
  const skip = new Set(options.plateResistance ? ([] as const) : (['rp'] as const))
  const residuals = (theta: readonly number[]): number[] => {
    const tube = pentode(theta)
    return [...rows.flatMap((row) => rowResiduals(tube, row, skip)), ...priorResiduals(tube, options.printedMu)]
  }
  const minima: Minimum[] = STARTS.map((kp) => minimise({ residuals, start: startFrom(first, options.printedMu, kp) }))
  return pentode(minima.reduce((a, b) => (b.sumOfSquares < a.sumOfSquares ? b : a)).theta)
}
