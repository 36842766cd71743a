/**
 * What is odd about a type a shop writes down, and may be so all the same.
 *
 * gm·rp is µ to about 10 %, and heaters take 1 to 16 W, on every type of the handbook
 * (tests/domain/tube holds it to that); a printed row does not heat plate or screen more
 * than 5 % beyond its rating. Those widths are this shop program's rule, no source.
 */
import { isTriode, type OwnRow, type OwnTypeEntry } from './own-type-entry'

export type OwnTypeCaution =
  | { readonly code: 'mu-not-gm-rp'; readonly row: number; readonly product: number; readonly mu: number }
  | { readonly code: 'row-over-rating'; readonly row: number; readonly watts: number; readonly rating: number }
  | { readonly code: 'screen-row-over-rating'; readonly row: number; readonly watts: number; readonly rating: number }
  | { readonly code: 'heater-watts-unusual'; readonly watts: number }
  | { readonly code: 'no-plate-rating' }
  | { readonly code: 'no-screen-rating' }
  | { readonly code: 'no-pins' }

const MU_TOLERANCE = 0.1
const OVER = 1.05
const HEATER_WATTS = { least: 1, most: 16 } as const

export function ownTypeCautions(entry: OwnTypeEntry): OwnTypeCaution[] {
  const { rows, limits, heaterVolts, heaterAmps, pins } = entry
  const found = rows.flatMap((each, row) => [
    ...muCaution(each, row),
    ...heatCaution('row-over-rating', row, (each.plateVolts * each.plateMilliamps) / 1000, limits.plateWatts),
    ...heatCaution(
      'screen-row-over-rating',
      row,
      ((each.screenVolts ?? 0) * (each.screenMilliamps ?? 0)) / 1000,
      limits.screenWatts,
    ),
  ])
  const heater = heaterVolts * heaterAmps
  const odd = heater < HEATER_WATTS.least || heater > HEATER_WATTS.most
  return [
    ...found,
    ...(odd ? [{ code: 'heater-watts-unusual', watts: heater } as const] : []),
    ...unrated(entry),
    ...(pins ? [] : [{ code: 'no-pins' } as const]),
  ]
}

function unrated({ tubeClass, limits }: OwnTypeEntry): OwnTypeCaution[] {
  if (tubeClass === 'rectifier') return []
  return [
    ...(limits.plateWatts === undefined ? [{ code: 'no-plate-rating' } as const] : []),
    ...(limits.screenWatts === undefined && !isTriode(tubeClass) ? [{ code: 'no-screen-rating' } as const] : []),
  ]
}

function muCaution({ gmMilliampsPerVolt: gm, plateResistanceKilohms: rp, mu }: OwnRow, row: number): OwnTypeCaution[] {
  if (gm === null || rp === null || mu === null) return []
  const product = gm * rp
  return Math.abs(product / mu - 1) > MU_TOLERANCE ? [{ code: 'mu-not-gm-rp', row, product, mu }] : []
}

function heatCaution(
  code: 'row-over-rating' | 'screen-row-over-rating',
  row: number,
  watts: number,
  rating: number | undefined,
): OwnTypeCaution[] {
  return rating !== undefined && watts > OVER * rating ? [{ code, row, watts, rating }] : []
}
