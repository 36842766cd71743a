/**
 * Dissipation of a screen grid, Pg2 = (Vg2 − Vk)·Ig2, against its printed rating.
 *
 * This is the idle figure. At full drive the plate
 * swings below the screen and screen current rises several times over (common practice, no
 * source for a factor), so a screen near its rating at idle is past it when driven.
 */
import { type Amps, type Ratio, ratio, type Volts, type Watts, watts } from '@/lib/domain/units'

export type ScreenDissipation = {
  readonly dissipation: Watts
  /** Of the rating; null when none is printed. */
  readonly share: Ratio | null
}

export function screenDissipation(
  screenToCathode: Volts,
  screenCurrent: Amps,
  rating: Watts | null,
): ScreenDissipation {
  const dissipation = watts(screenToCathode * screenCurrent)
  return { dissipation, share: rating !== null && rating > 0 ? ratio(dissipation / rating) : null }
}
