/** What a shop wrote down, in the shape of a handbook type: every figure with the shop as its source. */
import { foldedDesignation } from '../folded-designation'
import type { Figure, HandbookType, OperatingRow, RowKey } from '../handbook-type'
import type { OwnTubeType } from '../tube-catalogue'
import { classWord, isTriode, type OwnDrop, type OwnRow, type OwnTypeEntry, ROLE_OF_CLASS } from './own-type-entry'

const own = (value: number): Figure => [value, 'shop']

const figures = <Key extends string>(values: Partial<Record<Key, number | null>>): Partial<Record<Key, Figure>> =>
  Object.fromEntries(
    Object.entries<number | null | undefined>(values).flatMap(([key, value]) =>
      value === null || value === undefined ? [] : [[key, own(value)]],
    ),
  ) as Partial<Record<Key, Figure>>

function row(given: OwnRow, connection: OperatingRow['connection']): OperatingRow {
  const { plateVolts, screenVolts, gridVolts } = given
  const screen = screenVolts === null ? '' : `, screen ${screenVolts} V`
  const label = `${plateVolts} V${screen}, grid ${String(gridVolts).replace('-', '−')} V`
  return { label, currentsFor: 1, connection, figures: figures<RowKey>(given), note: null }
}

const dropRow = ({ dropVolts, milliamps }: OwnDrop): OperatingRow => ({
  label: 'drop per plate',
  currentsFor: 1,
  connection: 'diode',
  figures: figures<RowKey>({ dropVolts, dropMilliampsPerPlate: milliamps }),
  note: null,
})

export function ownTubeTypeOf(id: string, entry: OwnTypeEntry): OwnTubeType {
  const { designation, otherNumbers, tubeClass, limits, sourceText, note } = entry
  const connection = isTriode(tubeClass) ? 'triode' : 'pentode'
  const base: HandbookType['base'] = {
    name: entry.base,
    eia: entry.basing || 'basing not noted',
    eiaSource: 'shop',
    pins: entry.pins,
    pinsSource: 'shop',
  }
  const ratings = {
    appliesTo: designation,
    system: entry.system,
    systemNote: null,
    limits: figures(limits),
    note: null,
  }
  return {
    id,
    family: entry.family || foldedDesignation(designation),
    role: ROLE_OF_CLASS[tubeClass],
    tubeClass,
    className: classWord(tubeClass),
    base,
    heaters: [{ volts: own(entry.heaterVolts), amps: own(entry.heaterAmps), use: null }],
    variants: [
      { designations: [designation, ...otherNumbers], ratings: Object.keys(limits).length > 0 ? ratings : null },
    ],
    otherSection: null,
    rows: [...entry.rows.map((one) => row(one, connection)), ...(entry.drop ? [dropRow(entry.drop)] : [])],
    otherNumbers: [],
    similar: [],
    notes: [`Written down by the shop from: ${sourceText}.`, ...(note ? [note] : [])],
    curves: entry.curves,
    sourceText,
  }
}
