/** A correction between two instruments in words. */
import { capital, type Words } from '../words'
import type { Carried, CorrectedFigure, InstrumentCorrection } from './instrument-correction'

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`

export const correctedFigureName = (figure: CorrectedFigure, words: Words): string =>
  figure === 'plateCurrent' ? `${capital(words.plate)} current` : 'Transconductance'

export const factorText = ({ factor, uncertainty }: InstrumentCorrection): string =>
  `× ${factor.toFixed(3)} ± ${percent(uncertainty)}`

export const readingUncertaintyText = ({ readingUncertainty }: InstrumentCorrection): string =>
  `± ${percent(readingUncertainty)}`

/** In milliamps or milliamps per volt. */
export function carriedText({ value, halfWidth }: Carried, figure: CorrectedFigure): string {
  const digits = halfWidth >= 0.001 ? 1 : 2
  const unit = figure === 'plateCurrent' ? 'mA' : 'mA/V'
  return `${(value * 1000).toFixed(digits)} ± ${(halfWidth * 1000).toFixed(digits)} ${unit}`
}
