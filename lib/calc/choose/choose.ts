/** `calc choose`: the best set out of a stock for a group of sockets, the ready-made ones, and why others lost. */
import { calculator, type Faults, faultsOf, together } from '@/lib/calc/calculator'
import type { InputFault } from '@/lib/calc/input/input-fault'
import { knownTube } from '@/lib/calc/input/known-tube'
import { twice } from '@/lib/calc/share/share'
import { candidateOf, carryingOf, demandOf, limitsOf } from '@/lib/calc/share/share-order'
import type { SocketDemand } from '@/lib/domain/matching/candidate'
import { type MatchWeights, USUAL_WEIGHTS } from '@/lib/domain/matching/match-weights'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { fail, ok, type Result } from '@/lib/domain/result'
import { amps } from '@/lib/domain/units'
import { arrangementIn, predictionsIn } from './choose-circuit'
import { type ChooseGiven, chooseInput } from './choose-input'
import { chooseReport } from './choose-report'

function calculate(given: ChooseGiven): Result<object, Faults> {
  const { set, stock, test, circuit } = given
  const again = twice(
    stock.map(({ mark }) => mark),
    'stock',
    'mark',
  )
  if (again.length > 0) return fail(faultsOf(again))
  const known = together([
    knownTube(set.type, 'set.type'),
    ...stock.map(({ type }, at) => knownTube(type, `stock[${at}].type`)),
  ])
  if (!known.ok) return known
  const demand = socketDemand(given)
  const weights = weighing(given, demand)
  if (!weights.ok) return weights
  const candidates = stock.map((tube) => candidateOf(tube, test))
  const carrying = carryingOf(given)
  const predictions = circuit ? predictionsIn(circuit, given, { candidates, carrying }) : null
  if (predictions && !predictions.ok) return predictions
  const limits = { ...limitsOf(given.limits), carrying, weights: weights.value }
  const compared = predictions ? { ...limits, predictions: predictions.value } : limits
  return ok(chooseReport(proposeSet(candidates, demand, compared), given))
}

function socketDemand({ set, circuit }: ChooseGiven): SocketDemand {
  const { arrangement, aimMilliamps } = set
  const demand = demandOf(set)
  return {
    ...demand,
    arrangement: arrangement ?? (circuit ? arrangementIn(circuit, set.pushPull) : demand.arrangement),
    aim: aimMilliamps === undefined ? null : amps(aimMilliamps / 1000),
  }
}

/** The search counts in thousandths. */
function weighing({ weights }: ChooseGiven, { arrangement }: SocketDemand): Result<MatchWeights, Faults> {
  const given = Object.entries(weights).flatMap(([part, weight]) =>
    weight === undefined ? [] : [[part, Math.round(1000 * weight) / 1000] as const],
  )
  const all: MatchWeights = { ...USUAL_WEIGHTS[arrangement], ...Object.fromEntries(given) }
  return all.currentSpread + all.slopeSpread === 0 ? fail([NO_SPREAD]) : ok(all)
}

const NO_SPREAD: InputFault = {
  code: 'no-spread-weighed',
  path: 'weights',
  sentence: 'weights.currentSpread and weights.slopeSpread are both 0; one of them must be above 0.',
}

export const choose = calculator({
  title: 'A matched set out of a stock',
  input: chooseInput,
  example: {
    set: { type: '6L6GC', count: 2, plateToCathodeVolts: 430, idleWatts: 18 },
    test: { instrument: 'Tester 1', plateVolts: 250, screenVolts: 250, gridVolts: -14 },
    stock: [
      { mark: 'T-1', type: '6L6GC', milliamps: 70.1, milliampsPerVolt: 5.9, price: 46 },
      { mark: 'T-2', type: '6L6GC', milliamps: 70.4, milliampsPerVolt: 5.95, price: 46 },
      { mark: 'T-3', type: '6L6GC', milliamps: 74, milliampsPerVolt: 6.1, price: 30 },
      { mark: 'T-4', type: '6L6GC', milliamps: 75.5, milliampsPerVolt: 6.2, price: 30 },
      { mark: 'T-5', type: '6L6G', milliamps: 71, milliampsPerVolt: 5.9, price: 25 },
      {
        ...{ mark: 'T-6', type: '6L6GC', milliamps: 93.6, milliampsPerVolt: 7.1, price: 28 },
        test: { instrument: 'Tester 2', plateVolts: 250, screenVolts: 250, gridVolts: -14 },
      },
    ],
    corrections: [
      {
        ...{ from: 'Tester 1', to: 'Tester 2' },
        plateCurrent: { times: 1.04, percent: 3.5 },
        transconductance: { times: 1.02, percent: 4 },
      },
    ],
  },
  calculate,
})
