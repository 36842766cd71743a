/**
 * The first-order band of a solved stage against drawn tubes: each draw moves P, µ and r of
 * both tubes, as their uncertainties say, and the stage is solved anew (JCGM 101:2008,
 * propagation of distributions by Monte Carlo). The draws know nothing of the slopes.
 */
import { expect, test } from 'vitest'
import { circuitBands } from '@/lib/domain/circuit/circuit-bands'
import type { TubeIdle } from '@/lib/domain/circuit/idle-solution'
import type { OutputStage, OutputTube } from '@/lib/domain/circuit/output-stage'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import { scaleUncertainty, untestedTube } from '@/lib/domain/model/individual-tube'
import { predictedIdle } from '@/lib/domain/model/predicted-idle'
import { loggedPoint, scaledTube } from '@/lib/domain/model/tube-scales'
import { typeModel } from '@/lib/domain/model/type-model'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'

const found = typeModel('6V6')
if (!found.ok) throw new Error(found.fault)
const tube = untestedTube(found.value)

const outputTube = (socket: string, side: 'a' | 'b'): OutputTube => ({
  socket,
  tube: tube.parameters,
  side,
  gridSupply: null,
  gridLeak: ohms(0),
  reverseGridCurrent: amps(0),
  screenResistance: ohms(470),
  senseResistance: ohms(0),
  biasResistor: 'Rk',
})
const stage: OutputStage = {
  tubes: [outputTube('V1', 'a'), outputTube('V2', 'b')],
  gridSupplies: [],
  biasResistors: [{ id: 'Rk', resistance: ohms(250) }],
  halfPrimary: { a: ohms(120), b: ohms(130) },
  screenFeed: { kind: 'dropper', resistance: ohms(2200), drawn: amps(0.005) },
  supply: { openCircuit: volts(350), sourceResistance: ohms(150), rectifier: null, drawn: amps(0) },
  mainsFactor: ratio(1),
}

/** Park and Miller's minimal standard generator with Box and Muller's transform: the same draws every time. */
function normalDraws(): () => number {
  let state = 20251
  const uniform = () => {
    state = (state * 16807) % 2147483647
    return state / 2147483647
  }
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
}

const solved = (given: OutputStage) => {
  const solution = solveIdle(given)
  if (!solution.ok) throw new Error(solution.fault.code)
  return solution.value
}

test('4,000 drawn pairs of 6V6 on a shared 250 Ω: the spread is that of the band within 8 %', () => {
  const middle = solved(stage)
  const doubts = middle.tubes.map((idle) => ({ tube, predicted: predictedIdle(tube, idle) }))
  const bands = circuitBands(stage, middle, doubts)
  if (!bands.ok) throw new Error(bands.fault.code)
  const [first] = doubts
  if (!first) throw new Error('No tube')
  const { curveShare, screen } = first.predicted
  const { screenCurrent, cathodeCurrent, ...point } = middle.tubes[0] as TubeIdle
  const byScales = scaleUncertainty(tube, loggedPoint(tube.parameters, point).screenSlopes)
  const screenOnly = Math.sqrt(screen.share ** 2 - curveShare ** 2 - byScales ** 2)
  const [ownP, ownMu, ownR] = [0, 1, 2].map((i) => Math.sqrt(tube.covariance[i]?.[i] ?? 0)) as [number, number, number]

  const draw = normalDraws()
  const logs: number[] = []
  const watts: number[] = []
  const volted: number[] = []
  for (let count = 0; count < 4000; count++) {
    const [curves, screens] = [curveShare * draw(), screenOnly * draw()]
    const tubes = stage.tubes.map((one) => {
      const scales = [
        curves + (screens * screenCurrent) / cathodeCurrent + ownP * draw(),
        ownMu * draw(),
        screens + ownR * draw(),
      ] as const
      return { ...one, tube: scaledTube(one.tube, scales) }
    })
    const [v1] = solved({ ...stage, tubes }).tubes
    if (!v1) throw new Error('No tube')
    logs.push(Math.log(v1.plateCurrent))
    watts.push(Math.log(v1.plateDissipation))
    volted.push(v1.plateToCathode)
  }
  const spread = (values: readonly number[]) => {
    const mean = values.reduce((sum, one) => sum + one, 0) / values.length
    return Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (values.length - 1))
  }
  const band = bands.value[0]
  if (!band) throw new Error('No band')
  const byBand = (key: 'plateCurrent' | 'plateDissipation') => Math.log(band[key].high / band[key].low) / 4
  expect(spread(logs) / byBand('plateCurrent')).toBeGreaterThan(0.92)
  expect(spread(logs) / byBand('plateCurrent')).toBeLessThan(1.08)
  expect(spread(watts) / byBand('plateDissipation')).toBeGreaterThan(0.92)
  expect(spread(watts) / byBand('plateDissipation')).toBeLessThan(1.08)
  const voltBand = (band.plateToCathode.high - band.plateToCathode.low) / 4
  expect(spread(volted) / voltBand).toBeGreaterThan(0.9)
  expect(spread(volted) / voltBand).toBeLessThan(1.1)
})
