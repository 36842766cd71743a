/** Places of a stock in rising order of a figure, then of place; and the same after a few tubes changed. */

/** Above any place, so that figure and place make one exact number to sort by. */
export const PLACES = 2 ** 22

export function placesBy(figures: Int32Array): Int32Array {
  const keys = new Float64Array(figures.length)
  for (let at = 0; at < keys.length; at += 1) keys[at] = (figures[at] as number) * PLACES + at
  keys.sort()
  const places = new Int32Array(keys.length)
  for (let at = 0; at < keys.length; at += 1) {
    const key = keys[at] as number
    places[at] = key - Math.floor(key / PLACES) * PLACES
  }
  return places
}

/** `from`: per place, where it stood before, with the same figure; -1: new. */
export function placesMerged(before: Int32Array, from: Int32Array, figures: Int32Array): Int32Array {
  const placeNow = new Int32Array(before.length).fill(-1)
  const news: number[] = []
  for (let at = 0; at < from.length; at += 1) {
    const old = from[at] as number
    if (old < 0) news.push(at)
    else placeNow[old] = at
  }
  const order = (a: number, b: number): number => (figures[a] as number) - (figures[b] as number) || a - b
  news.sort(order)
  const merged = new Int32Array(from.length)
  let [to, next] = [0, 0]
  for (let at = 0; at < before.length; at += 1) {
    const place = placeNow[before[at] as number] as number
    if (place < 0) continue
    while (next < news.length && order(news[next] as number, place) < 0) merged[to++] = news[next++] as number
    merged[to++] = place
  }
  while (next < news.length) merged[to++] = news[next++] as number
  return merged
}
