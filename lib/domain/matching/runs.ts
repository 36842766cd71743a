/** Stretches of a changed stock that moved as a whole: few changes leave few of them, and each is copied at once. */
export type Run = {
  /** First place now and before. */
  readonly to: number
  readonly old: number
  readonly length: number
}

/** `from`: per place, where the same tube stood before; -1: new. Places that stay keep their order. */
export function runsOf(from: Int32Array): Run[] {
  const runs: Run[] = []
  for (let at = 0; at < from.length; ) {
    const old = from[at] as number
    let end = at + 1
    if (old >= 0) {
      while (end < from.length && from[end] === old + end - at) end += 1
      runs.push({ to: at, old, length: end - at })
    }
    at = end
  }
  return runs
}

type Numbers = Int32Array | Uint8Array | Float64Array

export function copyRuns<T extends Numbers>(into: T, before: T, runs: readonly Run[]): void {
  for (const { to, old, length } of runs) into.set(before.subarray(old, old + length), to)
}

export function copyTextRuns(into: string[], before: readonly string[], runs: readonly Run[]): void {
  for (const { to, old, length } of runs) {
    for (let at = 0; at < length; at += 1) into[to + at] = before[old + at] as string
  }
}

/** Where a place of before is now; -1: it is gone. */
export function placeNow(old: number, runs: readonly Run[]): number {
  let [low, high] = [0, runs.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((runs[middle]?.old ?? 0) <= old) low = middle + 1
    else high = middle
  }
  const run = runs[low - 1]
  return run && old < run.old + run.length ? run.to + old - run.old : -1
}

/** Two changes as one: per place after both, where the same tube stood before either; −1: new since. */
export function movedTwice(first: Int32Array, then: Int32Array): Int32Array {
  const from = new Int32Array(then.length)
  for (let at = 0; at < from.length; at += 1) {
    const between = then[at] as number
    from[at] = between < 0 ? -1 : (first[between] as number)
  }
  return from
}
