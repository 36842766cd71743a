/** Which cuts a set holds, and what it pays for them. A cut is held by a set that has two of its points or more. */

/** Three points of which at most one chosen set can hold two or more. */
export type Cut = readonly [number, number, number]

export type CutsByPoint = ReadonlyMap<number, readonly number[]>

export function cutsByPoint(cuts: readonly Cut[]): CutsByPoint {
  const byPoint = new Map<number, number[]>()
  cuts.forEach((cut, place) => {
    for (const point of cut) {
      const known = byPoint.get(point)
      if (known) known.push(place)
      else byPoint.set(point, [place])
    }
  })
  return byPoint
}

/** Places of the cuts of which the set holds two points or more. */
export function cutsHeld(members: readonly number[], byPoint: CutsByPoint): number[] {
  const held = new Map<number, number>()
  for (const point of members) {
    for (const cut of byPoint.get(point) ?? []) held.set(cut, (held.get(cut) ?? 0) + 1)
  }
  return [...held].flatMap(([cut, count]) => (count >= 2 ? [cut] : []))
}

/** The sum of the prices of the cuts a set holds: never above 0. Quick, as it is asked of very many sets. */
export function cutPrices(cuts: readonly Cut[], prices: Float64Array): (members: readonly number[]) => number {
  const priced = [...cuts.keys()].filter((cut) => prices[cut] !== 0)
  if (priced.length === 0) return () => 0
  const byPoint = cutsByPoint(priced.map((cut) => cuts[cut] as Cut))
  const price = Float64Array.from(priced, (cut) => prices[cut] as number)
  const held = new Uint8Array(priced.length)
  return (members) => {
    let sum = 0
    for (const point of members) {
      for (const cut of byPoint.get(point) ?? []) {
        held[cut] = (held[cut] as number) + 1
        if (held[cut] === 2) sum += price[cut] as number
      }
    }
    for (const point of members) for (const cut of byPoint.get(point) ?? []) held[cut] = 0
    return sum
  }
}
