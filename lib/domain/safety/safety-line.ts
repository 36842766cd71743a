/** A safety line as it was signed. Signing again replaces it; the history keeps both. */
import type { CheckId, Outcome } from './check'

export type SettledLine = {
  readonly outcome: Outcome
  /** SI, or per cent; null where nothing is measured. */
  readonly value: number | null
  /** Value and what was noted with it, as printed. */
  readonly valueText: string
  /** As it stood when it was signed. */
  readonly limitText: string
  readonly instrument: string
  readonly calibratedOn: string | null
  /** Always there for 'not-tested'. */
  readonly reason: string
}

export type SafetyLine = SettledLine & {
  readonly id: string
  readonly check: CheckId
  readonly signedBy: string
  readonly signedAt: Date
  readonly version: number
}
