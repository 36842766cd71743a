/**
 * The run of a test sheet so far: range and mean of each figure, how many of
 * the tubes lie within the yardstick of one another, and which lie far off.
 *
 * Within the yardstick means: every two of them differ by at most 5 mA of plate
 * current and 10 % of transconductance, the percentage taken of the pair's mean
 * (the figures of lib/domain/matching/match-limits). The largest such group is
 * found by sliding one window over plate current and, within it, another over
 * transconductance; a tube without transconductance joins by plate current alone
 * only where none of the run has one. Of a twin, section 1 is grouped.
 */
import { USUAL_YARDSTICKS } from '../../matching/match-limits'
import type { SectionReading } from '../tube'
import { type BookReading, oddShareOfBook } from './book-point'
import { isFar, type RobustSpread, robustSpread } from './outlier'
import type { SheetLine } from './test-sheet'

export type FigureKind = 'plateCurrent' | 'transconductance'
export type SheetFigure = { readonly kind: FigureKind; readonly section: 1 | 2 }

/** SI. */
export type FigureSpread = SheetFigure & {
  readonly count: number
  readonly low: number
  readonly high: number
  readonly mean: number
}

export type SheetAlarm = SheetFigure & {
  readonly mark: string
  readonly value: number
} & (
    | { readonly against: 'run'; readonly median: number }
    | { readonly against: 'book'; readonly book: number; readonly share: number }
  )

export type SheetSpread = {
  readonly figures: readonly FigureSpread[]
  /** Marks of the largest group within the yardstick; empty below two. */
  readonly alike: readonly string[]
  readonly alarms: readonly SheetAlarm[]
  readonly shorts: readonly string[]
}

export const SHEET_FIGURES: readonly SheetFigure[] = [
  { kind: 'plateCurrent', section: 1 },
  { kind: 'transconductance', section: 1 },
  { kind: 'plateCurrent', section: 2 },
  { kind: 'transconductance', section: 2 },
]

const readingOf = ({ test }: SheetLine, section: 1 | 2): SectionReading | undefined =>
  test.shorts ? undefined : test.sections.find((each) => each.section === section)

const figureOf = (line: SheetLine, { kind, section }: SheetFigure): number | null =>
  readingOf(line, section)?.[kind] ?? null

const valuesOf = (lines: readonly SheetLine[], figure: SheetFigure): number[] =>
  lines.flatMap((line) => figureOf(line, figure) ?? [])

export function sheetSpread(lines: readonly SheetLine[], book: BookReading | null): SheetSpread {
  return {
    figures: SHEET_FIGURES.flatMap((figure) => figureSpread(lines, figure)),
    alike: largestAlike(lines),
    alarms: SHEET_FIGURES.flatMap((figure) => alarmsOf(lines, figure, book)),
    shorts: lines.filter(({ test }) => test.shorts).map(({ mark }) => mark),
  }
}

function figureSpread(lines: readonly SheetLine[], figure: SheetFigure): FigureSpread[] {
  const values = valuesOf(lines, figure)
  if (values.length === 0) return []
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return [{ ...figure, count: values.length, low: Math.min(...values), high: Math.max(...values), mean }]
}

function alarmsOf(lines: readonly SheetLine[], figure: SheetFigure, book: BookReading | null): SheetAlarm[] {
  const run = robustSpread(valuesOf(lines, figure))
  const printed = book?.[figure.kind] ?? null
  return lines.flatMap((line) => {
    const value = figureOf(line, figure)
    return value === null ? [] : alarmOf({ ...figure, mark: line.mark, value }, run, printed)
  })
}

type Told = SheetFigure & { readonly mark: string; readonly value: number }

function alarmOf(told: Told, run: RobustSpread | null, book: number | null): SheetAlarm[] {
  const alarms: SheetAlarm[] = []
  if (run && isFar(told.value, run)) alarms.push({ ...told, against: 'run', median: run.median })
  const share = oddShareOfBook(told.value, book)
  if (share !== null && book !== null) alarms.push({ ...told, against: 'book', book, share })
  return alarms
}

type Point = { readonly mark: string; readonly current: number; readonly gm: number | null }

/** Room for the last binary digit: 72.0 and 77.0 mA are 5 mA apart. */
const HAIR = 1e-9

function largestAlike(lines: readonly SheetLine[]): string[] {
  const all = lines.flatMap((line): Point[] => {
    const reading = readingOf(line, 1)
    if (!reading || reading.plateCurrent === null) return []
    return [{ mark: line.mark, current: reading.plateCurrent, gm: reading.transconductance }]
  })
  const withGm = all.filter(({ gm }) => gm !== null)
  const points = (withGm.length > 0 ? withGm : all).sort((a, b) => a.current - b.current)
  let best: readonly Point[] = []
  for (const [from, { current }] of points.entries()) {
    const window = points.slice(from).filter((each) => each.current - current <= USUAL_YARDSTICKS.plateCurrent + HAIR)
    if (window.length <= best.length) continue
    const group = withGm.length > 0 ? alikeInGm(window) : window
    if (group.length > best.length) best = group
  }
  const marks = new Set(best.map(({ mark }) => mark))
  return marks.size < 2 ? [] : lines.map(({ mark }) => mark).filter((mark) => marks.has(mark))
}

function alikeInGm(window: readonly Point[]): readonly Point[] {
  const sorted = window.toSorted((a, b) => (a.gm ?? 0) - (b.gm ?? 0))
  let best: readonly Point[] = []
  let end = 0
  for (const [from, point] of sorted.entries()) {
    while (end < sorted.length && withinGm(point.gm ?? 0, sorted[end]?.gm ?? 0)) end++
    if (end - from > best.length) best = sorted.slice(from, end)
  }
  return best
}

const withinGm = (low: number, high: number): boolean =>
  high - low <= USUAL_YARDSTICKS.transconductance * ((low + high) / 2) + HAIR
