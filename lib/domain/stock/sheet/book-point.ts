/**
 * What the handbook prints for one tube at the very point of a test.
 *
 * Only a row that names plate and grid volts, and the screen's when the test has
 * one, at the test's own values counts; a row for another point is not carried
 * over. Currents printed for a pair are halved. Good new tubes spread widely
 * about the book: 33 to 59 mA where it says 45, 80 to 120 mA where it says 100,
 * 0.66 to 1.33 of it in a small twin (common practice, no source). So a reading
 * is only told as odd outside 65 to 135 % of it.
 */
import type { OperatingRow } from '../../tube/handbook-type'
import { type Amps, amps, type Siemens, siemens } from '../../units'
import type { TestSetting } from '../tube'

export type BookReading = { readonly plateCurrent: Amps | null; readonly transconductance: Siemens | null }

export const BOOK_LOW = 0.65
export const BOOK_HIGH = 1.35

/** As the rows print their settings: a rounding of a meter's last digit is the same point. */
const SAME_VOLTS = 0.5
const SAME_GRID_VOLTS = 0.05

export function bookReading(rows: readonly OperatingRow[], setting: TestSetting): BookReading | null {
  const row = rows.find((each) => isAtPoint(each, setting))
  if (!row) return null
  const { plateMilliamps, gmMilliampsPerVolt } = row.figures
  return {
    plateCurrent: plateMilliamps ? amps(plateMilliamps[0] / 1000 / row.currentsFor) : null,
    transconductance: gmMilliampsPerVolt ? siemens(gmMilliampsPerVolt[0] / 1000) : null,
  }
}

function isAtPoint({ figures, connection }: OperatingRow, { plateVoltage, screenVoltage, gridVoltage }: TestSetting) {
  const { plateVolts, screenVolts, gridVolts } = figures
  if (!plateVolts || !gridVolts || plateVoltage === null || gridVoltage === null) return false
  if ((screenVoltage === null) !== (connection !== 'pentode')) return false
  const near = (printed: number, set: number, within: number) => Math.abs(printed - set) <= within
  return (
    near(plateVolts[0], plateVoltage, SAME_VOLTS) &&
    near(gridVolts[0], gridVoltage, SAME_GRID_VOLTS) &&
    (screenVoltage === null || (screenVolts !== undefined && near(screenVolts[0], screenVoltage, SAME_VOLTS)))
  )
}

/** Share of the book's figure; null when it lies where good tubes lie, or when one of the two is not known. */
export function oddShareOfBook(value: number | null, book: number | null): number | null {
  if (value === null || book === null || book <= 0) return null
  const share = value / book
  return share < BOOK_LOW || share > BOOK_HIGH ? share : null
}
