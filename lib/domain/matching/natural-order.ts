/**
 * Order of marks as people read them: runs of digits compare as numbers, so
 * "B-9" comes before "B-10". The same on every machine: no locale is asked.
 */
const PARTS = /\d+|\D+/g
const DIGITS = /^\d/

export function naturalOrder(left: string, right: string): number {
  const a = left.match(PARTS) ?? []
  const b = right.match(PARTS) ?? []
  for (let i = 0; i < Math.min(a.length, b.length); i += 1) {
    const order = partOrder(a[i] as string, b[i] as string)
    if (order !== 0) return order
  }
  // "7" and "007" are equal as numbers, so the text itself decides last.
  return a.length - b.length || textOrder(left, right)
}

function partOrder(a: string, b: string): number {
  if (!DIGITS.test(a) || !DIGITS.test(b)) return textOrder(a, b)
  const x = a.replace(/^0+/, '')
  const y = b.replace(/^0+/, '')
  return x.length - y.length || textOrder(x, y)
}

function textOrder(a: string, b: string): number {
  if (a === b) return 0
  return a < b ? -1 : 1
}
