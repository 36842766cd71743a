/** From a designation and its test records to a tube whose currents can be predicted. */

import type { InputFault } from '@/lib/calc/input/input-fault'
import { knownTube } from '@/lib/calc/input/known-tube'
import { figure } from '@/lib/calc/output/figure'
import {
  type IndividualFault,
  type IndividualTube,
  individualTube,
  type TestPoint,
  type TestRecord,
  untestedTube,
} from '@/lib/domain/model/individual-tube'
import { type Section, type TypeModel, typeModel } from '@/lib/domain/model/type-model'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import { amps, siemens, volts } from '@/lib/domain/units'
import type { ElectrodesInput, TubeInput } from './predict-input'

export type ProposedTube = { readonly variant: TubeVariant; readonly tube: IndividualTube }

type Faulty<T> = Result<T, readonly InputFault[]>
const one = (code: string, path: string, sentence: string) => fail([{ code, path, sentence }])

export function testPoint(given: ElectrodesInput, type: TypeModel, path: string): Faulty<TestPoint> {
  const { plateToCathodeVolts, screenToCathodeVolts, gridToCathodeVolts } = given
  if (screenToCathodeVolts === undefined && type.parameters.kind === 'pentode') {
    const place = `${path}.screenToCathodeVolts`
    return one(
      'screen-volts-missing',
      place,
      `${place} is missing; ${type.typeId} has a screen, so it must be a number.`,
    )
  }
  return ok({
    plateToCathode: volts(plateToCathodeVolts),
    screenToCathode: volts(screenToCathodeVolts ?? 0),
    gridToCathode: volts(gridToCathodeVolts),
  })
}

type Reading = { readonly value: number; readonly standard: number }
const scaled = <Unit extends number>(unit: (value: number) => Unit, { value, standard }: Reading) => ({
  value: unit(value / 1000),
  standard: unit(standard / 1000),
})

function testRecord(given: TubeInput['records'][number], type: TypeModel, path: string): Faulty<TestRecord> {
  const point = testPoint(given, type, path)
  if (!point.ok) return point
  const { plateMilliamps, transconductanceMilliampsPerVolt: gm, screenMilliamps } = given
  return ok({
    point: point.value,
    plateCurrent: scaled(amps, plateMilliamps),
    transconductance: gm ? scaled(siemens, gm) : null,
    screenCurrent: screenMilliamps ? scaled(amps, screenMilliamps) : null,
  })
}

function unlikeText(fault: IndividualFault, type: string): string {
  switch (fault) {
    case 'no-record':
      return 'there is no test record.'
    case 'reading-not-positive':
      return 'a reading or its uncertainty is not above zero.'
    case 'test-point-cut-off':
      return `${type} carries next to no current at a test point given. Check its voltages.`
    case 'readings-not-distinct':
      return 'the readings are too alike to tell the tube by. Choose a test point with more current.'
    case 'unlike-the-type':
      return `the readings differ from those of ${type} by more than a factor of four. Wrong type, wrong test point or wrong reading.`
  }
}

/** The limits that hold for the section asked for. */
const ofSection = (variant: TubeVariant, section: Section): TubeVariant =>
  section === 'second' ? { ...variant, ratings: variant.otherSection } : variant

export function proposedTube(given: TubeInput, path: string): Faulty<ProposedTube> {
  const found = knownTube(given.type, `${path}.type`)
  if (!found.ok) return found
  const variant = ok(ofSection(found.value, given.section))
  const model = typeModel(variant.value.typeId, given.section)
  if (!model.ok) {
    const section = given.section === 'second' ? ' for a second section' : ''
    const sentence = `${path}.type is ${JSON.stringify(given.type)}; no curves${section} are known for it, so nothing is predicted.`
    return one('no-curves', `${path}.type`, sentence)
  }
  const type = model.value
  const records = given.records.map((record, index) => testRecord(record, type, `${path}.records[${index}]`))
  const faults = records.flatMap((record) => (record.ok ? [] : record.fault))
  if (faults.length > 0) return fail(faults)
  if (records.length === 0) return ok({ variant: variant.value, tube: untestedTube(type) })
  const tube = individualTube(
    type,
    records.flatMap((record) => (record.ok ? [record.value] : [])),
  )
  if (tube.ok) return ok({ variant: variant.value, tube: tube.value })
  const place = `${path}.records`
  return one(tube.fault, place, `${place} cannot be used: ${unlikeText(tube.fault, given.type)}`)
}

/** What the curves are of and what the tube is known by. */
export function tubeReport({ variant, tube }: ProposedTube) {
  const { type, scales, basis, agreement } = tube
  const [perveance, mu, share] = scales.map((logarithm) => figure(Math.exp(logarithm)))
  return {
    type: variant.asked,
    designation: variant.designation,
    curves: { of: type.curvesOf, standIn: type.standIn, fittedRows: type.rows, cutoffKnown: type.cutoffKnown },
    knownBy: basis,
    againstType: { perveance, mu, ...(type.parameters.kind === 'pentode' ? { screenShare: share } : {}) },
    recordsAgree: agreement && { chiSquare: figure(agreement.chiSquare, 3), expected: agreement.spare },
  }
}
