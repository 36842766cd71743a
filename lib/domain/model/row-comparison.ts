/**
 * The printed operating points of a type beside what its curves give there.
 *
 * Only rows of the section that print every voltage the curves need, and the plate current, can be compared;
 * currents printed for a pair are halved. Most curves were fitted to some of these very rows,
 * so a small difference here says how well the form follows them, not how well it foretells.
 */
import type { HandbookType, OperatingRow } from '../tube/handbook-type'
import { tubeCurrents } from './plate-curves'
import type { TypeModel } from './type-model'

export type ComparedRow = {
  readonly row: OperatingRow
  /** Of one tube, mA. */
  readonly printedMilliamps: number
  readonly modelMilliamps: number
}

/** Of the curves' µ: a row whose printed µ is further off belongs to the other unit of an unlike twin. */
const SAME_UNIT = 0.5

export function comparedRows({ rows }: Pick<HandbookType, 'rows'>, { parameters }: TypeModel): ComparedRow[] {
  return rows.flatMap((row): ComparedRow[] => {
    const { plateVolts, screenVolts, gridVolts, plateMilliamps, mu } = row.figures
    if (parameters.kind === 'triode' && mu && Math.abs(mu[0] / parameters.mu - 1) > SAME_UNIT) return []
    const pentode = parameters.kind === 'pentode'
    if (row.connection !== (pentode ? 'pentode' : 'triode')) return []
    if (!plateVolts || !gridVolts || !plateMilliamps || (pentode && !screenVolts)) return []
    const { plate } = tubeCurrents(parameters, plateVolts[0], screenVolts?.[0] ?? 0, gridVolts[0])
    return [{ row, printedMilliamps: plateMilliamps[0] / row.currentsFor, modelMilliamps: 1000 * plate }]
  })
}
