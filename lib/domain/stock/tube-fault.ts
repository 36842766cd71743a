/** What keeps a tube from being taken into stock, by field, and in a delivery by row; and its sentence. */
import { formatDay } from '../calendar'
import { capital, type Words } from '../words'
import type { TestFault, TestField } from './test-entry'
import { LONGEST_MARK } from './tube-mark'

export type MarkFault =
  | { readonly code: 'not-a-mark'; readonly field: 'mark'; readonly typed: string }
  | { readonly code: 'mark-taken'; readonly field: 'mark'; readonly mark: string; readonly designation: string }
  | { readonly code: 'mark-twice'; readonly field: 'mark'; readonly mark: string; readonly firstRow: number }

/** `row` counts from 0; null when it is about the sheet itself. */
export type TubeFault = (TestFault | MarkFault) & { readonly row: number | null }

export function tubeFaultText(fault: TubeFault, words: Words): string {
  const sentence = plainText(fault, words)
  return fault.row === null ? sentence : `Row ${fault.row + 1}: ${sentence}`
}

function plainText(fault: TubeFault, words: Words): string {
  switch (fault.code) {
    case 'not-a-mark':
      return `“${fault.typed}” is no mark. Use letters, digits and hyphens, at least one digit, at most ${LONGEST_MARK} in all.`
    case 'mark-taken':
      return `Mark ${fault.mark} already stands on another one here, type ${fault.designation}. Give this one another.`
    case 'mark-twice':
      return `Mark ${fault.mark} stands in row ${fault.firstRow + 1} already. Give this one another.`
    case 'day-missing':
      return 'Tested on: no day is chosen. Choose the day of the test.'
    case 'day-ahead':
      return `Tested on: ${formatDay(fault.day, words.locale)} is still to come; today is ${formatDay(fault.today, words.locale)}.`
    case 'instrument-missing':
      return 'Instrument is empty. A reading without its instrument compares with nothing.'
    case 'current-missing':
      return `${fieldLabel('plateMilliamps', words)} is empty. Type what was read, or say that a short stopped the test.`
    case 'point-missing':
      return `${fieldLabel(fault.field, words)} of the test point is empty. Without it the reading compares with nothing.`
    case 'reading-with-shorts':
      return `${fieldLabel(fault.field, words)}: a short stops the test, so nothing is read after it. Leave it empty.`
    case 'no-such-electrode':
      return `${fieldLabel(fault.field, words)}: type ${fault.designation} has no ${fault.field.startsWith('screen') ? 'screen' : 'grid'}. Leave it empty, or check the type.`
    case 'one-section-only':
      return `${fieldLabel(fault.field, words)}: type ${fault.designation} has one section. Leave it empty, or check the type.`
  }
}

export function fieldLabel(field: TestField | 'mark' | 'sections', words: Words): string {
  const plate = capital(words.plate)
  const labels: Readonly<Record<typeof field, string>> = {
    mark: 'Mark',
    sections: 'Sections',
    day: 'Tested on',
    instrumentName: 'Instrument',
    plateVolts: `${plate} volts`,
    screenVolts: 'Screen volts',
    gridVolts: 'Grid volts',
    plateMilliamps: `${plate} current`,
    screenMilliamps: 'Screen current',
    gm: 'Transconductance',
    secondPlateMilliamps: `${plate} current, section 2`,
    secondGm: 'Transconductance, section 2',
  }
  return labels[field]
}
