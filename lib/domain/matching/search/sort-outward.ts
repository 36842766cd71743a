const FEW = 48

/** In place, the first so many tubes by their spread. */
export function sortOutward(tubes: Int32Array, spread: Float64Array, count: number): void {
  if (count > FEW) {
    sortMany(tubes, spread, count)
    return
  }
  for (let at = 1; at < count; at += 1) {
    const tube = tubes[at] as number
    const own = spread[at] as number
    let to = at
    for (; to > 0 && (spread[to - 1] as number) > own; to -= 1) {
      tubes[to] = tubes[to - 1] as number
      spread[to] = spread[to - 1] as number
    }
    tubes[to] = tube
    spread[to] = own
  }
}

function sortMany(tubes: Int32Array, spread: Float64Array, count: number): void {
  const order = Array.from({ length: count }, (_, at) => at)
  order.sort((a, b) => (spread[a] as number) - (spread[b] as number))
  const sorted = order.map((at) => [tubes[at] as number, spread[at] as number] as const)
  sorted.forEach(([tube, own], at) => {
    tubes[at] = tube
    spread[at] = own
  })
}
