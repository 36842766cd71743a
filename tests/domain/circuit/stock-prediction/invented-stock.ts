/** Invented tubes with test records, from a seed. No reading was ever taken. */
import { type IndividualTube, individualTube, type TestRecord } from '@/lib/domain/model/individual-tube'
import { loggedPoint, scaledTube } from '@/lib/domain/model/tube-scales'
import { type TypeModel, typeModel } from '@/lib/domain/model/type-model'
import { amps, siemens, volts } from '@/lib/domain/units'
import { dice } from '../random-stage'

/** Octal output types that one socket might be offered, each with points its testers use. */
const TYPES = {
  '6L6': [
    [250, 250, -14],
    [400, 400, -36],
    [350, 350, -28],
  ],
  KT66: [
    [250, 250, -15],
    [350, 350, -27],
  ],
  EL34: [
    [250, 250, -13.5],
    [400, 400, -34],
  ],
  '6V6': [
    [250, 250, -12.5],
    [285, 285, -19],
  ],
  KT88: [
    [250, 250, -15],
    [400, 300, -30],
  ],
} as const satisfies Readonly<Record<string, readonly (readonly [number, number, number])[]>>

const models: readonly {
  readonly model: TypeModel
  readonly points: readonly (readonly [number, number, number])[]
}[] = Object.entries(TYPES).map(([typeId, points]) => {
  const model = typeModel(typeId)
  if (!model.ok) throw new Error(`${typeId} has no curves`)
  return { model: model.value, points }
})

const normal = (roll: () => number): number => Math.sqrt(-2 * Math.log(1 - roll())) * Math.cos(2 * Math.PI * roll())

export type InventedTest = { readonly type: TypeModel; readonly record: TestRecord }

/** Ia to 2 %, gm (four in five tubes) to 4 %, Ig2 (one in three) to 3 %. */
export function inventedTest(roll: () => number): InventedTest {
  const { model, points } = models[Math.floor(roll() * models.length)] as (typeof models)[number]
  const [plate, screen, grid] = points[Math.floor(roll() * points.length)] as readonly [number, number, number]
  const point = { plateToCathode: volts(plate), screenToCathode: volts(screen), gridToCathode: volts(grid) }
  const truth = scaledTube(model.parameters, [0.1 * normal(roll), 0.03 * normal(roll), 0.2 * normal(roll)])
  const here = loggedPoint(truth, point)
  const [hasGm, hasScreen] = [roll() < 0.8, roll() < 1 / 3]
  const read = (value: number, share: number) => value * Math.exp(share * normal(roll))
  const [ia, gm, ig2] = [read(here.plate, 0.02), read(here.gm, 0.04), read(here.screen, 0.03)]
  return {
    type: model,
    record: {
      point,
      plateCurrent: { value: amps(ia), standard: amps(0.02 * ia) },
      transconductance: hasGm ? { value: siemens(gm), standard: siemens(0.04 * gm) } : null,
      screenCurrent: hasScreen ? { value: amps(ig2), standard: amps(0.03 * ig2) } : null,
    },
  }
}

export function fittedTube({ type, record }: InventedTest): IndividualTube {
  const found = individualTube(type, [record])
  if (!found.ok) throw new Error(`An invented ${type.typeId} was refused: ${found.fault}`)
  return found.value
}

export function inventedStock(seed: number, count: number): IndividualTube[] {
  const roll = dice(seed)
  return Array.from({ length: count }, () => fittedTube(inventedTest(roll)))
}
