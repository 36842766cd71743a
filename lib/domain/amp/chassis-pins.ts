/**
 * Pins of a base as they lie on the chassis seen from above.
 *
 * Handbooks draw bases from below, pins numbered clockwise from the key or the
 * gap. Turned over, the numbers run counter-clockwise. The drawing puts the key
 * or gap at the rear (12 o'clock): the handbook picture, key downwards, rolled
 * over its lower edge. The turn of a real socket in its hole may differ.
 *
 * Spacing: octal 8 pins at 45° with the key between 8 and 1; noval 9 pins at
 * 36° and miniature 7 pins at 45°, each with one place left out as the gap.
 * From memory of the base outlines in the tube handbooks.
 */
export type SocketBase = 'octal' | 'noval' | 'miniature' | 'other'

export type Pin = {
  readonly number: number
  /** Unit circle, x to the right, y towards the front. */
  readonly x: number
  readonly y: number
}

type PinCircle = { readonly pins: number; readonly stepDegrees: number; readonly firstDegrees: number }

/** `firstDegrees` is how far pin 1 lies from 12 o'clock, counter-clockwise. */
const PIN_CIRCLES: Record<Exclude<SocketBase, 'other'>, PinCircle> = {
  octal: { pins: 8, stepDegrees: 45, firstDegrees: 22.5 },
  noval: { pins: 9, stepDegrees: 36, firstDegrees: 36 },
  miniature: { pins: 7, stepDegrees: 45, firstDegrees: 45 },
}

/** In pin order; empty for a base whose pins are not known. */
export function pinsFromAbove(base: SocketBase): readonly Pin[] {
  if (base === 'other') return []
  const { pins, stepDegrees, firstDegrees } = PIN_CIRCLES[base]
  return Array.from({ length: pins }, (_, index) => {
    const angle = ((firstDegrees + index * stepDegrees) * Math.PI) / 180
    return { number: index + 1, x: -Math.sin(angle), y: -Math.cos(angle) }
  })
}
