/** Blossoms as the certificate nests them: sizes in points, and the points laid out so that each is one stretch. */
export type NestedBlossoms = {
  readonly sizes: readonly number[]
  /** Place of each point in the layout, and of each blossom's first point. */
  readonly places: Int32Array
  /** Blossoms, each after those around it. */
  readonly outermostFirst: readonly number[]
}

/** `around` is that of a certificate. null when a blossom lies in itself or outside the list. */
export function nestedBlossoms(around: Int32Array, points: number): NestedBlossoms | null {
  const blossoms = around.length - points
  const waiting = new Int32Array(blossoms)
  const sizes = new Array<number>(blossoms).fill(0)
  for (let node = 0; node < around.length; node += 1) {
    const outside = around[node] as number
    if (outside < -1 || outside >= blossoms) return null
    if (outside >= 0 && node >= points) waiting[outside] = (waiting[outside] as number) + 1
    if (outside >= 0 && node < points) sizes[outside] = (sizes[outside] as number) + 1
  }
  // Peeled from the inside out; a ring of blossoms around each other would never come up.
  const peeled = Array.from(waiting.keys()).filter((blossom) => waiting[blossom] === 0)
  for (let done = 0; done < peeled.length; done += 1) {
    const outside = around[points + (peeled[done] as number)] as number
    if (outside < 0) continue
    sizes[outside] = (sizes[outside] as number) + (sizes[peeled[done] as number] as number)
    const left = (waiting[outside] as number) - 1
    waiting[outside] = left
    if (left === 0) peeled.push(outside)
  }
  if (peeled.length < blossoms) return null
  const outermostFirst = peeled.reverse()
  return { sizes, outermostFirst, places: laidOut(around, points, { sizes, outermostFirst }) }
}

type Layout = Pick<NestedBlossoms, 'sizes' | 'outermostFirst'>

function laidOut(around: Int32Array, points: number, { sizes, outermostFirst }: Layout): Int32Array {
  const places = new Int32Array(around.length)
  const next = new Int32Array(sizes.length)
  let free = 0
  const take = (node: number, size: number) => {
    const outside = around[node] as number
    const place = outside < 0 ? free : (next[outside] as number)
    places[node] = place
    if (outside < 0) free += size
    else next[outside] = place + size
  }
  for (const blossom of outermostFirst) {
    take(points + blossom, sizes[blossom] as number)
    next[blossom] = places[points + blossom] as number
  }
  for (let point = 0; point < points; point += 1) take(point, 1)
  return places
}
