/**
 * What must hold before a type is taken into a shop's catalogue, and what is only odd.
 *
 * The same rules hold the handbook (tests/domain/tube): a designation names one type; a
 * base has as many pins as its name says; gm·rp is µ to about 10 %; a printed row does not
 * heat the plate far beyond its rating. Bounds of single boxes belong to the form.
 */
import type { IndividualFault } from '../../model/individual-tube'
import { findTubeType } from '../find-tube-type'
import type { TubeCatalogue } from '../tube-catalogue'
import { PIN_COUNTS } from '../tube-ratings'
import { isTriode, type OwnRow, type OwnTypeEntry } from './own-type-entry'

export type OwnTypeFault =
  | {
      readonly code: 'number-taken'
      readonly field: 'designation' | 'otherNumbers'
      readonly number: string
      readonly by: string
    }
  | { readonly code: 'number-twice'; readonly field: 'otherNumbers'; readonly number: string }
  | { readonly code: 'no-such-pin'; readonly field: 'pins'; readonly pin: string; readonly most: number }
  | { readonly code: 'screen-volts-missing'; readonly field: 'screenVolts'; readonly row: number }
  | { readonly code: 'drop-missing'; readonly field: 'dropVolts' }
  | {
      readonly code: 'curves-do-not-fit'
      readonly field: 'curvesLike'
      readonly like: string
      readonly cause: 'no-curves' | IndividualFault
    }

export type OwnTypeCaution =
  | { readonly code: 'mu-not-gm-rp'; readonly row: number; readonly product: number; readonly mu: number }
  | { readonly code: 'row-over-rating'; readonly row: number; readonly watts: number; readonly rating: number }
  | { readonly code: 'screen-row-over-rating'; readonly row: number; readonly watts: number; readonly rating: number }
  | { readonly code: 'no-plate-rating' }

const MU_TOLERANCE = 0.1
const OVER = 1.05

/** `others`: the catalogue without this type. */
export function ownTypeFaults(entry: OwnTypeEntry, others: TubeCatalogue): OwnTypeFault[] {
  return [...numberFaults(entry, others), ...pinFaults(entry), ...rowFaults(entry)]
}

function numberFaults({ designation, otherNumbers }: OwnTypeEntry, others: TubeCatalogue): OwnTypeFault[] {
  const names = [designation, ...otherNumbers]
  return names.flatMap((number, place): OwnTypeFault[] => {
    const field = place === 0 ? 'designation' : 'otherNumbers'
    const known = findTubeType(number, others)
    // A later letter or a ruggedised issue is found by standing in: its own sheet may be written down.
    if (known && (known.resolution === 'designation' || known.resolution === 'other-number'))
      return [{ code: 'number-taken', field, number, by: known.designation }]
    if (names.indexOf(number) < place) return [{ code: 'number-twice', field: 'otherNumbers', number }]
    return []
  })
}

function pinFaults({ base, pins }: OwnTypeEntry): OwnTypeFault[] {
  const most = PIN_COUNTS[base]
  return Object.keys(pins ?? {})
    .filter((pin) => !(Number(pin) >= 1 && Number(pin) <= most))
    .map((pin) => ({ code: 'no-such-pin', field: 'pins', pin, most }))
}

function rowFaults({ tubeClass, rows, drop }: OwnTypeEntry): OwnTypeFault[] {
  if (tubeClass === 'rectifier') return drop ? [] : [{ code: 'drop-missing', field: 'dropVolts' }]
  if (isTriode(tubeClass)) return []
  return rows.flatMap(({ screenVolts }, row): OwnTypeFault[] =>
    screenVolts === null ? [{ code: 'screen-volts-missing', field: 'screenVolts', row }] : [],
  )
}

export function ownTypeCautions({ tubeClass, rows, limits }: OwnTypeEntry): OwnTypeCaution[] {
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
  const unrated = limits.plateWatts === undefined && tubeClass !== 'rectifier'
  return unrated ? [...found, { code: 'no-plate-rating' }] : found
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
