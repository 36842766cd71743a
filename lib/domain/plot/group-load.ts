/** What the tubes of an output group work into, from the sheet. Each group is taken to have a transformer of its own. */
import type { AmpSheet } from '../amp/amp'
import { outputGroup } from '../bench/bench-result'
import type { PlotLoad } from './load-path'

/** Null: the load is not on the sheet, or a push-pull group does not fall into two equal sides. */
export function groupLoad(sheet: AmpSheet, group: string): PlotLoad | null {
  const { plateLoadOhms: ohms, outputClass: arrangement } = sheet.amp
  const tubes = outputGroup(sheet, group).length
  const tubesPerSide = arrangement === 'push-pull' ? tubes / 2 : tubes
  return ohms === null || tubes === 0 || !Number.isInteger(tubesPerSide) ? null : { ohms, arrangement, tubesPerSide }
}
