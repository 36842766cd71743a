/** Blocks that several papers carry, built once so that they read alike. */
import type { AmpFacts, CustomerFacts, MatchFacts, SignOffFacts, TestPoint, TubeTestFacts } from './facts'
import type { Format } from './format'
import { NOT_RECORDED } from './format'
import type {
  Fact,
  FactsBlock,
  HeadingBlock,
  ParagraphBlock,
  SignOffBlock,
  TableBlock,
  TableColumn,
  TableRow,
} from './paper'
import type { Vocabulary } from './words'
import { capital } from './words'

export const given = (text: string): string => (text.trim() === '' ? NOT_RECORDED : text.trim())
export const heading = (text: string): HeadingBlock => ({ type: 'heading', text })
export const facts = (columns: 1 | 2, items: readonly Fact[]): FactsBlock => ({ type: 'facts', columns, items })
export const fact = (label: string, value: string): Fact => ({ label, value: given(value) })

export const column = (label: string, weight: number, align: TableColumn['align'] = 'start'): TableColumn => ({
  label,
  align,
  weight,
})

/** "2 ×" and what it is: says itself without a head. */
export const COUNTED: readonly TableColumn[] = [column('', 1, 'end'), column('', 15)]

/** A table with neither groups nor totals. */
export const plainTable = (columns: readonly TableColumn[], rows: readonly TableRow[]): TableBlock => ({
  type: 'table',
  columns,
  groups: [{ label: '', rows }],
  totals: [],
})

export function customerFacts(customer: CustomerFacts): FactsBlock {
  return facts(2, [
    fact('Name', customer.name),
    fact('Phone', customer.phone),
    fact('Address', customer.addressLines.filter((line) => line.trim() !== '').join(', ')),
    fact('E-mail', customer.email),
    fact('Reach by', customer.preferredContact),
  ])
}

export function ampFacts(amp: AmpFacts, format: Format, v: Vocabulary): FactsBlock {
  const { mainsVoltage, protectionClass } = amp
  return facts(2, [
    fact('Make', amp.make),
    fact('Serial', amp.serial),
    fact('Model', amp.model),
    fact('Fuse', amp.fuse),
    fact(`${capital(v.mains)} voltage`, mainsVoltage === null ? '' : format.settled(mainsVoltage, 'V')),
    fact('Protection', protectionClass === null ? '' : `class ${protectionClass}`),
  ])
}

/** "250 V plate, 250 V screen, −14.0 V grid" */
export function testPointText(point: TestPoint, format: Format, v: Vocabulary): string {
  const screen = point.screenVoltage === null ? [] : [`${format.settled(point.screenVoltage, 'V')} screen`]
  return [
    `${format.settled(point.plateVoltage, 'V')} ${v.plate}`,
    ...screen,
    `${format.settled(point.gridVoltage, 'V')} grid`,
  ].join(', ')
}

/** Test point and result, with the day and the instrument: a value alone compares with nothing. */
export function testText(test: TubeTestFacts, format: Format, v: Vocabulary): string {
  const sections = test.sections.map(({ plateCurrent, transconductance }) =>
    transconductance === null
      ? format.milliamps(plateCurrent)
      : `${format.milliamps(plateCurrent)}, ${format.milliampsPerVolt(transconductance)}`,
  )
  const values = sections.length > 1 ? sections.map((text, i) => `section ${i + 1}: ${text}`) : sections
  const at = testPointText(test.testPoint, format, v)
  return `tested ${format.day(test.testedOn)} on ${given(test.instrument)} at ${at}: ${values.join('; ')}`
}

export function matchText(match: MatchFacts, format: Format, v: Vocabulary): string {
  const { transconductanceSpread: spread, transconductanceTolerance: tolerance } = match
  const current = `${v.plate} current within ${format.milliamps(match.plateCurrentSpread)} (tolerance ${format.settled(match.plateCurrentTolerance * 1000, 'mA')})`
  const gm =
    spread === null || tolerance === null
      ? ''
      : `, transconductance within ${format.percent(spread)} (tolerance ${format.percent(tolerance)})`
  const { testedFrom, testedTo } = match
  const days =
    testedFrom === testedTo ? format.day(testedTo) : `from ${format.day(testedFrom)} to ${format.day(testedTo)}`
  const at = match.predicted
    ? `on ${given(match.instrument)}; ${predictedMatchText(match.predicted, format)}`
    : `${match.carried ? 'and compared as on' : 'on'} ${given(match.instrument)} at ${testPointText(match.testPoint, format, v)}`
  const carried = carriedMatchText(match, format)
  return `Matched ${match.type}, ${match.marks.join(' with ')}: tested ${days} ${at}; ${current}${gm}${carried}.`
}

function carriedMatchText({ carried = [], apartPlusMinus }: MatchFacts, format: Format): string {
  const each = carried.map(
    ({ marks, from, to, share }) =>
      `; ${marks.join(', ')} read on ${given(from)}, carried over to ${given(to)} by reference readings on both, each to ±${format.settled(Math.round(1000 * share) / 10, '%')} (95 %)`,
  )
  const apart =
    apartPlusMinus === undefined
      ? ''
      : `; differences across the instruments to ±${format.milliamps(apartPlusMinus)} (95 %)`
  return `${each.join('')}${apart}`
}

function predictedMatchText(predicted: NonNullable<MatchFacts['predicted']>, format: Format): string {
  const { readOn, plusMinus, apartPlusMinus } = predicted
  const apart = apartPlusMinus === null ? '' : `, their differences to ±${format.milliamps(apartPlusMinus)}`
  return `by the idle predicted in this amplifier as read ${format.day(readOn)}, known to ±${format.milliamps(plusMinus)}${apart} (95 %), not measured`
}

const RESULTS = { open: '', passed: 'pass', failed: 'FAIL', 'not-tested': 'not tested' } as const

export function signOffBlock(lines: readonly SignOffFacts[], format: Format): SignOffBlock | ParagraphBlock {
  if (lines.length === 0) return { type: 'paragraph', text: 'No safety lines are on record.', tone: 'plain' }
  return {
    type: 'sign-off',
    lines: lines.map((line) => ({
      line: line.line,
      limit: line.limit,
      value: line.outcome === 'not-tested' ? `not tested, because ${given(line.value)}` : line.value,
      instrument:
        line.calibratedOn === null ? line.instrument : `${line.instrument}, cal. ${format.day(line.calibratedOn)}`,
      name: line.name,
      time: line.signedAt === null ? '' : format.instant(line.signedAt),
      result: RESULTS[line.outcome],
      state: line.outcome,
    })),
  }
}
