/**
 * Coverage of the 95 % bands, 100,000 draws a case (JCGM 101:2008): idle from bench readings
 * by every method, and idle predicted for a tested tube in a circuit. Of every case the
 * quantity that is held least often and the one held most often are shown, in per cent.
 *
 * The predicted bands are watched, not held to the goal: they are of first order, and a
 * screen current known to a factor 1.7 only (handbook and tubes together) is past that. With
 * a cathode resistor, where plate and screen share a nearly fixed current, it leads.
 */
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import { stockPredictor } from '@/lib/domain/circuit/stock-prediction/stock-prediction'
import { curveShare, markOf, nearness, outsideBy, screenOnlyShare, testMarks } from '@/lib/domain/model/curve-doubt'
import { type IndividualTube, individualTube } from '@/lib/domain/model/individual-tube'
import { loggedPoint, scaledTube } from '@/lib/domain/model/tube-scales'
import type { TypeModel } from '@/lib/domain/model/type-model'
import { typeModel } from '@/lib/domain/model/type-model'
import { amps, ohms, siemens, volts } from '@/lib/domain/units'
import type { Figure } from '@/lib/setup/bench'
import { cathodeBiased, gridSupplied, tubeIn } from '@/tests/domain/circuit/stage-fixture'
import { COVERAGE_CASES, coverageOf, type Draw, drawing } from '@/tests/reference/support/idle-draws'

export const name = 'bounds-coverage'

const DRAWS = 100_000

/** `held`: to the goal; the others are watched. */
const between = (what: string, percents: readonly number[], held: boolean): Figure[] => [
  {
    figure: `${what}: least`,
    value: Math.min(...percents),
    unit: '%',
    reference: null,
    goal: held ? 93 : null,
    better: 'higher',
  },
  {
    figure: `${what}: most`,
    value: Math.max(...percents),
    unit: '%',
    reference: null,
    goal: held ? 97 : null,
    better: 'lower',
  },
]

const POINTS = {
  far: { plateToCathode: volts(250), screenToCathode: volts(250), gridToCathode: volts(-14) },
  near: { plateToCathode: volts(400), screenToCathode: volts(400), gridToCathode: volts(-36) },
} as const

function testedTube(type: TypeModel, draw: Draw, point: (typeof POINTS)['far' | 'near']) {
  const truth = [0.1, 0.03, 0.35].map((spread) => draw.normal(spread)) as [number, number, number]
  const here = loggedPoint(scaledTube(type.parameters, truth), point)
  const read = (value: number, share: number) => value * (1 + draw.normal(share))
  const [ia, gm] = [read(here.plate, 0.02), read(here.gm, 0.04)]
  const tube = individualTube(type, [
    {
      point,
      plateCurrent: { value: amps(ia), standard: amps(0.02 * ia) },
      transconductance: { value: siemens(gm), standard: siemens(0.04 * gm) },
      screenCurrent: null,
    },
  ])
  return tube.ok ? { truth, tube: tube.value } : null
}

/** The tube as it is: its true scales, on curves that are off by what they may be off by where it idles. */
function trueTube(tube: IndividualTube, truth: readonly [number, number, number], idle: Idle, draw: Draw) {
  const cathode = idle.plateCurrent + idle.screenCurrent
  const mark = markOf(tube.type, idle.plateToCathode, idle.screenToCathode, cathode)
  const near = nearness(testMarks(tube), mark)
  const curves = draw.normal(curveShare(tube.type, outsideBy(tube.type, mark), near))
  const screens = draw.normal(screenOnlyShare(near))
  const [p, mu, r] = truth
  return scaledTube(tube.type.parameters, [p + curves + (screens * idle.screenCurrent) / cathode, mu, r + screens])
}

type Idle = {
  readonly plateCurrent: number
  readonly screenCurrent: number
  readonly plateToCathode: number
  readonly screenToCathode: number
}

type Socketed = {
  readonly what: string
  readonly stage: ReturnType<typeof gridSupplied>
  readonly point: 'far' | 'near'
}

const alone = { socket: 'V1', side: 'a' } as const
const SOCKETS: readonly Socketed[] = [
  {
    what: 'predicted from a test near the amp',
    stage: gridSupplied({
      tubes: [tubeIn('V1', alone)],
      gridSupplies: [{ id: 'bias', voltage: volts(-40), range: null }],
    }),
    point: 'near',
  },
  {
    what: 'predicted from a test at 250 V, cathode resistor',
    stage: cathodeBiased({
      tubes: [tubeIn('V1', { ...alone, gridSupply: null, biasResistor: 'Rk' })],
      biasResistors: [{ id: 'Rk', resistance: ohms(560) }],
    }),
    point: 'far',
  },
]

const PREDICTED = ['plateCurrent', 'screenCurrent', 'plateToCathode', 'plateDissipation'] as const

function predictedCoverage({ what, stage, point }: Socketed, type: TypeModel, seed: number): Figure[] {
  const draw = drawing(seed)
  const predictor = stockPredictor({ stage, fitted: [null] }, { kind: 'one', place: 0 })
  if (!predictor.ok) throw new Error(predictor.fault.code)
  const held = PREDICTED.map(() => 0)
  let drawn = 0
  let refused = 0
  for (let n = 0; n < DRAWS; n++) {
    const tested = testedTube(type, draw, POINTS[point])
    if (!tested) {
      refused++
      continue
    }
    const predicted = predictor.value(tested.tube)
    const believed = solveIdle({
      ...stage,
      tubes: stage.tubes.map((one) => ({ ...one, tube: tested.tube.parameters })),
    })
    if (!predicted.ok || !believed.ok) throw new Error('A tube was not predicted')
    const tube = trueTube(tested.tube, tested.truth, believed.value.tubes[0] as Idle, draw)
    const real = solveIdle({ ...stage, tubes: stage.tubes.map((one) => ({ ...one, tube })) })
    if (!real.ok) throw new Error(real.fault.code)
    drawn++
    for (const [place, key] of PREDICTED.entries()) {
      const band = predicted.value.sockets[0]?.[key]
      const value = real.value.tubes[0]?.[key]
      if (!band || value === undefined) throw new Error(`No ${key}`)
      if (band.low <= value && value <= band.high) held[place] = (held[place] ?? 0) + 1
    }
  }
  if (refused > DRAWS / 1000) throw new Error(`${refused} of ${DRAWS} invented tests were refused`)
  console.error(
    what,
    PREDICTED.map((key, i) => `${key} ${((100 * (held[i] ?? 0)) / drawn).toFixed(2)}`).join(', '),
    refused,
  )
  return between(
    what,
    held.map((count) => (100 * count) / drawn),
    false,
  )
}

export async function run(): Promise<readonly Figure[]> {
  const type = typeModel('6L6')
  if (!type.ok) throw new Error('No curves')
  const read = COVERAGE_CASES.flatMap((given) => {
    const found = coverageOf(given, DRAWS)
    console.error(given.name, found.map(({ quantity, percent }) => `${quantity} ${percent.toFixed(2)}`).join(', '))
    return between(
      given.name,
      found.map(({ percent }) => percent),
      true,
    )
  })
  const predicted = SOCKETS.flatMap((one, n) => predictedCoverage(one, type.value, 100 + n))
  return [
    { figure: 'draws a case', value: DRAWS, unit: 'draws', reference: null, goal: 100_000, better: 'higher' },
    ...read,
    ...predicted,
  ]
}
