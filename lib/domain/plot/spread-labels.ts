/**
 * Labels beside an edge, moved apart as little as possible (least squares).
 *
 * With the gap taken off label by label the wish "at least a gap apart, in order" is
 * "not falling", which pooling neighbours that fall meets exactly (pool adjacent
 * violators: Barlow, Bartholomew, Bremner, Brunk, "Statistical inference under order
 * restrictions", 1972, from memory).
 */
type Pool = { readonly mean: number; readonly count: number }

/** `places` rising, from zero up; no label goes below zero. */
export function spreadLabels(places: readonly number[], gap: number): number[] {
  const pools: Pool[] = []
  places.forEach((place, i) => {
    let pool: Pool = { mean: place - i * gap, count: 1 }
    for (let before = pools.at(-1); before && before.mean > pool.mean; before = pools.at(-1)) {
      pools.pop()
      const count = before.count + pool.count
      pool = { mean: (before.mean * before.count + pool.mean * pool.count) / count, count }
    }
    pools.push(pool)
  })
  const pooled = pools.flatMap(({ mean, count }) => Array.from({ length: count }, () => mean))
  return pooled.map((mean, i) => Math.max(mean, 0) + i * gap)
}
