/**
 * A test record as it is entered, and what keeps it from being written down.
 * Shorts come first: when one is found the test stops, and no reading after it
 * is asked for or taken.
 */
import { type Day, dayInZone, endOfDay } from '../calendar'
import type { StockType } from './stock-type'
import type { SectionReading, TubeTestFacts } from './tube'

export type TestEntry = TubeTestFacts & { readonly day: Day | null }

export type TestField =
  | 'day'
  | 'instrumentName'
  | 'plateVolts'
  | 'screenVolts'
  | 'gridVolts'
  | 'plateMilliamps'
  | 'screenMilliamps'
  | 'gm'
  | 'secondPlateMilliamps'
  | 'secondGm'

export type TestFault =
  | { readonly code: 'day-missing'; readonly field: 'day' }
  | { readonly code: 'day-ahead'; readonly field: 'day'; readonly day: Day; readonly today: Day }
  | { readonly code: 'instrument-missing'; readonly field: 'instrumentName' }
  | { readonly code: 'current-missing'; readonly field: 'plateMilliamps' }
  | { readonly code: 'point-missing'; readonly field: 'plateVolts' | 'gridVolts' }
  | { readonly code: 'reading-with-shorts'; readonly field: TestField }
  | { readonly code: 'no-such-electrode'; readonly field: TestField; readonly designation: string }
  | { readonly code: 'one-section-only'; readonly field: TestField | 'sections'; readonly designation: string }

const isRead = ({ plateCurrent, screenCurrent, transconductance }: SectionReading): boolean =>
  plateCurrent !== null || screenCurrent !== null || transconductance !== null

/** False when nothing but the prefilled day and instrument stands there: then there was no test. */
export function isTestGiven(entry: TestEntry): boolean {
  const { plateVoltage, screenVoltage, gridVoltage, sections, shorts, leakage, gas, noise, microphony, note } = entry
  const isSet = [plateVoltage, screenVoltage, gridVoltage].some((voltage) => voltage !== null)
  return isSet || shorts || sections.some(isRead) || `${leakage}${gas}${noise}${microphony ?? ''}${note}` !== ''
}

export function testFaults(entry: TestEntry, type: StockType, today: Day): TestFault[] {
  return [...headFaults(entry, today), ...(entry.shorts ? stoppedFaults(entry) : readingFaults(entry, type))]
}

function headFaults({ day, instrumentName }: TestEntry, today: Day): TestFault[] {
  const faults: TestFault[] = []
  if (day === null) faults.push({ code: 'day-missing', field: 'day' })
  else if (day > today) faults.push({ code: 'day-ahead', field: 'day', day, today })
  if (instrumentName.trim() === '') faults.push({ code: 'instrument-missing', field: 'instrumentName' })
  return faults
}

function stoppedFaults({ sections }: TestEntry): TestFault[] {
  return readFields(sections).map((field) => ({ code: 'reading-with-shorts', field }))
}

function readingFaults(entry: TestEntry, type: StockType): TestFault[] {
  const { plateVoltage, screenVoltage, gridVoltage, sections } = entry
  const { designation } = type
  const faults: TestFault[] = []
  if (plateVoltage === null) faults.push({ code: 'point-missing', field: 'plateVolts' })
  if (gridVoltage === null && type.hasGrid) faults.push({ code: 'point-missing', field: 'gridVolts' })
  if (sections[0] === undefined || sections[0].plateCurrent === null) {
    faults.push({ code: 'current-missing', field: 'plateMilliamps' })
  }
  const absent = (field: TestField) => faults.push({ code: 'no-such-electrode', field, designation })
  if (!type.mayHaveScreen && screenVoltage !== null) absent('screenVolts')
  if (!type.mayHaveGrid && gridVoltage !== null) absent('gridVolts')
  for (const field of readFields(sections)) {
    if (field === 'screenMilliamps' && !type.mayHaveScreen) absent(field)
    if ((field === 'gm' || field === 'secondGm') && !type.mayHaveGrid) absent(field)
    else if (field.startsWith('second') && !type.mayHaveTwoSections) {
      faults.push({ code: 'one-section-only', field, designation })
    }
  }
  return faults
}

function readFields(sections: readonly SectionReading[]): TestField[] {
  return sections.flatMap(({ section, plateCurrent, screenCurrent, transconductance }): TestField[] => {
    const fields: TestField[] = []
    if (plateCurrent !== null) fields.push(section === 1 ? 'plateMilliamps' : 'secondPlateMilliamps')
    if (screenCurrent !== null) fields.push('screenMilliamps')
    if (transconductance !== null) fields.push(section === 1 ? 'gm' : 'secondGm')
    return fields
  })
}

/** Today's test is of this very moment; one entered later belongs to the end of its day. */
export function testedInstant(day: Day, now: Date, zone: string): Date {
  return day === dayInZone(now, zone) ? now : endOfDay(day, zone)
}
