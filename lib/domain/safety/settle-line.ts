/**
 * From what was entered at one safety line to the line as it is signed, or why
 * it cannot be signed so. A value that breaks its limit never passes; a line
 * that was not tested never goes without its reason.
 */
import type { Day } from '@/lib/domain/calendar'
import { fail, ok, type Result } from '@/lib/domain/result'
import { type Check, keepsLimit, type Outcome, plainNumber, type SheetPart, type ValueSource, valueText } from './check'
import { isSameFuse } from './fuse'
import { bandText, hottest, hottestText, type IdleEvidence } from './idle-evidence'
import { RATING_PERCENT } from './limits'
import type { LineFault } from './safety-fault'
import type { SettledLine } from './safety-line'

export type UsedInstrument = { readonly name: string; readonly calibratedOn: Day | string | null }

export type LineEntry = {
  readonly outcome: Outcome
  /** SI; null: the box is empty. */
  readonly value: number | null
  readonly detail: string
  readonly instrument: UsedInstrument | null
  readonly reason: string
  /** Ohms of each part in the order of the check; null: not measured. */
  readonly parts: readonly (number | null)[]
}

/** What stands in the records when the line is signed. */
export type LineContext = {
  /** Of the last round after the work; null: there is none. */
  readonly idle: IdleEvidence | null
  /** Marks of tubes that went in after that round. */
  readonly fittedSince: readonly string[]
}

type Settled = Result<SettledLine, LineFault>

export function settleLine(check: Check, typed: LineEntry, context: LineContext): Settled {
  const entry = { ...typed, detail: typed.detail.trim(), reason: typed.reason.trim() }
  if (entry.outcome === 'not-tested') return notTested(check, entry)
  if (check.doesNotApply !== null) return fail({ code: 'does-not-apply', name: check.name, why: check.doesNotApply })
  switch (check.source.kind) {
    case 'readings':
      return byReadings(check, entry, context)
    case 'parts':
      return byParts(check, check.source.parts, entry)
    case 'typed':
      return byValue(check, check.source, entry)
    case 'looked-at':
      return byLooking(check, entry)
  }
}

/** A reason the program knows itself is taken before an empty box. */
function notTested(check: Check, { reason }: LineEntry): Settled {
  const why = reason || (check.doesNotApply ?? '')
  if (why === '') return fail({ code: 'reason-missing', name: check.name, outcome: 'not-tested' })
  return ok({ ...unmeasured(check), outcome: 'not-tested', reason: why })
}

const unmeasured = ({ limitText }: Check) => ({
  value: null,
  valueText: '',
  limitText,
  instrument: '',
  calibratedOn: null,
})

const joined = (...parts: readonly string[]): string => parts.filter(Boolean).join(', ')

/** `measured` is null when the value is missing; then only a fail with its reason can be signed. */
type Measured = { readonly value: number; readonly text: string } | null

function settled(check: Check, entry: LineEntry, measured: Measured, instrument: UsedInstrument | null): Settled {
  const { outcome, reason } = entry
  const breaks = measured !== null && !keepsLimit(check.limit, measured.value)
  if (outcome === 'pass' && measured && breaks)
    return fail({ code: 'limit-broken', name: check.name, value: measured.text, limit: check.limitText })
  if (outcome === 'fail' && !breaks && reason === '')
    return fail({ code: 'reason-missing', name: check.name, outcome: 'fail' })
  if (measured !== null && instrument === null && check.instrument === 'needed')
    return fail({ code: 'instrument-missing', name: check.name })
  return ok({
    outcome,
    value: measured?.value ?? null,
    valueText: joined(measured?.text ?? '', entry.detail),
    limitText: check.limitText,
    instrument: instrument?.name ?? '',
    calibratedOn: instrument?.calibratedOn ?? null,
    reason,
  })
}

function byValue(check: Check, { box }: Extract<ValueSource, { kind: 'typed' }>, entry: LineEntry): Settled {
  const { value, outcome, detail } = entry
  if (value === null && outcome === 'pass') return fail({ code: 'value-missing', name: check.name, what: box.label })
  if (check.detail?.needed && detail === '' && outcome === 'pass' && value !== null && keepsLimit(check.limit, value))
    return fail({ code: 'detail-missing', name: check.name, what: check.detail.label })
  return settled(check, entry, value === null ? null : { value, text: valueText(box, value) }, entry.instrument)
}

function byLooking(check: Check, entry: LineEntry): Settled {
  const { outcome, detail } = entry
  if (outcome === 'pass' && check.detail?.needed && detail === '')
    return fail({ code: 'detail-missing', name: check.name, what: check.detail.label })
  if (outcome === 'pass' && check.id === 'fuse' && isSameFuse(check.expected, detail) === false)
    return fail({ code: 'fuse-differs', marked: check.expected, found: detail })
  const line = settled(check, entry, null, entry.instrument)
  return line.ok && outcome === 'pass' && line.value.valueText === ''
    ? ok({ ...line.value, valueText: 'in order' })
    : line
}

/** Per cent off the sheet, without its sign. */
const percentOff = ({ sheetOhms }: SheetPart, measured: number): number =>
  (100 * Math.abs(measured - sheetOhms)) / sheetOhms

/** The value of the line is that of the part that is furthest off. */
function byParts(check: Check, parts: readonly SheetPart[], entry: LineEntry): Settled {
  const read = parts.flatMap((part, index) => {
    const measured = entry.parts[index] ?? null
    return measured === null ? [] : [{ part, measured, off: percentOff(part, measured) }]
  })
  const missing = parts.filter((_, index) => (entry.parts[index] ?? null) === null)
  if (entry.outcome === 'pass' && missing.length > 0)
    return fail({ code: 'value-missing', name: check.name, what: missing.map(({ name }) => name).join(', ') })
  const texts = read.map(
    ({ part, measured, off }) =>
      `${part.name} ${plainNumber(measured)} Ω for ${plainNumber(part.sheetOhms)} Ω (${off.toFixed(1)} % off)`,
  )
  const worst = Math.max(...read.map(({ off }) => off))
  return settled(check, entry, read.length === 0 ? null : { value: worst, text: texts.join(', ') }, entry.instrument)
}

function byReadings(check: Check, entry: LineEntry, { idle, fittedSince }: LineContext): Settled {
  const most = idle && hottest(idle)
  const instrument = idle && { name: idle.instrumentName, calibratedOn: idle.calibratedOn }
  if (entry.outcome === 'fail') {
    const measured = most && { value: most.high, text: hottestText(most) }
    return settled(check, entry, measured, measured && instrument)
  }
  if (!idle) return fail({ code: 'idle-not-read' })
  if (fittedSince.length > 0) return fail({ code: 'idle-before-fitting', marks: fittedSince })
  if (idle.dead.length > 0) return fail({ code: 'idle-dead', positions: idle.dead })
  const over = idle.judged.find(({ low }) => low > RATING_PERCENT)
  if (over) return fail({ code: 'idle-over', position: over.position, band: bandText(over) })
  if (idle.unjudged.length > 0 || !most) return fail({ code: 'idle-not-judged', positions: idle.unjudged })
  if (most.high > RATING_PERCENT && entry.reason === '')
    return fail({ code: 'idle-uncertain', position: most.position, band: bandText(most) })
  // The band crosses the rating and somebody said why it may: the limit itself is not what decides then.
  const limit = most.high > RATING_PERCENT ? ({ kind: 'note' } as const) : check.limit
  return settled({ ...check, limit }, entry, { value: most.high, text: hottestText(most) }, instrument)
}
