/**
 * How far a parameter set is from a row, in units of what a printed figure is trusted to:
 * residual = ln(model/printed) / share. Logarithms, because the goals are per cent and
 * currents span a decade.
 *
 * Shares, a judgement of how the books round and scatter, no source: Ia and gm 2.5 % (printed
 * to as many figures), µ 6 %, rp 8 %, Ig2 45 % (printed coarse). They were chosen with the
 * goals for fitted rows in sight (goals.ts); a first choice of 3.5, 8, 15 and 40 % met Ia
 * alike and missed gm and rp. Rows recalled with medium sureness count with 1.5 times these.
 */
import type { AmplifyingParameters } from '@/lib/domain/model/plate-curves'
import type { ModelRow } from './model-row'
import { predictRow } from './row-prediction'

export const SHARES = { ia: 0.025, gm: 0.025, mu: 0.06, rp: 0.08, ig2: 0.45 } as const
type FigureName = keyof typeof SHARES

const MEDIUM = 1.5

/** Smallest current a logarithm is taken of, so that a fit may start past cutoff. */
const LEAST = 1e-12

/** `skip`: figures the form is known not to reach for this class, left to the report. */
export function rowResiduals(
  tube: AmplifyingParameters,
  row: ModelRow,
  skip: ReadonlySet<FigureName> = new Set(),
): number[] {
  const model = predictRow(tube, row)
  const trust = row.sure === 'medium' ? MEDIUM : 1
  const residuals: number[] = []
  for (const name of ['ia', 'ig2', 'gm', 'rp', 'mu'] as const) {
    const printed = row[name]
    if (printed === null || skip.has(name)) continue
    // µ is printed as gm·rp; where all three stand, it would count them twice.
    if (name === 'mu' && row.gm !== null && row.rp !== null) continue
    residuals.push(Math.log(Math.max(model[name], LEAST) / printed) / (SHARES[name] * trust))
  }
  return residuals
}
