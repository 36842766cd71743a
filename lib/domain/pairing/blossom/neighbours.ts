/** A graph in rows: the neighbours of `v` are `to[start[v] .. start[v + 1] - 1]`, each with its weight. */
export type Neighbours = {
  readonly start: Int32Array
  readonly to: Int32Array
  /** Twice the distance, so that all duals are whole numbers. */
  readonly weight: Int32Array
}

/** Each edge once, as two ends. */
export type EdgeList = { readonly from: readonly number[]; readonly to: readonly number[] }

export function neighboursOf(count: number, edges: EdgeList, distance: (a: number, b: number) => number): Neighbours {
  const start = new Int32Array(count + 1)
  for (const v of edges.from) start[v + 1] = (start[v + 1] as number) + 1
  for (const v of edges.to) start[v + 1] = (start[v + 1] as number) + 1
  for (let v = 0; v < count; v += 1) start[v + 1] = (start[v + 1] as number) + (start[v] as number)
  const next = start.slice(0, count)
  const to = new Int32Array(2 * edges.from.length)
  const weight = new Int32Array(2 * edges.from.length)
  for (let edge = 0; edge < edges.from.length; edge += 1) {
    const [a, b] = [edges.from[edge] as number, edges.to[edge] as number]
    const doubled = 2 * distance(a, b)
    for (const [v, w] of [
      [a, b],
      [b, a],
    ] as const) {
      const place = next[v] as number
      next[v] = place + 1
      to[place] = w
      weight[place] = doubled
    }
  }
  return { start, to, weight }
}
