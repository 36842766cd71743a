/**
 * A sheet to start from for a new type: class, base, pins, heater and limits of a known
 * variant, so that only what differs is to be typed. Operating points are not taken over:
 * they would stand as this type's own, though nobody read them of it. The curves are those of
 * the known type, as a merely similar one.
 */
import { typeModel } from '../../model/type-model'
import { knownTypes, ownTubeType, type TubeCatalogue } from '../tube-catalogue'
import type { TubeVariant } from '../tube-variant'
import type { OwnTypeEntry } from './own-type-entry'
import { OWN_LIMITS } from './own-type-shown'

export type OwnTypeStart = Omit<OwnTypeEntry, 'rows' | 'otherNumbers' | 'note'>

export function ownTypeStart(variant: TubeVariant, catalogue: TubeCatalogue): OwnTypeStart {
  const { base, heaters, ratings, designation } = variant
  const [heater] = heaters
  const limits = OWN_LIMITS.flatMap(({ key }) => {
    const figure = ratings?.all[key]
    return figure ? [[key, figure.value]] : []
  })
  return {
    designation: '',
    family: variant.family,
    tubeClass: variant.tubeClass,
    base: base.name,
    basing: base.eia,
    pins: base.pins,
    heaterVolts: heater?.volts.value ?? 0,
    heaterAmps: heater?.amps.value ?? 0,
    system: ratings?.system ?? 'not-stated',
    limits: Object.fromEntries(limits),
    drop: dropOf(variant, catalogue),
    curves: curvesLike(variant, catalogue),
    sourceText: `figures of the ${designation}, taken over to start from`,
  }
}

function dropOf({ typeId }: TubeVariant, catalogue: TubeCatalogue): OwnTypeStart['drop'] {
  const rows = knownTypes(catalogue).find(({ id }) => id === typeId)?.rows ?? []
  const { dropVolts, dropMilliampsPerPlate } = rows.find(({ connection }) => connection === 'diode')?.figures ?? {}
  if (!dropVolts || !dropMilliampsPerPlate) return null
  return { dropVolts: dropVolts[0], milliamps: dropMilliampsPerPlate[0] }
}

function curvesLike({ typeId, tubeClass }: TubeVariant, catalogue: TubeCatalogue): OwnTypeStart['curves'] {
  if (tubeClass === 'rectifier') return null
  const own = ownTubeType(catalogue, typeId)
  const like = own ? own.curves?.typeId : typeId
  return like !== undefined && typeModel(like).ok ? { typeId: like, degree: 'similar' } : null
}
