/** A type of the shop's own as its history shows it: label and text, units included. */
import { type Shown, shown } from '../../history/changes'
import type { LimitKey } from '../handbook-type'
import { classWord, type OwnRow, type OwnTypeEntry } from './own-type-entry'

export type OwnLimitKey = Extract<
  LimitKey,
  | 'plateVolts'
  | 'screenVolts'
  | 'plateWatts'
  | 'screenWatts'
  | 'cathodeMilliamps'
  | 'heaterCathodeVolts'
  | 'gridLeakGridSuppliedMegohms'
  | 'gridLeakCathodeBiasMegohms'
  | 'peakInverseVolts'
  | 'outputMilliamps'
  | 'reservoirMicrofarads'
>

/** A limit a shop can note. `most`: larger is taken for a slip of the pen. */
export type OwnLimit = {
  readonly key: OwnLimitKey
  readonly label: string
  readonly unit: string
  readonly most: number
}

/** In the order of a data sheet. */
export const OWN_LIMITS: readonly OwnLimit[] = [
  { key: 'plateVolts', label: 'Plate voltage', unit: 'V', most: 5000 },
  { key: 'screenVolts', label: 'Screen voltage', unit: 'V', most: 2000 },
  { key: 'plateWatts', label: 'Plate dissipation', unit: 'W', most: 500 },
  { key: 'screenWatts', label: 'Screen dissipation', unit: 'W', most: 100 },
  { key: 'cathodeMilliamps', label: 'Cathode current', unit: 'mA', most: 5000 },
  { key: 'heaterCathodeVolts', label: 'Heater to cathode', unit: 'V', most: 1000 },
  { key: 'gridLeakGridSuppliedMegohms', label: 'Grid leak, grid-supplied bias', unit: 'MΩ', most: 50 },
  { key: 'gridLeakCathodeBiasMegohms', label: 'Grid leak, cathode bias', unit: 'MΩ', most: 50 },
  { key: 'peakInverseVolts', label: 'Peak inverse voltage', unit: 'V', most: 20000 },
  { key: 'outputMilliamps', label: 'Direct output current', unit: 'mA', most: 5000 },
  { key: 'reservoirMicrofarads', label: 'Reservoir', unit: 'µF', most: 1000 },
]

const given = (value: number | null, unit: string, name: string): string =>
  value === null ? '' : `, ${name} ${value} ${unit}`

export const rowText = (row: OwnRow): string =>
  `${row.plateVolts} V${given(row.screenVolts, 'V', 'screen')}, grid ${row.gridVolts} V: ${row.plateMilliamps} mA${given(row.screenMilliamps, 'mA', 'screen')}${given(row.gmMilliampsPerVolt, 'mA/V', 'gm')}${given(row.plateResistanceKilohms, 'kΩ', 'rp')}${given(row.mu, '', 'µ')}`.trimEnd()

const pinsText = (pins: OwnTypeEntry['pins']): string =>
  Object.entries(pins ?? {})
    .map(([pin, electrode]) => `${pin} ${electrode}`)
    .join(', ')

export function ownTypeShown(entry: OwnTypeEntry, active = true): Shown {
  const { limits, curves, drop } = entry
  return shown([
    ['Designation', entry.designation],
    ['Other numbers', entry.otherNumbers.join(', ')],
    ['Family', entry.family],
    ['Class', classWord(entry.tubeClass)],
    ['Base', [entry.base, entry.basing].filter(Boolean).join(', ')],
    ['Pins', pinsText(entry.pins)],
    ['Heater', `${entry.heaterVolts} V, ${entry.heaterAmps} A`],
    ['Rating system', entry.system],
    ...OWN_LIMITS.map(({ key, label, unit }): [string, string] => {
      const value = limits[key]
      return [label, value === undefined ? '' : `${value} ${unit}`]
    }),
    ...entry.rows.map((row, at): [string, string] => [`Operating point ${at + 1}`, rowText(row)]),
    ['Drop per plate', drop ? `${drop.dropVolts} V at ${drop.milliamps} mA` : ''],
    ['Curves', curves ? `${curves.degree === 'same' ? 'the same as' : 'similar to'} ${curves.typeId}` : ''],
    ['Read from', entry.sourceText],
    ['Note', entry.note],
    ['In use', active ? 'yes' : 'no, withdrawn'],
  ])
}
