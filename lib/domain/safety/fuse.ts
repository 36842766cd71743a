/**
 * Whether the fuse found is the one that is marked: value, and speed where both
 * tell it. Letters FF, F, M, T, TT as of IEC 60127-1 (from memory), and the words
 * "slow" and "fast" of older markings. What cannot be read is left to the eye of
 * the one who signs.
 */
export type FuseRating = { readonly amperes: number; readonly speed: 'slow' | 'fast' | null }

/** "2.5", "1/2", and "1 1/2" or "1-1/2" of older American markings. */
const FIGURE = /(?:(\d+)[\s-]+)?(\d+\s*\/\s*\d+)\s*(m?)a[hle]?\b|(\d+(?:[.,]\d+)?)\s*(m?)a[hle]?\b/i

function amperesOf(text: string): number | null {
  const found = FIGURE.exec(text)
  if (!found) return null
  const [, whole = '0', fraction = '', milliPart = '', decimal = '', milli = ''] = found
  const [over = '', under = '1'] = fraction === '' ? [decimal] : fraction.split('/')
  const value = Number(whole) + Number(over.trim().replace(',', '.')) / Number(under.trim())
  return Number.isFinite(value) && value > 0 ? value / (milliPart + milli === '' ? 1 : 1000) : null
}

function speedOf(text: string): FuseRating['speed'] {
  if (/slow|slo-|time|delay|\bsb\b|(^|[^a-z])tt?\s*\d/i.test(text)) return 'slow'
  return /fast|quick|(^|[^a-z])ff?\s*\d/i.test(text) ? 'fast' : null
}

export function readFuse(text: string): FuseRating | null {
  const amperes = amperesOf(text)
  return amperes === null ? null : { amperes, speed: speedOf(text) }
}

/** Null: one of the two cannot be read. */
export function isSameFuse(marked: string, found: string): boolean | null {
  const [one, other] = [readFuse(marked), readFuse(found)]
  if (!one || !other) return null
  const sameSpeed = one.speed === null || other.speed === null || one.speed === other.speed
  return Math.abs(one.amperes - other.amperes) < 1e-6 && sameSpeed
}
