/**
 * Numbers as they are put out. A banded value ends where its band does: the band is given
 * to two significant digits and the value to the same place (JCGM 100:2008, 7.2.6).
 * Anything else has four significant digits, more than a bench can read.
 */
import type { Band } from '@/lib/domain/circuit/band'

const DIGITS = 4
const BAND_DIGITS = 2
/** A band far below the value would print digits that no meter has. */
const MOST_DIGITS = 6

/** Decimal place of the first significant digit: 0 for 4.5, 2 for 450, −2 for 0.045. */
const leadingPlace = (value: number): number => Math.floor(Math.log10(Math.abs(value)))

/** `decimals` may be negative: −1 rounds to tens. Never −0. */
function toDecimals(value: number, decimals: number): number {
  if (decimals >= 0) return Number(value.toFixed(Math.min(decimals, 20))) + 0
  return Number((value * 10 ** decimals).toFixed(0)) * 10 ** -decimals + 0
}

export function figure(value: number, digits = DIGITS): number {
  // JSON would print null, which reads as "not known".
  if (!Number.isFinite(value)) throw new Error(`A figure must be finite, got ${value}`)
  return Number(value.toPrecision(digits)) + 0
}

function bandDecimals(value: number, half: number): number {
  const byBand = BAND_DIGITS - 1 - leadingPlace(half)
  return value === 0 ? byBand : Math.min(byBand, MOST_DIGITS - 1 - leadingPlace(value))
}

/** Multiplied by `factor` first: 1000 turns amperes into milliamperes. */
export function bandFigures({ value, low, high }: Band, factor = 1): Band {
  const [middle, lower, upper] = [value * factor, low * factor, high * factor]
  const half = (upper - lower) / 2
  if (!(half > 0)) return { value: figure(middle), low: figure(lower), high: figure(upper) }
  const decimals = bandDecimals(middle, half)
  const [v, l, h] = [middle, lower, upper].map((one) => toDecimals(one, decimals))
  return { value: v ?? middle, low: l ?? lower, high: h ?? upper }
}

export type Uncertain = Band & { readonly plusMinus: number; readonly estimate: boolean }

export function uncertainFigures(given: Uncertain, factor = 1): Uncertain {
  const { value, low, high } = bandFigures(given, factor)
  return { value, plusMinus: figure(given.plusMinus * factor, BAND_DIGITS), low, high, estimate: given.estimate }
}
