/**
 * The curves of any type a shop knows.
 *
 * A handbook type has fitted curves of its own (type-model.ts). A type of the shop's has
 * none: those of the type it is said to be like stand in, and where the shop noted printed
 * operating points they are moved to these by P, µ and r, as individual-tube.ts moves a
 * type's curves to one tube. Printed figures are taken as good to 3 % (Ia), 6 % (gm) and
 * 20 % (Ig2), which is how closely the handbook's own types meet their rows.
 * A rectifier's constant comes from its one noted drop.
 */
import { fail, ok, type Result } from '../result'
import type { OperatingRow } from '../tube/handbook-type'
import { type OwnTubeType, ownTubeType, type TubeCatalogue } from '../tube/tube-catalogue'
import { amps, siemens, volts } from '../units'
import { type IndividualFault, individualTube, type TestRecord } from './individual-tube'
import type { DiodeParameters } from './plate-curves'
import { rectifierModel, type Section, type TypeModel, typeModel } from './type-model'

const SHARES = { plate: 0.03, gm: 0.06, screen: 0.2 } as const

function printedRecord({ figures, connection }: OperatingRow): TestRecord[] {
  const { plateVolts, screenVolts, gridVolts, plateMilliamps, screenMilliamps, gmMilliampsPerVolt } = figures
  if (connection === 'diode' || !plateVolts || !gridVolts || !plateMilliamps) return []
  const measured = <Unit extends number>(unit: (value: number) => Unit, value: number, share: number) => ({
    value: unit(value / 1000),
    standard: unit((share * value) / 1000),
  })
  return [
    {
      point: {
        plateToCathode: volts(plateVolts[0]),
        screenToCathode: volts(screenVolts?.[0] ?? 0),
        gridToCathode: volts(gridVolts[0]),
      },
      plateCurrent: measured(amps, plateMilliamps[0], SHARES.plate),
      transconductance: gmMilliampsPerVolt ? measured(siemens, gmMilliampsPerVolt[0], SHARES.gm) : null,
      screenCurrent: screenMilliamps ? measured(amps, screenMilliamps[0], SHARES.screen) : null,
    },
  ]
}

/** The curves it is said to be like, moved to its own printed points. */
export function ownModel(type: OwnTubeType): Result<TypeModel, 'no-curves' | IndividualFault> {
  if (!type.curves) return fail('no-curves')
  const like = typeModel(type.curves.typeId)
  if (!like.ok) return like
  const { degree } = type.curves
  const standing = {
    ...like.value,
    typeId: type.id,
    standIn: degree,
    share: degree === 'similar' ? like.value.share * 2 : like.value.share,
  }
  const records = type.rows.flatMap(printedRecord)
  if (records.length === 0) return ok(standing)
  const moved = individualTube(standing, records)
  return moved.ok ? ok({ ...standing, parameters: moved.value.parameters, movedTo: records.length }) : moved
}

export function catalogueModel(
  typeId: string,
  catalogue: TubeCatalogue,
  section: Section = 'first',
): Result<TypeModel, 'no-curves'> {
  const own = ownTubeType(catalogue, typeId)
  if (!own) return typeModel(typeId, section)
  const model = section === 'first' ? ownModel(own) : fail('no-curves' as const)
  return model.ok ? model : fail('no-curves')
}

export function catalogueRectifier(typeId: string, catalogue: TubeCatalogue): Result<DiodeParameters, 'no-curves'> {
  const own = ownTubeType(catalogue, typeId)
  if (!own) return rectifierModel(typeId)
  const drop = own.rows.find(({ connection }) => connection === 'diode')?.figures
  if (!drop?.dropVolts || !drop.dropMilliampsPerPlate) return fail('no-curves')
  return ok({ kind: 'diode', k: drop.dropMilliampsPerPlate[0] / 1000 / drop.dropVolts[0] ** 1.5 })
}
