/** Why a safety line cannot be signed as it stands, or an amplifier not be released. */
export type LineFault =
  | { readonly code: 'outcome-missing' }
  | { readonly code: 'value-missing'; readonly name: string; readonly what: string }
  | { readonly code: 'limit-broken'; readonly name: string; readonly value: string; readonly limit: string }
  | { readonly code: 'detail-missing'; readonly name: string; readonly what: string }
  | { readonly code: 'instrument-missing'; readonly name: string }
  | { readonly code: 'reason-missing'; readonly name: string; readonly outcome: 'fail' | 'not-tested' }
  | { readonly code: 'does-not-apply'; readonly name: string; readonly why: string }
  | { readonly code: 'fuse-differs'; readonly marked: string; readonly found: string }
  | { readonly code: 'idle-not-read' }
  | { readonly code: 'idle-before-fitting'; readonly marks: readonly string[] }
  | { readonly code: 'idle-not-judged'; readonly positions: readonly string[] }
  | { readonly code: 'idle-dead'; readonly positions: readonly string[] }
  | { readonly code: 'idle-over'; readonly position: string; readonly band: string }
  | { readonly code: 'idle-uncertain'; readonly position: string; readonly band: string }

export type ReleaseFault = {
  readonly code: 'release-blocked'
  /** Names of lines. */
  readonly open: readonly string[]
  readonly failed: readonly string[]
  /** Signed, but what was signed no longer holds. */
  readonly outdated: readonly { readonly name: string; readonly why: string }[]
}

export type SafetyFault = LineFault | ReleaseFault

/** The box of the line's form that the sentence belongs to; null: the line as a whole. */
export function faultyBox(fault: LineFault): 'value' | 'detail' | 'instrumentId' | 'reason' | null {
  switch (fault.code) {
    case 'value-missing':
    case 'limit-broken':
      return 'value'
    case 'detail-missing':
    case 'fuse-differs':
      return 'detail'
    case 'instrument-missing':
      return 'instrumentId'
    case 'reason-missing':
    case 'idle-uncertain':
      return 'reason'
    default:
      return null
  }
}
