/** Safety lines as papers print them: signed ones as they were signed, the others blank. */
import type { SignOffFacts } from '@/lib/documents/facts'
import type { Outcome } from '@/lib/domain/safety/check'
import type { GateLine } from '@/lib/domain/safety/release-gate'
import type { SafetyLine } from '@/lib/domain/safety/safety-line'

const OUTCOMES: Readonly<Record<Outcome, SignOffFacts['outcome']>> = {
  pass: 'passed',
  fail: 'failed',
  'not-tested': 'not-tested',
}

/** The paper itself says "not tested, because": a reason need not say it again. */
const bare = (reason: string): string => reason.replace(/^because\s+/i, '')

const printedValue = ({ outcome, valueText, reason }: SafetyLine): string =>
  outcome === 'not-tested' ? bare(reason) : [valueText, reason].filter(Boolean).join('; ')

export function signOffFacts(lines: readonly GateLine[]): SignOffFacts[] {
  return lines.map(({ check, line }) => ({
    line: check.name,
    limit: line?.limitText ?? check.limitText,
    outcome: line ? OUTCOMES[line.outcome] : 'open',
    value: line ? printedValue(line) : '',
    instrument: line?.instrument ?? '',
    calibratedOn: line?.calibratedOn ?? null,
    name: line?.signedBy ?? '',
    signedAt: line?.signedAt.toISOString() ?? null,
  }))
}
