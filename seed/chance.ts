/**
 * Chance of the demo's own, the same at every run: a 32-bit generator
 * (mulberry32, public domain, from memory) started from a name, and from it
 * figures that scatter like tubes do.
 */
export type Chance = {
  /** 0 inclusive to 1 exclusive. */
  readonly next: () => number
  /** Standard normal, cut at ±2.5 so that no single tube is beyond belief. */
  readonly normal: () => number
}

const FURTHEST = 2.5

function seedOf(name: string): number {
  let hash = 2_166_136_261
  for (const letter of name) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 16_777_619)
  return hash >>> 0
}

export function chanceFrom(name: string): Chance {
  let state = seedOf(name)
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
  const normal = () => {
    const drawn = Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next())
    return Math.min(FURTHEST, Math.max(-FURTHEST, drawn))
  }
  return { next, normal }
}
