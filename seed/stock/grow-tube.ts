/**
 * One tube of a lot, as the tester reads it. Plate current scatters
 * log-normally about the book value; transconductance follows it in part, since
 * both rise with emission and with the closeness of the grid; the two sections
 * of a twin are alike but not equal. A worn lot is weak in both.
 */
import type { SectionReading } from '@/lib/domain/stock/tube'
import { amps, siemens } from '@/lib/domain/units'
import type { Chance } from '@/seed/chance'
import type { BookValue } from './book-values'

export type Scatter = {
  /** Mean over the book value: 0.85 for a worn lot. */
  readonly strength: number
  /** Of the logarithm of plate current. */
  readonly spread: number
}

const SECTION_SPREAD = 0.06
const SCREEN_SPREAD = 0.1
/** Of transconductance with plate current, as exponents. */
const SLOPE_SHARED = 0.5
const SLOPE_OWN = 0.25
const SLOPE_WORN = 0.6

/** To the tester's last digit. */
const shown = (value: number, digit: number) => Math.round(value / digit) * digit
const inAmps = (milliamps: number, digit: number) => amps(Number((shown(milliamps, digit) / 1000).toPrecision(8)))
const inSiemens = (milliampsPerVolt: number) => siemens(Number((shown(milliampsPerVolt, 0.01) / 1000).toPrecision(8)))
const currentDigit = ({ plateMilliamps }: BookValue) => (plateMilliamps < 20 ? 0.01 : 0.1)

type Section = { readonly number: 1 | 2; readonly shared: number; readonly own: number }

function section(
  book: BookValue,
  { strength, spread }: Scatter,
  { number, shared, own }: Section,
  chance: Chance,
): SectionReading {
  const { plateMilliamps, screenMilliamps, gmMilliampsPerVolt } = book
  const slope = Math.exp(spread * (SLOPE_SHARED * shared + SLOPE_OWN * chance.normal()) + own / 2)
  const screen = strength * Math.exp(SCREEN_SPREAD * chance.normal())
  return {
    section: number,
    plateCurrent: inAmps(plateMilliamps * strength * Math.exp(spread * shared + own), currentDigit(book)),
    screenCurrent: screenMilliamps === null ? null : inAmps(screenMilliamps * screen, 0.1),
    transconductance:
      gmMilliampsPerVolt === null ? null : inSiemens(gmMilliampsPerVolt * strength ** SLOPE_WORN * slope),
  }
}

export function grownTube(book: BookValue, scatter: Scatter, chance: Chance): SectionReading[] {
  const shared = chance.normal()
  const first = section(book, scatter, { number: 1, shared, own: 0 }, chance)
  if (book.sections === 1) return [first]
  return [first, section(book, scatter, { number: 2, shared, own: SECTION_SPREAD * chance.normal() }, chance)]
}

/** The same tube later: every reading near the earlier one. Untested before: by the book. */
export function readAgain(
  book: BookValue,
  before: readonly SectionReading[],
  strength: number,
  chance: Chance,
): SectionReading[] {
  if (before.length === 0) return grownTube(book, { strength, spread: 0.02 }, chance)
  const scaled = (value: number | null, by: number) => (value === null ? null : value * 1000 * by)
  return before.map(({ section: number, plateCurrent, screenCurrent, transconductance }) => {
    const [plate, screen, slope] = [
      scaled(plateCurrent, strength),
      scaled(screenCurrent, strength),
      scaled(transconductance, strength ** SLOPE_WORN),
    ]
    return {
      section: number,
      plateCurrent: plate === null ? null : inAmps(plate, currentDigit(book)),
      screenCurrent: screen === null ? null : inAmps(screen, 0.1),
      transconductance: slope === null ? null : inSiemens(slope),
    }
  })
}
