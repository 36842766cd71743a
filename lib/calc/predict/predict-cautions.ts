/** What to know before a prediction is trusted. */

import { figure } from '@/lib/calc/output/figure'
import { KNEE_VOLTS, type SolutionCaution } from '@/lib/domain/circuit/idle-solution'
import type { PredictedIdle } from '@/lib/domain/model/predicted-idle'
import type { Words } from '@/lib/domain/words'
import type { ProposedTube } from './proposed-tube'

export type PredictCaution = { readonly code: string; readonly sentence: string }

export const READ_IT: PredictCaution = {
  code: 'prediction-only',
  sentence: 'A prediction is no reading: set the stage cold, fit, warm up, read, and set by what is read.',
}

const gridText = (volts: number): string =>
  `The grid stands ${figure(volts, 3)} V against its cathode. From 0 V it draws current, which is left out: the prediction does not hold.`

const kneeText = (volts: number, { plate }: Words): string =>
  `The ${plate} stands ${figure(volts, 3)} V above its cathode. Below ${KNEE_VOLTS} V the prediction is an order of magnitude only.`

export function curveCautions({ tube, variant }: ProposedTube, idle: PredictedIdle, words: Words): PredictCaution[] {
  const { type, agreement } = tube
  const found: PredictCaution[] = []
  if (type.standIn === 'similar') {
    const sentence = `No usable rows of ${variant.designation} are known: the curves of ${type.curvesOf} stand in, with a wider band.`
    found.push({ code: 'curves-stand-in', sentence })
  }
  if (idle.extrapolated) {
    const sentence = 'The point lies far outside the handbook rows the curves were fitted to, so the band is wider.'
    found.push({ code: 'extrapolated', sentence })
  }
  if (!type.cutoffKnown) {
    const sentence = 'The handbook rows are all about equally far from cutoff: cold points are extrapolation.'
    found.push({ code: 'cutoff-not-known', sentence })
  }
  // Three standard deviations above the mean of a chi-square variable of that many degrees.
  if (agreement && agreement.chiSquare > agreement.spare + 3 * Math.sqrt(2 * agreement.spare)) {
    const sentence = `The test records disagree by more than their uncertainties. One of them is not of this ${words.tube}, or not of this test point.`
    found.push({ code: 'records-disagree', sentence })
  }
  return found
}

export function pointCautions(plateToCathode: number, gridToCathode: number, words: Words): PredictCaution[] {
  const found: PredictCaution[] = []
  if (gridToCathode >= 0) found.push({ code: 'grid-not-negative', sentence: gridText(gridToCathode) })
  if (plateToCathode < KNEE_VOLTS) found.push({ code: 'plate-below-knee', sentence: kneeText(plateToCathode, words) })
  return found
}

export function solutionCaution(caution: SolutionCaution, words: Words): PredictCaution & { readonly socket?: string } {
  const { code } = caution
  switch (code) {
    case 'grid-not-negative':
      return { code, socket: caution.socket, sentence: gridText(caution.gridToCathodeVolts) }
    case 'plate-below-knee':
      return { code, socket: caution.socket, sentence: kneeText(caution.plateToCathodeVolts, words) }
    case 'heaters-off-nominal':
      return {
        code,
        sentence: `Heaters are ${figure(Math.abs(caution.percent), 3)} % ${caution.percent > 0 ? 'above' : 'below'} nominal with the ${words.mains}; the curves are those of nominal heaters.`,
      }
  }
}
