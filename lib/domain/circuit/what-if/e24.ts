/** Preferred resistor values, series E24 (IEC 60063). */
import { type Ohms, ohms } from '@/lib/domain/units'

export const E24 = [
  1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2,
  9.1,
] as const

/** From the tenths of the series, so that 240 is 240 and not 239.99…. */
const valueAt = (place: number): number => {
  const tenths = Math.round(10 * (E24[((place % 24) + 24) % 24] as number))
  const decade = Math.floor(place / 24) - 1
  return decade >= 0 ? tenths * 10 ** decade : tenths / 10 ** -decade
}

/** A value of the series is its own neighbour on both sides. */
export function e24Around(resistance: Ohms): { readonly below: Ohms; readonly above: Ohms } {
  if (resistance <= 0) throw new Error(`A resistor of the series is above 0 Ω, got ${resistance} Ω`)
  let place = 24 * Math.floor(Math.log10(resistance))
  while (valueAt(place) > resistance) place--
  while (valueAt(place + 1) <= resistance) place++
  const below = valueAt(place)
  return { below: ohms(below), above: ohms(below === resistance ? below : valueAt(place + 1)) }
}
