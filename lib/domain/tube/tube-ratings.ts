/** Handbook figures in the open form that screens and papers show: number, provenance, remark. */
import { provenanceOf } from './handbook-sources'
import type { Figure, HandbookRatings, HandbookType, HandbookVariant } from './handbook-type'
import type { Heater, Ratings, SourcedNumber, TubeBase } from './tube-variant'

export const sourced = ([value, source, note]: Figure): SourcedNumber => ({
  value,
  provenance: provenanceOf(source),
  note: note ?? null,
})

export function openRatings(ratings: HandbookRatings): Ratings {
  const { limits, ...heading } = ratings
  const known = (figure: Figure | undefined) => (figure ? sourced(figure) : null)
  return {
    ...heading,
    plateVolts: known(limits.plateVolts),
    screenVolts: known(limits.screenVolts),
    plateWatts: known(limits.plateWatts),
    screenWatts: known(limits.screenWatts),
    cathodeMilliamps: known(limits.cathodeMilliamps),
    all: Object.fromEntries(
      Object.entries(limits).flatMap(([key, figure]) => (figure ? [[key, sourced(figure)]] : [])),
    ),
  }
}

const isOwn = (ratings: HandbookVariant['ratings']): ratings is HandbookRatings =>
  ratings !== null && ratings !== 'lowest-of-type'

const plateLimit = (ratings: HandbookRatings): number => ratings.limits.plateWatts?.[0] ?? Number.POSITIVE_INFINITY

/** The variant's own ratings, or where it has none the variant of the type with the lowest plate limit. */
export function ratingsOf(type: HandbookType, variant: HandbookVariant): HandbookRatings | null {
  if (variant.ratings !== 'lowest-of-type') return variant.ratings
  const printed = type.variants.map((one) => one.ratings).filter(isOwn)
  return printed.sort((a, b) => plateLimit(a) - plateLimit(b))[0] ?? null
}

export const openHeaters = (type: HandbookType): Heater[] =>
  type.heaters.map(({ volts, amps, use }) => ({ volts: sourced(volts), amps: sourced(amps), use }))

export const PIN_COUNTS: Readonly<Record<TubeBase['name'], number>> = {
  octal: 8,
  noval: 9,
  'miniature-7': 7,
  novar: 9,
  'four-pin': 4,
}

export function openBase({ base }: HandbookType): TubeBase {
  return {
    name: base.name,
    eia: base.eia,
    pinCount: PIN_COUNTS[base.name],
    pins: base.pins,
    provenance: provenanceOf(base.pinsSource),
  }
}
