/**
 * The quick way against the full one: solveIdle and circuitBands, whose band is held against
 * drawn tubes in circuit-bands.test.ts. gm has no band there; its own is held against the
 * full solver's gm with each scale moved.
 */
import { describe, expect, test } from 'vitest'
import type { Band } from '@/lib/domain/circuit/band'
import { circuitBands, type Doubt, type PartDoubt } from '@/lib/domain/circuit/circuit-bands'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import type { Filling, PredictedSocket, StockPrediction } from '@/lib/domain/circuit/stock-prediction/prediction'
import { placesOf, stockPredictor } from '@/lib/domain/circuit/stock-prediction/stock-prediction'
import { type IndividualTube, untestedTube } from '@/lib/domain/model/individual-tube'
import { predictedIdle } from '@/lib/domain/model/predicted-idle'
import { scaledTube } from '@/lib/domain/model/tube-scales'
import { typeModel } from '@/lib/domain/model/type-model'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'
import { usualStage } from '../random-stage'
import { solved } from '../solved'
import { cathodeBiased, gridSupplied, softRectifier } from '../stage-fixture'
import { inventedStock } from './invented-stock'

/** Of a value: both ways settle at 1e-12 of the currents. */
const VALUE = 1e-9
/** Of a half-width: the full way takes differences over 1e-3 of a scale and 0.1 of a part's standard uncertainty. */
const HALF_WIDTH = 1e-4

const withTubes = (stage: OutputStage, tubes: readonly (IndividualTube | undefined)[]): OutputStage => ({
  ...stage,
  tubes: stage.tubes.map((one, i) => ({ ...one, tube: tubes[i]?.parameters ?? one.tube })),
})

type Case = {
  readonly name: string
  readonly stage: OutputStage
  readonly filling: Filling
  readonly partDoubt?: boolean
}

const rectified = gridSupplied({ supply: { ...gridSupplied().supply, rectifier: softRectifier } })
const cases: readonly Case[] = [
  { name: 'one of four, rectifier tube', stage: rectified, filling: { kind: 'one', place: 2 } },
  { name: 'four alike, rectifier tube', stage: rectified, filling: { kind: 'alike', places: [0, 1, 2, 3] } },
  { name: 'one of two on one cathode resistor', stage: cathodeBiased(), filling: { kind: 'one', place: 1 } },
  { name: 'two alike on one cathode resistor', stage: cathodeBiased(), filling: { kind: 'alike', places: [0, 1] } },
  {
    name: 'one side of four alike, grid volts in doubt',
    stage: gridSupplied(),
    filling: { kind: 'alike', places: [2, 3] },
    partDoubt: true,
  },
  {
    name: 'one of four on taps of the primary, grid volts in doubt',
    stage: gridSupplied({ screenFeed: { kind: 'primary-tap', tap: ratio(0.43) } }),
    filling: { kind: 'one', place: 0 },
    partDoubt: true,
  },
  {
    name: 'one of two strapped as triodes',
    stage: cathodeBiased({
      screenFeed: { kind: 'triode-strapped' },
      biasResistors: [{ id: 'Rk', resistance: ohms(400) }],
    }),
    filling: { kind: 'one', place: 0 },
  },
]

const gridDoubt = (stage: OutputStage): PartDoubt => ({
  name: 'grid volts',
  standard: 0.8,
  moved: (step) => ({
    ...stage,
    gridSupplies: stage.gridSupplies.map((one) => ({ ...one, voltage: volts(one.voltage + step) })),
  }),
})

type Fitted = { readonly stage: OutputStage; readonly tubes: readonly IndividualTube[] }

function fittedWith(
  stage: OutputStage,
  others: readonly IndividualTube[],
  filling: Filling,
  tube: IndividualTube,
): Fitted {
  const places = placesOf(filling)
  const tubes = stage.tubes.map((_, i) => (places.includes(i) ? tube : (others[i] as IndividualTube)))
  return { stage: withTubes(stage, tubes), tubes }
}

function inFull({ stage, tubes }: Fitted, partDoubts: readonly PartDoubt[]) {
  const solution = solved(stage)
  const doubts = tubes.map((tube, i): Doubt => ({ tube, predicted: predictedIdle(tube, solution.tubes[i] as never) }))
  const bands = circuitBands(stage, solution, doubts, partDoubts)
  if (!bands.ok) throw new Error(bands.fault.code)
  return { solution, bands: bands.value }
}

const logHalf = ({ low, high }: Band): number => Math.log(high / low)

function expectAlike(found: Band, full: Band, logged: boolean): void {
  expect(Math.abs(found.value / full.value - 1)).toBeLessThan(VALUE)
  const [half, fullHalf] = logged ? [logHalf(found), logHalf(full)] : [found.high - found.low, full.high - full.low]
  expect(Math.abs(half / fullHalf - 1)).toBeLessThan(HALF_WIDTH)
}

const COMPARED = ['plateCurrent', 'screenCurrent', 'plateDissipation', 'plateToCathode'] as const

function predictions(
  { stage, filling, partDoubt }: Case,
  others: readonly IndividualTube[],
  tubes: readonly IndividualTube[],
) {
  const partDoubts = partDoubt ? [gridDoubt(withTubes(stage, others))] : []
  const predictor = stockPredictor({ stage: withTubes(stage, others), fitted: others, partDoubts }, filling)
  if (!predictor.ok) throw new Error(predictor.fault.code)
  return tubes.map((tube): StockPrediction => {
    const found = predictor.value(tube)
    if (!found.ok) throw new Error(found.fault.code)
    return found.value
  })
}

describe('the quick prediction is the full one', () => {
  test.each(cases)('$name: 60 stocked tubes, values to 1e-9, half-widths to 1e-4', (one) => {
    const [others, tubes] = [inventedStock(7, one.stage.tubes.length), inventedStock(8, 60)]
    const places = placesOf(one.filling)
    for (const [n, { sockets }] of predictions(one, others, tubes).entries()) {
      const fitted = fittedWith(one.stage, others, one.filling, tubes[n] as IndividualTube)
      const { solution, bands } = inFull(fitted, one.partDoubt ? [gridDoubt(fitted.stage)] : [])
      expect(sockets.length).toBe(places.length)
      for (const [k, place] of places.entries()) {
        const [socket, band] = [sockets[k] as PredictedSocket, bands[place]]
        if (!band) throw new Error(`No band at ${place}`)
        for (const key of COMPARED) expectAlike(socket[key], band[key], key !== 'plateToCathode')
        const gm = solution.tubes[place]?.transconductance ?? Number.NaN
        expect(Math.abs(socket.transconductance.value / gm - 1)).toBeLessThan(VALUE)
        expect(socket.socket).toBe(solution.tubes[place]?.socket)
      }
    }
  })

  test('240 random stages, some with triodes between: values to 1e-9, half-widths to 1e-4', () => {
    const triode = typeModel('300B')
    if (!triode.ok) throw new Error('No curves')
    const [others, tubes] = [
      [...inventedStock(9, 4), untestedTube(triode.value), ...inventedStock(10, 3)],
      inventedStock(11, 240),
    ]
    for (const [n, tube] of tubes.entries()) {
      const stage = usualStage(n + 1)
      const filling: Filling = { kind: 'one', place: n % stage.tubes.length }
      const [found] = predictions({ name: '', stage, filling }, others, [tube])
      const { bands } = inFull(fittedWith(stage, others, filling, tube), [])
      const [socket, band] = [found?.sockets[0], bands[filling.place]]
      if (!socket || !band) throw new Error(`Stage ${n + 1} was not predicted`)
      for (const key of COMPARED) expectAlike(socket[key], band[key], key !== 'plateToCathode')
    }
  })
})

/** The only doubt left is that of the candidate's own scales, so the band of gm is the full solver's gm with them moved. */
test.each([0, 1, 2])('the band of gm follows scale %i as the full solver does, to 1e-4', (scale) => {
  const [candidate] = inventedStock(12, 1)
  if (!candidate) throw new Error('No tube')
  const covariance = [0, 1, 2].map((i) => [0, 1, 2].map((j) => (i === scale && j === scale ? 1e-4 : 0)))
  // At its test points the curves are made to agree: so the tube is tested where it stands.
  for (const stage of [rectified, cathodeBiased()]) {
    const at = (step: number) => {
      const moved = [0, 1, 2].map((i) => (i === scale ? step : 0)) as [number, number, number]
      const tubes = stage.tubes.map((one, i) =>
        i === 0 ? { ...one, tube: scaledTube(candidate.parameters, moved) } : one,
      )
      return solved({ ...stage, tubes }).tubes[0] as never as {
        transconductance: number
      } & IndividualTube['testPoints'][0]
    }
    const here = at(0)
    const tube: IndividualTube = { ...candidate, covariance, testPoints: [here] }
    const predictor = stockPredictor({ stage, fitted: stage.tubes.map(() => null) }, { kind: 'one', place: 0 })
    const found = predictor.ok ? predictor.value(tube) : predictor
    if (!found.ok) throw new Error(found.fault.code)
    const slope = Math.log(at(1e-3).transconductance / at(-1e-3).transconductance) / 2e-3
    const half = logHalf(found.value.sockets[0]?.transconductance as Band) / 4
    expect(Math.abs(half / (Math.abs(slope) * 0.01) - 1)).toBeLessThan(1e-4)
  }
})

describe('what cannot be predicted', () => {
  test('a supply that the rest of the amp pulls to chassis is refused before any tube', () => {
    const stage = gridSupplied({ supply: { ...gridSupplied().supply, drawn: amps(10) } })
    const predictor = stockPredictor({ stage, fitted: [] }, { kind: 'one', place: 0 })
    expect(predictor).toMatchObject({ ok: false, fault: { code: 'supply-collapsed' } })
  })

  test('a place that the stage has not is a mistake of the caller', () => {
    expect(() => stockPredictor({ stage: cathodeBiased(), fitted: [] }, { kind: 'one', place: 2 })).toThrow('Place 2')
  })
})
