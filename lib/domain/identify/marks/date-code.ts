/**
 * Date codes as SETS of possible years: a one-figure year says nothing of the decade.
 *
 * US source-and-date code: three figures of the maker's source code (or none), then the year in one or
 * two figures, then the week in two: "188-5-32", "188532", "5-32", "55-32". Source: a collector's page on
 * EIA codes. Years 1940 to 1999 are taken (from memory: the codes came in during the 1940s).
 *
 * European etched two-line code: a factory mark, the last figure of the year, a letter A to L for the month
 * and from about 1960 a figure for the week. Three characters: before about 1960 (8 is 1958), or a factory that
 * never gave the week; four: later (8 is 1968 or 1978). Source: collectors' pages that agree on the letters. A 4 in front
 * mostly is the triangle of a factory, looked at carelessly: a collector's page. Before about 1956 the second line was a
 * factory and a sign for the month from a list that is not here: it is not read. The first line names the type (etched-type.ts).
 *
 * A text that fits several readings gives all of them. What a figure cannot say is not guessed at.
 */
import type { Remark } from '../designation/designation-reading'
import { CHANGE_YEARS } from '../knowledge/numbers/etched-codes'
import type { KnowledgeSourceKey } from '../knowledge-source'
import { type EtchedType, etchedType } from './etched-type'

export type DateReading = {
  readonly system: 'us-week' | 'etched-month' | 'etched-change' | 'plain-year'
  readonly years: readonly number[]
  /** Of the year, 1 to 53. */
  readonly week: number | null
  /** 1 to 12. */
  readonly month: number | null
  /** Three figures of a US code; whose they are is for the shop's own list. */
  readonly sourceCode: string | null
  /** Of an etched code, as etched. */
  readonly factoryMark: string | null
  readonly sentence: string
  readonly source: KnowledgeSourceKey
}

type Span = readonly [from: number, to: number]

const US_CODES: Span = [1940, 1999]
const ETCHED_THREE: Span = [1955, 1964]
const ETCHED_FOUR: Span = [1960, 1979]
/** The factory of this mark never gave the week, so three characters leave the decade open. */
const NEVER_A_WEEK = ['≠', '#']

const yearsEnding = (figure: number, [from, to]: Span): number[] =>
  Array.from({ length: to - from + 1 }, (_, index) => from + index).filter((year) => year % 10 === figure)

const twoFigureYear = (figures: string, [from, to]: Span): number[] =>
  [1900 + Number(figures), 2000 + Number(figures)].filter((year) => year >= from && year <= to)

const yearWord = (years: readonly number[]): string =>
  years.length === 1 ? `${years[0]}` : `${years.slice(0, -1).join(', ')} or ${years.at(-1)}`

// Source code, year, week; dashes, points and spaces stand where they like.
const US = /^(?:(\d{3})[\s.-]*)?(\d{1,2})[\s.-]*(\d{2})$/

function usReadings(text: string): DateReading[] {
  // Five or six figures in one could be cut elsewhere too; only a source code of three in front is in the scheme.
  const [, sourceCode = null, yearFigures = '', weekFigures = ''] = US.exec(text) ?? []
  const week = Number(weekFigures)
  if (yearFigures === '' || week < 1 || week > 53) return []
  const years =
    yearFigures.length === 1 ? yearsEnding(Number(yearFigures), US_CODES) : twoFigureYear(yearFigures, US_CODES)
  if (years.length === 0) return []
  const decade = yearFigures.length === 1 ? ' A one-figure year leaves the decade open.' : ''
  const maker = sourceCode ? `source code ${sourceCode}, ` : ''
  return [
    {
      ...{ system: 'us-week', years, week, month: null, sourceCode, factoryMark: null, source: 'source-code' },
      sentence: `Read as a US code: ${maker}week ${week} of ${yearWord(years)}.${decade}`,
    },
  ]
}

const MONTHS = 'ABCDEFGHIJKL'
const MONTH_WORDS = 'January February March April May June July August September October November December'.split(' ')
const ETCHED = /^([A-Z4]|[*Δ∆≠#])[\s-]*(\d)[\s-]*([A-L])[\s-]*([1-6])?$/
const TRIANGLES = ['4', '∆']

function etchedSpan(factoryMark: string, hasWeek: boolean): readonly [Span, string] {
  if (hasWeek) return [ETCHED_FOUR, 'with a week figure, so from about 1960 on']
  const never = NEVER_A_WEEK.includes(factoryMark)
  if (never)
    return [[ETCHED_THREE[0], ETCHED_FOUR[1]], 'this factory mark never had a week figure, so the decade stays open']
  return [ETCHED_THREE, 'without a week figure, so before about 1965']
}

function etchedReadings(text: string): DateReading[] {
  const [, written = '', yearFigure = '', letter = '', weekOfMonth] = ETCHED.exec(text) ?? []
  if (written === '') return []
  const factoryMark = TRIANGLES.includes(written) ? 'Δ' : written
  const month = MONTHS.indexOf(letter) + 1
  const [span, word] = etchedSpan(factoryMark, weekOfMonth !== undefined)
  const years = yearsEnding(Number(yearFigure), span)
  return [
    {
      ...{ system: 'etched-month', years, week: null, month, sourceCode: null, factoryMark, source: 'etched-code' },
      sentence: `Read as an etched code: ${MONTH_WORDS[month - 1]} of ${yearWord(years)} (${word}).`,
    },
  ]
}

function changeReadings(text: string): DateReading[] {
  const { code, span, note } = CHANGE_YEARS.find((one) => one.code.toUpperCase() === text) ?? {}
  if (!code || !span) return []
  const [from, to] = span
  const years = Array.from({ length: to - from + 1 }, (_, index) => from + index)
  return [
    {
      ...{ system: 'etched-change', years, week: null, month: null, sourceCode: null, factoryMark: null },
      sentence: `The etched code ${code}: about ${from}${to > from ? ` to ${to}` : ''}${note}.`,
      source: 'etched-change',
    },
  ]
}

const PLAIN_YEAR = /^(?:19|20)\d{2}$/

/** "1957" is also a two-figure year 19 with week 57, which no year has: read as the year alone. */
function plainYear(text: string): DateReading[] {
  if (!PLAIN_YEAR.test(text)) return []
  return [
    {
      ...{ system: 'plain-year', years: [Number(text)], week: null, month: null, sourceCode: null, factoryMark: null },
      sentence: `Read as the year ${text}, as written.`,
      source: 'practice',
    },
  ]
}

const tidied = (text: string): string =>
  text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[‐‑‒–—−]/g, '-')
    .trim()

function readDates(text: string): DateReading[] {
  const year = plainYear(text)
  if (year.length > 0) return year
  return [...usReadings(text), ...etchedReadings(text), ...changeReadings(text)]
}

type Read = { readonly readings: readonly DateReading[]; readonly types: readonly EtchedType[] }

function readOne(text: string): Read {
  const type = etchedType(text)
  return { readings: readDates(text), types: type ? [type] : [] }
}

const isRead = ({ readings, types }: Read): boolean => readings.length + types.length > 0

/** "Xf2B2D4", both lines run together or joined by a hyphen: a type code and a date behind it. */
function readJoined(text: string): Read {
  for (const length of [3, 2, 4]) {
    const [first, second] = [readOne(text.slice(0, length)), etchedReadings(text.slice(length).replace(/^-/, ''))]
    if (first.types.length > 0 && second.length > 0)
      return { readings: [...first.readings, ...second], types: first.types }
  }
  return { readings: [], types: [] }
}

export type DateReadings = Read & {
  /** Pieces of the text that fit no code known here. */
  readonly unread: readonly string[]
  readonly remarks: readonly Remark[]
}

const TRIANGLE: Remark = {
  sentence:
    'An etched 4 at the beginning mostly is a triangle (Δ), the mark of a factory: it was read as one. Look again.',
  source: 'etched-type',
}

const OLD_LINE: Remark = {
  sentence:
    'An etched line of two characters may be of before about 1956: a factory and a sign for the month, by a list that is not here. It was not read.',
  source: 'etched-code',
}

function remarksOn(pieces: readonly string[], unread: readonly string[]): Remark[] {
  return [
    ...(pieces.some((piece) => /^(?:\S{2,4}-?)?4\d[A-L][1-6]?$/.test(piece)) ? [TRIANGLE] : []),
    ...(unread.some((piece) => /^[A-Z*Δ∆≠#][A-Z\d]$/.test(piece)) ? [OLD_LINE] : []),
  ]
}

/** Two codes ("I61 B0D3", or on two lines) are read one by one when the whole is none. */
export function readDateCode(given: string): DateReadings {
  const text = tidied(given)
  if (text === '') return { readings: [], types: [], unread: [], remarks: [] }
  const whole = readOne(text)
  const pieces = isRead(whole) ? [text] : text.split(/[\s,;/]+/).filter((piece) => piece !== '')
  const each = pieces.map((piece) => [piece, isRead(readOne(piece)) ? readOne(piece) : readJoined(piece)] as const)
  const unread = each.filter(([, read]) => !isRead(read)).map(([piece]) => piece)
  return {
    readings: each.flatMap(([, { readings }]) => readings),
    types: each.flatMap(([, { types }]) => types),
    unread,
    remarks: remarksOn(pieces, unread),
  }
}

/** Years that every code allows; null when no code was read. Empty when the codes exclude each other. */
export function yearsOfCodes({ readings }: DateReadings): readonly number[] | null {
  const [first, ...others] = readings
  if (!first) return null
  return first.years.filter((year) => others.every(({ years }) => years.includes(year)))
}
