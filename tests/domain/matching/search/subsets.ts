/** Every way to take `size` of the items, in dictionary order. */
export function* subsets<T>(items: readonly T[], size: number, from = 0): Generator<T[]> {
  if (size === 0) {
    yield []
    return
  }
  for (let first = from; first <= items.length - size; first += 1) {
    for (const rest of subsets(items, size - 1, first + 1)) yield [items[first] as T, ...rest]
  }
}
