/** Years as spans: those at least a fifth as likely as the likeliest. A threshold of choice. */
export type YearSpan = readonly [from: number, to: number]

const LEAST = 0.2

export function likelyYears(shares: Iterable<number>, first: number): readonly YearSpan[] {
  const each = [...shares]
  const least = LEAST * Math.max(...each)
  const spans: YearSpan[] = []
  for (const [index, share] of each.entries()) {
    const year = first + index
    const last = spans.at(-1)
    if (!(share >= least) || share === 0) continue
    if (last?.[1] === year - 1) spans[spans.length - 1] = [last[0], year]
    else spans.push([year, year])
  }
  return spans
}

const MOST_SPELLED = 6

/** "1945, 1955 or 1965"; "1937 to 1946"; "1947 or later" where the span runs to this year. Many are cut in the middle. */
export function yearsText(spans: readonly YearSpan[], thisYear: number): string {
  const each = spans.map(([from, to]) => spanText(from, to, thisYear))
  if (each.length > MOST_SPELLED) return `${each[0]}, ${each[1]} … ${each.at(-1)}`
  return each.length < 2 ? (each[0] ?? 'not known') : `${each.slice(0, -1).join(', ')} or ${each.at(-1)}`
}

function spanText(from: number, to: number, thisYear: number): string {
  if (from === to) return String(from)
  return to >= thisYear ? `${from} or later` : `${from} to ${to}`
}
