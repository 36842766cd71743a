/**
 * Compares two parameter files line by line. Numbers may differ by 1e-4 of themselves:
 * exp and log of another machine differ in the last bit, and a flat minimum moves with that.
 */
const TOLERANCE = 1e-4
const NUMBER = /-?\d+\.?\d*(?:e[+-]?\d+)?(?=,$)/

function sameLine(a: string, b: string): boolean {
  if (a === b) return true
  const [left, right] = [NUMBER.exec(a), NUMBER.exec(b)]
  if (!left || !right || a.slice(0, left.index) !== b.slice(0, right.index)) return false
  const [x, y] = [Number(left[0]), Number(right[0])]
  return Math.abs(x - y) <= TOLERANCE * Math.max(Math.abs(x), Math.abs(y))
}

/** Null when they agree, else a sentence naming the first line that does not. */
export function firstDifference(kept: string, fresh: string): string | null {
  const [a, b] = [kept.split('\n'), fresh.split('\n')]
  for (let i = 0; i < Math.max(a.length, b.length); i++) {
    const [left = '(nothing)', right = '(nothing)'] = [a[i], b[i]]
    if (!sameLine(left, right)) return `line ${i + 1} is "${left.trim()}", the fit gives "${right.trim()}"`
  }
  return null
}
