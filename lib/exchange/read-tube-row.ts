/**
 * One row of a table as a tube with, perhaps, its test: or every fault of the
 * row, each naming the column, what stands there and what may.
 *
 * The bounds are those of the stock's own forms. An empty field is not zero.
 * Decimal comma and point are both read. A test is there when a current, a
 * transconductance or a short stands in the row; it then needs its day,
 * instrument and test point as a test typed by hand does.
 */
import type { Day } from '../domain/calendar'
import { money } from '../domain/money'
import type { StockType } from '../domain/stock/stock-type'
import { type TestEntry, testFaults } from '../domain/stock/test-entry'
import {
  conditionWord,
  type SectionReading,
  TUBE_CONDITIONS,
  type TubeCondition,
  type TubeDetails,
} from '../domain/stock/tube'
import { tubeFaultText } from '../domain/stock/tube-fault'
import {
  NOTHING_FURTHER,
  SEEN_NAMES,
  type TubeFurther,
  USED_STATES,
  WARRANTY_STATES,
  warrantyWord,
} from '../domain/stock/tube-further'
import { LONGEST_MARK, readMark } from '../domain/stock/tube-mark'
import { amps, siemens, volts } from '../domain/units'
import type { Words } from '../domain/words'
import { amountOf, clipped, dayOf, numberOf, type Reader, wordOf } from './row-fields'
import { type ColumnMapping, foldedHeading, TUBE_COLUMNS, type TubeColumn } from './tube-columns'
import { restored } from './write-table'

export type ImportedTest = TestEntry & {
  readonly day: Day
  readonly testedBy: string
  readonly calibratedOn: Day | null
}

export type ImportedTube = {
  /** Empty mark: the next free one is given. */
  readonly details: TubeDetails
  readonly further: TubeFurther
  readonly whereabouts: 'in-stock' | 'sold' | 'scrapped'
  readonly test: ImportedTest | null
}

export type RowFault = { readonly column: TubeColumn; readonly sentence: string }

export type RowReading = {
  readonly mapping: ColumnMapping
  readonly digits: number
  readonly currency: string
  readonly words: Words
  readonly today: Day
  readonly typeOf: (designation: string) => StockType
}

export type ReadRow =
  | { readonly ok: true; readonly tube: ImportedTube }
  | { readonly ok: false; readonly faults: readonly RowFault[] }

export function readTubeRow(fields: readonly string[], reading: RowReading): ReadRow {
  const faults: RowFault[] = []
  const typed = new Map<TubeColumn, string>()
  for (const [place, column] of reading.mapping.entries())
    if (column !== null) typed.set(column, restored((fields[place] ?? '').trim()))
  // One sentence for a column: that a figure which cannot be read is missing too need not be told.
  const fault: Reader['fault'] = (column, sentence) => {
    if (!faults.some((each) => each.column === column)) faults.push({ column, sentence })
  }
  const raw = (column: TubeColumn) => typed.get(column) ?? ''
  const text: Reader['text'] = (column, max) => {
    const value = raw(column)
    if (value.length > max)
      fault(column, `${TUBE_COLUMNS[column].heading} has ${value.length} characters; at most ${max} fit.`)
    return value
  }
  const reader = { text, raw, fault }
  const details = detailsOf(reader, reading)
  const further = furtherOf(reader)
  const whereabouts = whereaboutsOf(reader)
  const test = testOf(reader, reading, details.designation)
  return faults.length > 0 ? { ok: false, faults } : { ok: true, tube: { details, further, whereabouts, test } }
}

function detailsOf(reader: Reader, reading: RowReading): TubeDetails {
  const { text, raw, fault } = reader
  const designation = text('designation', 40)
  if (designation === '') fault('designation', 'Type is empty. It must say what is printed on it: 6L6GC, EL34.')
  const typedMark = raw('mark')
  const mark = typedMark === '' ? '' : readMark(typedMark)
  if (mark === null)
    fault(
      'mark',
      `Mark: “${clipped(typedMark)}” is no mark. Letters, digits and hyphens, at least one digit, at most ${LONGEST_MARK} in all.`,
    )
  return {
    mark: mark ?? '',
    designation,
    condition: conditionOf(reader),
    acquired: text('acquired', 200),
    construction: text('construction', 300),
    location: text('location', 60),
    cost: amountOf(reader, 'cost', reading),
    price: amountOf(reader, 'price', reading) ?? money(0),
  }
}

/** Words other lists use for the conditions kept here. Common practice, no source. */
const OTHER_CONDITIONS: Readonly<Record<string, TubeCondition>> = {
  nos: 'new-old-stock-loose',
  nib: 'new-old-stock-boxed',
  nosboxed: 'new-old-stock-boxed',
  nosnib: 'new-old-stock-boxed',
  nosinbox: 'new-old-stock-boxed',
  nosloose: 'new-old-stock-loose',
  newoldstock: 'new-old-stock-loose',
  new: 'current-production',
  currentproduction: 'current-production',
  used: 'used-tested',
  usedtested: 'used-tested',
  pull: 'pull',
  pulled: 'pull',
  asis: 'as-found',
  untested: 'as-found',
  bad: 'reject',
  dead: 'reject',
}

const CONDITIONS: ReadonlyMap<string, TubeCondition> = new Map([
  ...Object.entries(OTHER_CONDITIONS),
  ...TUBE_CONDITIONS.flatMap((condition) =>
    [condition, conditionWord(condition)].map((word) => [foldedHeading(word), condition] as const),
  ),
])

function conditionOf({ raw, fault }: Reader): TubeCondition {
  const typed = raw('condition')
  const condition = typed === '' ? 'as-found' : CONDITIONS.get(foldedHeading(typed))
  if (condition === undefined)
    fault('condition', `Condition: “${clipped(typed)}” is not one of ${TUBE_CONDITIONS.map(conditionWord).join('; ')}.`)
  return condition ?? 'as-found'
}

const USED_WORDS = new Map([
  ...USED_STATES.map((state) => [state, state] as const),
  ['new', 'unused'] as const,
  ['nos', 'unused'] as const,
  ['yes', 'used'] as const,
  ['no', 'unused'] as const,
])
const WARRANTY_WORDS = new Map(
  WARRANTY_STATES.flatMap((state) => [state, warrantyWord(state)].map((word) => [foldedHeading(word), state] as const)),
)
const YES_NO = new Map<string, 'yes' | 'no'>([
  ...['yes', 'y', 'true', '1', 'x', 'found', 'short', 'shorts'].map((word) => [word, 'yes'] as const),
  ...['no', 'n', 'false', '0', 'none', 'ok'].map((word) => [word, 'no'] as const),
])
const PLACES = new Map([
  ...['instock', 'stock', 'free'].map((word) => [word, 'in-stock'] as const),
  ['sold', 'sold'] as const,
  ['scrapped', 'scrapped'] as const,
])

function furtherOf(reader: Reader): TubeFurther {
  const { text } = reader
  const seen = Object.fromEntries(SEEN_NAMES.map((name) => [name, text(name, 200)]))
  return {
    ...NOTHING_FURTHER,
    ...seen,
    used: wordOf(reader, 'used', USED_WORDS) ?? '',
    cosmetics: text('cosmetics', 200),
    box: text('box', 200),
    warranty: wordOf(reader, 'warranty', WARRANTY_WORDS) ?? '',
    warrantyUntil: dayOf(reader, 'warrantyUntil'),
    hoursBefore: numberOf(reader, 'hoursBefore', 'h', 0, 100_000),
    setName: text('setName', 60),
    reference: wordOf(reader, 'reference', YES_NO) === 'yes',
  }
}

/** Beside a noise an empty box does not tell whether the list keeps the two apart. */
function heardOf({ text }: Reader): Pick<ImportedTest, 'noise' | 'microphony'> {
  const [noise, microphony] = [text('noise', 120), text('microphony', 120)]
  return { noise, microphony: microphony === '' && noise !== '' ? null : microphony }
}

/** One that sits in an amplifier comes with that amplifier, not by a list. */
function whereaboutsOf(reader: Reader): ImportedTube['whereabouts'] {
  return wordOf(reader, 'whereabouts', PLACES) ?? 'in-stock'
}

function testOf(reader: Reader, reading: RowReading, designation: string): ImportedTest | null {
  const { text, fault } = reader
  const shorts = wordOf(reader, 'shorts', YES_NO) === 'yes'
  const sections = sectionsOf(reader)
  const entry = {
    day: dayOf(reader, 'day'),
    instrumentName: text('instrumentName', 80),
    ...settingOf(reader),
    sections,
    shorts,
    ...{ leakage: text('leakage', 120), gas: text('gas', 120), note: text('testNote', 500) },
    ...heardOf(reader),
    ...{ testedBy: text('testedBy', 120), calibratedOn: dayOf(reader, 'calibratedOn') },
  }
  if (!shorts && sections.length === 0) return null
  const { day } = entry
  for (const found of testFaults(entry, reading.typeOf(designation), reading.today))
    fault(
      found.field === 'sections' ? 'secondPlateMilliamps' : found.field,
      tubeFaultText({ ...found, row: null }, reading.words),
    )
  if (day === null) return null
  return shorts
    ? { ...entry, day, plateVoltage: null, screenVoltage: null, gridVoltage: null, sections: [] }
    : { ...entry, day }
}

function settingOf(reader: Reader) {
  const volt = (value: number | null) => (value === null ? null : volts(value))
  return {
    plateVoltage: volt(numberOf(reader, 'plateVolts', 'V', 0, 1500)),
    screenVoltage: volt(numberOf(reader, 'screenVolts', 'V', 0, 1000)),
    gridVoltage: volt(numberOf(reader, 'gridVolts', 'V', -300, 0)),
  }
}

const inAmps = (milliamps: number | null) => (milliamps === null ? null : amps(milliamps / 1000))
const inSiemens = (slope: number | null) => (slope === null ? null : siemens(slope / 1000))

/** None when nothing was read. */
function sectionsOf(reader: Reader): SectionReading[] {
  const current = (column: TubeColumn, max: number) => inAmps(numberOf(reader, column, 'mA', 0, max))
  const slope = numberOf(reader, 'gm', 'mA/V', 0, 60)
  const micromhos = numberOf(reader, 'gmMicromhos', 'µmho', 0, 60_000)
  const first: SectionReading = {
    section: 1,
    plateCurrent: current('plateMilliamps', 1000),
    screenCurrent: current('screenMilliamps', 200),
    transconductance: inSiemens(slope ?? (micromhos === null ? null : micromhos / 1000)),
  }
  const second: SectionReading = {
    section: 2,
    plateCurrent: current('secondPlateMilliamps', 1000),
    screenCurrent: null,
    transconductance: inSiemens(numberOf(reader, 'secondGm', 'mA/V', 0, 60)),
  }
  const isRead = ({ plateCurrent, screenCurrent, transconductance }: SectionReading) =>
    plateCurrent !== null || screenCurrent !== null || transconductance !== null
  if (isRead(second)) return [first, second]
  return isRead(first) ? [first] : []
}
