/**
 * Order of marks as people read them: runs of digits compare as numbers, so
 * "B-9" comes before "B-10". The same on every machine: no locale is asked.
 */
const PARTS = /\d+|\D+/g
const DIGITS = /^\d/

/** A mark taken apart once, for a long list that is put in order. */
export type NaturalKey = {
  readonly whole: string
  readonly parts: readonly string[]
  /** Digits of a number without leading zeros; null: no number. */
  readonly numbers: readonly (string | null)[]
}

export function naturalKey(whole: string): NaturalKey {
  const parts = whole.match(PARTS) ?? []
  return { whole, parts, numbers: parts.map((part) => (DIGITS.test(part) ? part.replace(/^0+/, '') : null)) }
}

export const naturalOrder = (left: string, right: string): number => compareKeys(naturalKey(left), naturalKey(right))

export function compareKeys(a: NaturalKey, b: NaturalKey): number {
  for (let i = 0; i < Math.min(a.parts.length, b.parts.length); i += 1) {
    const order = partOrder(a, b, i)
    if (order !== 0) return order
  }
  // "7" and "007" are equal as numbers, so the text itself decides last.
  return a.parts.length - b.parts.length || textOrder(a.whole, b.whole)
}

function partOrder(a: NaturalKey, b: NaturalKey, at: number): number {
  const [x, y] = [a.numbers[at], b.numbers[at]]
  if (typeof x !== 'string' || typeof y !== 'string') return textOrder(a.parts[at] as string, b.parts[at] as string)
  return x.length - y.length || textOrder(x, y)
}

function textOrder(a: string, b: string): number {
  if (a === b) return 0
  return a < b ? -1 : 1
}
