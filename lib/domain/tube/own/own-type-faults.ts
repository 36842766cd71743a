/**
 * What must hold before a type is taken into a shop's catalogue. What is only odd stands in
 * own-type-cautions.ts.
 *
 * The same rules hold the handbook (tests/domain/tube): a designation names one type; a
 * base has as many pins as its name says. Bounds of single boxes belong to the form.
 */
import type { IndividualFault } from '../../model/individual-tube'
import { typeModel } from '../../model/type-model'
import { findTubeType } from '../find-tube-type'
import { foldedDesignation } from '../folded-designation'
import { ownTubeType, type TubeCatalogue } from '../tube-catalogue'
import { PIN_COUNTS } from '../tube-ratings'
import type { TubeVariant } from '../tube-variant'
import { isTriode, type OwnRow, type OwnTypeEntry } from './own-type-entry'

export type CurvesMisfit = 'no-curves' | 'other-kind' | IndividualFault

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
  | { readonly code: 'row-twice'; readonly field: 'plateVolts'; readonly row: number; readonly first: number }
  | { readonly code: 'row-on-rectifier'; readonly field: 'plateVolts'; readonly row: number }
  | { readonly code: 'drop-missing'; readonly field: 'dropVolts' }
  | { readonly code: 'drop-on-amplifying-tube'; readonly field: 'dropVolts' }
  | { readonly code: 'curves-on-rectifier'; readonly field: 'curvesLike' }
  | {
      readonly code: 'curves-do-not-fit'
      readonly field: 'curvesLike'
      readonly like: string
      readonly cause: CurvesMisfit
    }

/** `others`: the catalogue without this type. */
export function ownTypeFaults(entry: OwnTypeEntry, others: TubeCatalogue): OwnTypeFault[] {
  return [
    ...numberFaults(entry, others),
    ...pinFaults(entry),
    ...(entry.tubeClass === 'rectifier' ? rectifierFaults(entry) : amplifyingFaults(entry)),
  ]
}

function numberFaults({ designation, otherNumbers }: OwnTypeEntry, others: TubeCatalogue): OwnTypeFault[] {
  const names = [designation, ...otherNumbers]
  const folded = names.map(foldedDesignation)
  return names.flatMap((number, place): OwnTypeFault[] => {
    const field = place === 0 ? 'designation' : 'otherNumbers'
    const known = findTubeType(number, others)
    // A later letter or a ruggedised issue is found by standing in: its own sheet may be written down.
    if (known && (known.resolution === 'designation' || known.resolution === 'other-number'))
      return [{ code: 'number-taken', field, number, by: nameOf(known, others) }]
    if (folded.indexOf(foldedDesignation(number)) < place)
      return [{ code: 'number-twice', field: 'otherNumbers', number }]
    return []
  })
}

/** An own type is named by its designation, whichever of its numbers was met. */
const nameOf = ({ typeId, designation }: TubeVariant, others: TubeCatalogue): string =>
  ownTubeType(others, typeId)?.variants[0]?.designations[0] ?? designation

function pinFaults({ base, pins }: OwnTypeEntry): OwnTypeFault[] {
  const most = PIN_COUNTS[base]
  return Object.keys(pins ?? {})
    .filter((pin) => !(Number(pin) >= 1 && Number(pin) <= most))
    .map((pin) => ({ code: 'no-such-pin', field: 'pins', pin, most }))
}

function rectifierFaults({ rows, drop, curves }: OwnTypeEntry): OwnTypeFault[] {
  return [
    ...rows.map((_, row): OwnTypeFault => ({ code: 'row-on-rectifier', field: 'plateVolts', row })),
    ...(drop ? [] : [{ code: 'drop-missing', field: 'dropVolts' } as const]),
    ...(curves ? [{ code: 'curves-on-rectifier', field: 'curvesLike' } as const] : []),
  ]
}

function amplifyingFaults({ tubeClass, rows, drop, curves }: OwnTypeEntry): OwnTypeFault[] {
  const triode = isTriode(tubeClass)
  const screenless = rows.flatMap(({ screenVolts }, row): OwnTypeFault[] =>
    screenVolts === null && !triode ? [{ code: 'screen-volts-missing', field: 'screenVolts', row }] : [],
  )
  const dropped: OwnTypeFault[] = drop ? [{ code: 'drop-on-amplifying-tube', field: 'dropVolts' }] : []
  return [...screenless, ...twiceFaults(rows), ...dropped, ...(curves ? kindFault(curves.typeId, triode) : [])]
}

const samePoint = (a: OwnRow, b: OwnRow): boolean =>
  a.plateVolts === b.plateVolts && a.screenVolts === b.screenVolts && a.gridVolts === b.gridVolts

function twiceFaults(rows: readonly OwnRow[]): OwnTypeFault[] {
  return rows.flatMap((each, row): OwnTypeFault[] => {
    const first = rows.findIndex((one) => samePoint(one, each))
    return first < row ? [{ code: 'row-twice', field: 'plateVolts', row, first }] : []
  })
}

/** A triode's curves know no screen, and those of a pentode need one. */
function kindFault(like: string, triode: boolean): OwnTypeFault[] {
  const model = typeModel(like)
  if (!model.ok || (model.value.parameters.kind === 'triode') === triode) return []
  return [{ code: 'curves-do-not-fit', field: 'curvesLike', like, cause: 'other-kind' }]
}
