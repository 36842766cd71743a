/**
 * Where the y of each tube stands among all of them, from 0 up to LEVELS: cutting a part of the
 * tubes into lanes of about as many each is then one multiplication a tube, however they are
 * split otherwise.
 *
 * Counted in steps of y, so tubes within one step share a level. A higher y never has a lower
 * level, which is all the search rests on; how evenly they spread only decides how quick it is.
 */
export const LEVELS = 2 ** 16

const STEPS = 2 ** 12

/** By array of y, which all costs laid over it share. */
const known = new WeakMap<Int32Array, Uint16Array>()

export function levelsOf(y: Int32Array): Uint16Array {
  const levels = known.get(y) ?? counted(y)
  known.set(y, levels)
  return levels
}

function counted(y: Int32Array): Uint16Array {
  const { least, width } = stepsOver(y)
  const before = new Int32Array(STEPS + 1)
  for (let at = 0; at < y.length; at += 1) {
    const step = Math.floor(((y[at] as number) - least) / width)
    before[step + 1] = (before[step + 1] as number) + 1
  }
  for (let step = 0; step < STEPS; step += 1) before[step + 1] = (before[step + 1] as number) + (before[step] as number)
  const levels = new Uint16Array(y.length)
  for (let at = 0; at < y.length; at += 1) {
    const step = Math.floor(((y[at] as number) - least) / width)
    levels[at] = Math.floor(((before[step] as number) * LEVELS) / y.length)
  }
  return levels
}

function stepsOver(y: Int32Array): { readonly least: number; readonly width: number } {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let at = 0; at < y.length; at += 1) {
    const own = y[at] as number
    if (own < least) least = own
    if (own > most) most = own
  }
  return { least, width: (most - least + 1) / STEPS }
}
