/**
 * Whether an amplifier may go back: every line signed, none failed, and none
 * undone by what happened since. A line not tested passes with its reason.
 */
import { fail, ok, type Result } from '@/lib/domain/result'
import { type Check, keepsLimit } from './check'
import { hottest } from './idle-evidence'
import { AUTOMATIC_REASONS } from './safety-checks'
import type { ReleaseFault } from './safety-fault'
import type { SafetyLine } from './safety-line'
import type { LineContext } from './settle-line'

export type GateContext = LineContext & {
  /** When a tube last went in or came out on this job; null: never. */
  readonly tubesChangedAt: Date | null
}

export type GateLine = {
  readonly check: Check
  readonly line: SafetyLine | null
  /** Why the signature no longer counts; null when it does. */
  readonly outdated: string | null
}

const AUTOMATIC: readonly string[] = Object.values(AUTOMATIC_REASONS)

export function gateLines(checks: readonly Check[], lines: readonly SafetyLine[], context: GateContext): GateLine[] {
  const byCheck = new Map(lines.map((line) => [line.check, line]))
  return checks.map((check) => {
    const line = byCheck.get(check.id) ?? null
    return { check, line, outdated: line && outdatedBecause(check, line, context) }
  })
}

const CHANGED_SINCE = 'what sits in a socket was changed since'

function outdatedBecause(check: Check, line: SafetyLine, context: GateContext): string | null {
  if (line.outcome === 'not-tested') {
    const holds = line.reason === check.doesNotApply || !AUTOMATIC.includes(line.reason)
    return holds ? null : 'the sheet of the amplifier has changed'
  }
  if (line.outcome === 'fail') return null
  if (check.doesNotApply !== null) return 'the sheet of the amplifier has changed'
  if (check.followsTubes && context.tubesChangedAt !== null && line.signedAt < context.tubesChangedAt)
    return CHANGED_SINCE
  if (check.source.kind === 'readings') return idleOutdated(line, context)
  if (line.value !== null && !keepsLimit(check.limit, line.value)) return `the limit is now ${check.limitText}`
  return null
}

/** The figure that was signed must still be the one the readings give. */
function idleOutdated(line: SafetyLine, { idle, fittedSince }: LineContext): string | null {
  const most = idle && hottest(idle)
  if (!idle || !most) return 'no readings after the work stand'
  if (fittedSince.length > 0) return CHANGED_SINCE
  const same = line.value !== null && Math.abs(most.high - line.value) < 1e-6
  return same && idle.unjudged.length === 0 && idle.dead.length === 0
    ? null
    : 'the readings after the work have changed'
}

export function releaseGate(lines: readonly GateLine[]): Result<null, ReleaseFault> {
  const named = (is: (line: GateLine) => boolean) => lines.filter(is).map(({ check }) => check.name)
  const open = named(({ line }) => line === null)
  const failed = named(({ line }) => line?.outcome === 'fail')
  const outdated = lines.flatMap(({ check, outdated: why }) => (why === null ? [] : [{ name: check.name, why }]))
  const blocked = open.length + failed.length + outdated.length > 0
  return blocked ? fail({ code: 'release-blocked', open, failed, outdated }) : ok(null)
}
