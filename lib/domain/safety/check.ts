/**
 * One line of the safety sign-off as it is asked: what is done, which value is
 * read, and the limit it is held to. safety-checks.ts lists them.
 */

/** In the order of the work: dead, then safety tester, then under power. */
export const CHECK_IDS = [
  'discharge',
  'fuse',
  'cord',
  'earth-bond',
  'insulation',
  'leakage',
  'screen-resistors',
  'idle',
  'full-power',
  'soak',
  'listening',
] as const
export type CheckId = (typeof CHECK_IDS)[number]

export const isCheckId = (text: string): text is CheckId => (CHECK_IDS as readonly string[]).includes(text)

export const OUTCOMES = ['pass', 'fail', 'not-tested'] as const
export type Outcome = (typeof OUTCOMES)[number]

export const outcomeWord = (outcome: Outcome): string => (outcome === 'not-tested' ? 'not tested' : outcome)

/** Both inclusive, in SI; 'note' has no figure. */
export type LimitRule =
  | { readonly kind: 'at-most'; readonly value: number }
  | { readonly kind: 'at-least'; readonly value: number }
  | { readonly kind: 'note' }

/** Bounds of what may be typed, in the unit shown. */
export type ValueBox = {
  readonly label: string
  readonly unit: string
  /** Unit shown in SI: 0.001 for mA. */
  readonly scale: number
  readonly min: number
  readonly max: number
}

/** What is written beside the value, or instead of one. */
export type DetailBox = { readonly label: string; readonly hint: string; readonly needed: boolean }

/** A resistor that is measured against its value on the sheet. */
export type SheetPart = { readonly name: string; readonly sheetOhms: number }

/**
 * Where the value comes from: typed, the last readings after the work, parts
 * measured one by one, or nowhere (something looked at).
 */
export type ValueSource =
  | { readonly kind: 'typed'; readonly box: ValueBox }
  | { readonly kind: 'readings' }
  | { readonly kind: 'parts'; readonly parts: readonly SheetPart[] }
  | { readonly kind: 'looked-at' }

export type Check = {
  readonly id: CheckId
  /** As it is named on paper and in a refusal. */
  readonly name: string
  /** What the one who signs says is so. */
  readonly sentence: string
  readonly source: ValueSource
  readonly limit: LimitRule
  /** With its unit, as printed. */
  readonly limitText: string
  /** Where the limit comes from. */
  readonly basis: string
  readonly detail: DetailBox | null
  readonly instrument: 'needed' | 'welcome' | 'none'
  /** As marked; only for the fuse. Empty: not noted. */
  readonly expected: string
  /** Why it cannot be tested on this amplifier at all; null when it can. */
  readonly doesNotApply: string | null
  /** A tube that is changed afterwards undoes the result. */
  readonly followsTubes: boolean
}

export function keepsLimit(limit: LimitRule, value: number): boolean {
  switch (limit.kind) {
    case 'at-most':
      return value <= limit.value
    case 'at-least':
      return value >= limit.value
    case 'note':
      return true
  }
}

/** Without the tail of a binary fraction: 0.0035 A is 3.5 mA. */
export const plainNumber = (value: number): string => String(Number(value.toPrecision(6)))

export const valueText = (box: ValueBox, value: number): string => `${plainNumber(value / box.scale)} ${box.unit}`
