/**
 * The plain way to the same answer, written apart from the program: look at
 * every set. Scores are fractions in whole numbers, so there is no rounding.
 */
import type { Candidate } from '@/lib/domain/matching/candidate'

export type Judged = {
  readonly marks: readonly string[]
  /** Score as top / bottom: 5 mA and 10 % are one yardstick each. */
  readonly top: bigint
  readonly bottom: bigint
  readonly price: number
  readonly within: boolean
}

export function* subsets<T>(items: readonly T[], size: number, from = 0): Generator<T[]> {
  if (size === 0) {
    yield []
    return
  }
  for (let first = from; first <= items.length - size; first += 1) {
    for (const rest of subsets(items, size - 1, first + 1)) yield [items[first] as T, ...rest]
  }
}

const numberOf = (mark: string): number => Number(mark.replace(/\D/g, ''))

export function judge(tubes: readonly Candidate[]): Judged {
  const currents = tubes.map((tube) => Math.round((tube.test?.plateCurrent ?? Number.NaN) * 1e6))
  const slopes = tubes.map((tube) => Math.round((tube.test?.transconductance ?? Number.NaN) * 1e6))
  const current = BigInt(Math.max(...currents) - Math.min(...currents))
  const weakest = BigInt(Math.min(...slopes))
  const slope = BigInt(Math.max(...slopes)) - weakest
  return {
    marks: tubes.map((tube) => tube.mark).sort((a, b) => numberOf(a) - numberOf(b)),
    // current / 5000 + slope / (weakest / 10)
    top: current * weakest + slope * 50_000n,
    bottom: 5000n * weakest,
    price: tubes.reduce((total, tube) => total + tube.price, 0),
    within: current <= 5000n && slope * 10n <= weakest,
  }
}

const compareScore = (a: Judged, b: Judged): number => {
  const gap = a.top * b.bottom - b.top * a.bottom
  return gap === 0n ? 0 : gap < 0n ? -1 : 1
}

const compareMarks = (a: Judged, b: Judged): number =>
  a.marks.map((mark, place) => numberOf(mark) - numberOf(b.marks[place] as string)).find((gap) => gap !== 0) ?? 0

export const byCloseness = (a: Judged, b: Judged): number =>
  compareScore(a, b) || a.price - b.price || compareMarks(a, b)
export const byPrice = (a: Judged, b: Judged): number => a.price - b.price || compareScore(a, b) || compareMarks(a, b)

type Wish = { readonly count: number; readonly cap: number; readonly within?: boolean }

export function bestByBruteForce(
  tubes: readonly Candidate[],
  { count, cap, within = false }: Wish,
  order: (a: Judged, b: Judged) => number,
): Judged | null {
  let best: Judged | null = null
  for (const set of subsets(tubes, count)) {
    const judged = judge(set)
    if (judged.price > cap || (within && !judged.within)) continue
    if (!best || order(judged, best) < 0) best = judged
  }
  return best
}
