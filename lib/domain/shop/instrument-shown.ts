import { type Shown, shown } from '@/lib/domain/history/changes'
import type { InstrumentDetails } from './instrument'

export function instrumentShown(instrument: InstrumentDetails): Shown {
  return shown([
    ['Name', instrument.name],
    ['Kind', instrument.kind],
    ['Calibrated on', instrument.calibratedOn],
    ['DC accuracy', accuracyText(instrument)],
    ['Display', `${instrument.displayCounts} counts`],
    ['Input resistance', `${instrument.inputResistance / 1e6} MΩ`],
    ['In use', instrument.active ? 'yes' : 'no, retired'],
  ])
}

export const accuracyText = ({ accuracyPercent, accuracyCounts }: InstrumentDetails): string =>
  `± (${accuracyPercent} % + ${accuracyCounts} counts)`
