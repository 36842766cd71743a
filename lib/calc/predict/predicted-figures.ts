/** Predicted currents and watts with their 95 % bands, as they are put out. */

import { bandFigures } from '@/lib/calc/output/figure'
import { type Band, timesBand } from '@/lib/domain/circuit/band'
import type { BandedCurrent } from '@/lib/domain/model/predicted-idle'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'

const MILLI = 1000
const percentOf = (power: Band | null, rating: number | null | undefined) =>
  power === null || !rating ? null : timesBand(power, 100 / rating)

export type Powers = { readonly plateWatts: Band; readonly screenWatts: Band | null }

/** At electrode voltages that stay, a watt goes as its ampere. */
export const powersAt = (
  plate: BandedCurrent,
  screen: BandedCurrent | null,
  plateToCathode: number,
  screenToCathode: number,
): Powers => ({
  plateWatts: timesBand(plate, plateToCathode),
  screenWatts: screen && timesBand(screen, screenToCathode),
})

/** Per cent of the plate rating of the variant; null without one. */
export const platePercent = ({ plateWatts }: Powers, { ratings }: TubeVariant): Band | null =>
  percentOf(plateWatts, ratings?.plateWatts?.value)

const shown = (band: Band | null, factor = 1) => band && bandFigures(band, factor)

export function predictedFigures(plate: Band, screen: Band | null, powers: Powers, variant: TubeVariant) {
  const { ratings } = variant
  return {
    plateMilliamps: bandFigures(plate, MILLI),
    screenMilliamps: shown(screen, MILLI),
    plateWatts: bandFigures(powers.plateWatts),
    plateRatingWatts: ratings?.plateWatts?.value ?? null,
    platePercent: shown(platePercent(powers, variant)),
    screenWatts: shown(powers.screenWatts),
    screenRatingWatts: ratings?.screenWatts?.value ?? null,
    screenPercent: shown(percentOf(powers.screenWatts, ratings?.screenWatts?.value)),
    ratingSystem: ratings?.system ?? null,
    ratingsStandIn: variant.ratingsStandIn,
  }
}
