/**
 * A stock of 100,000 tested tubes, each predicted with its band in one circuit: four large
 * octal tubes behind a rectifier tube, dropper and screen resistors. The tubes are invented,
 * of five types at eleven test points.
 *
 * The goal is for one core, so processor time counts: of the whole process, its garbage
 * collection on other cores included. The time on the wall stands beside it. Of several
 * rounds the median is taken. A tube is fitted once, when its test is recorded; that is
 * timed apart. The reference is the full solver with circuitBands, over fewer tubes.
 */
import { performance } from 'node:perf_hooks'
import { circuitBands } from '@/lib/domain/circuit/circuit-bands'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import type { Filling } from '@/lib/domain/circuit/stock-prediction/prediction'
import { predictStock } from '@/lib/domain/circuit/stock-prediction/stock-prediction'
import type { IndividualTube } from '@/lib/domain/model/individual-tube'
import { predictedIdle } from '@/lib/domain/model/predicted-idle'
import type { Figure } from '@/lib/setup/bench'
import { dice } from '@/tests/domain/circuit/random-stage'
import { gridSupplied, softRectifier } from '@/tests/domain/circuit/stage-fixture'
import { fittedTube, inventedStock, inventedTest } from '@/tests/domain/circuit/stock-prediction/invented-stock'

export const name = 'predict-stock'

const TUBES = 100_000
const IN_FULL = 1_000
const ROUNDS = 5
const SEED = 20_251_125

const fitted = inventedStock(SEED + 1, 4)
const rectified = gridSupplied({ supply: { ...gridSupplied().supply, rectifier: softRectifier } })
const stage: OutputStage = {
  ...rectified,
  tubes: rectified.tubes.map((one, i) => ({ ...one, tube: fitted[i]?.parameters ?? one.tube })),
}

type Spent = { readonly core: number; readonly wall: number }

/** Seconds. */
function spentOn(work: () => void): Spent {
  const [began, used] = [performance.now(), process.cpuUsage()]
  work()
  const wall = (performance.now() - began) / 1000
  const { user, system } = process.cpuUsage(used)
  return { core: (user + system) / 1e6, wall }
}

function medianOf(rounds: number, work: () => void): Spent {
  const spent = Array.from({ length: rounds }, () => spentOn(work))
  const median = (key: keyof Spent) => spent.map((one) => one[key]).sort((a, b) => a - b)[Math.floor(rounds / 2)]
  return { core: median('core') ?? Number.NaN, wall: median('wall') ?? Number.NaN }
}

function predictAll(filling: Filling, tubes: readonly IndividualTube[]): void {
  const found = predictStock({ stage, fitted }, filling, tubes)
  if (!found.ok) throw new Error(found.fault.code)
  const failed = found.value.filter(({ ok }) => !ok).length
  if (failed > 0) throw new Error(`${failed} of ${tubes.length} tubes were not predicted`)
}

function predictInFull(tubes: readonly IndividualTube[]): void {
  for (const tube of tubes) {
    const seated = [tube, ...fitted.slice(1)]
    const filled = { ...stage, tubes: stage.tubes.map((one, i) => ({ ...one, tube: (seated[i] ?? tube).parameters })) }
    const solved = solveIdle(filled)
    if (!solved.ok) throw new Error(solved.fault.code)
    const doubts = solved.value.tubes.map((idle, i) => {
      const one = seated[i] ?? tube
      return { tube: one, predicted: predictedIdle(one, idle) }
    })
    if (!circuitBands(filled, solved.value, doubts).ok) throw new Error('No bands')
  }
}

export async function run(): Promise<readonly Figure[]> {
  const roll = dice(SEED)
  const tests = Array.from({ length: TUBES }, () => inventedTest(roll))
  let tubes: IndividualTube[] = []
  const fit = spentOn(() => {
    tubes = tests.map(fittedTube)
  })
  const one = medianOf(ROUNDS, () => predictAll({ kind: 'one', place: 0 }, tubes))
  const alike = medianOf(ROUNDS, () => predictAll({ kind: 'alike', places: [0, 1, 2, 3] }, tubes))
  const full = medianOf(ROUNDS, () => predictInFull(tubes.slice(0, IN_FULL)))
  const [each, eachInFull] = [(1e6 * one.core) / TUBES, (1e6 * full.core) / IN_FULL]
  const lower = { reference: null, goal: null, better: 'lower' } as const
  return [
    { figure: 'tubes', value: tubes.length, unit: 'tubes', reference: null, goal: TUBES, better: 'higher' },
    { figure: 'whole stock, in one socket, one core', value: one.core, unit: 's', ...lower, goal: 1.5 },
    { figure: 'the same on the wall', value: one.wall, unit: 's', ...lower },
    { figure: 'a tube, against the full solver with bands', value: each, unit: 'µs', ...lower, reference: eachInFull },
    { figure: 'whole stock, four alike, one core', value: alike.core, unit: 's', ...lower },
    { figure: 'four alike, a tube', value: (1e6 * alike.core) / TUBES, unit: 'µs', ...lower },
    { figure: 'fitting a tube to its test, once', value: (1e6 * fit.core) / TUBES, unit: 'µs', ...lower },
  ]
}
