/**
 * What every tube of a stock would do in the output sockets of one amplifier, all of them
 * filled with tubes like it: by its own test record, in the circuit as it was read.
 *
 * The grid volts stay as read. Where they are adjusted afterwards the tubes move together, though
 * not by quite the same: their spread at the aim is another than told here. On a cathode resistor
 * for all, like tubes hide how unlike ones would differ; `setOption` calls no such set matched.
 */
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { PartDoubt } from '@/lib/domain/circuit/circuit-bands'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import type { Filling, PredictedSocket, StockPredictor } from '@/lib/domain/circuit/stock-prediction/prediction'
import { stockPredictor } from '@/lib/domain/circuit/stock-prediction/stock-prediction'
import type { Carrying } from '@/lib/domain/matching/candidate'
import { carriagesTo } from '@/lib/domain/matching/carried-test'
import type { PredictedTube, Predictions } from '@/lib/domain/matching/predicted-tube'
import type { IndividualTube } from '@/lib/domain/model/individual-tube'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { amps, volts } from '@/lib/domain/units'
import type { Words } from '@/lib/domain/words'
import { carriedProposable } from './carried-proposable'
import { type ProposableTube, proposedFromStock, stockProposalFaultText } from './proposed-from-stock'
import type { StockedTube } from './tube'

type View = {
  readonly catalogue: TubeCatalogue
  readonly now: Date
  readonly words: Words
  readonly readOn: string
  /** With the instrument all are carried to. Left out: every tube by what it was read as. */
  readonly carrying?: Carrying
}

/** The second knows of no doubt but that of the tube's own readings. */
type Predictors = { readonly whole: StockPredictor; readonly byReadings: StockPredictor }

export function stockPredictions(
  stock: readonly StockedTube[],
  circuit: AmpCircuit,
  view: View,
): Result<Predictions, SolveFault> {
  const predictor = tubePredictor(circuit, view)
  if (!predictor.ok) return predictor
  const tested = stock.filter(({ test }) => test !== null)
  const { corrections = [], to } = view.carrying ?? {}
  const carriages = to === undefined ? new Map() : carriagesTo(to, corrections)
  const ofTube = new Map(tested.map((each) => [each.tube.id, predictor.value(carriedProposable(each, carriages))]))
  return ok({ readOn: view.readOn, ofTube })
}

/** A fault is a whole sentence. */
export type TubePredictor = (tube: ProposableTube) => Result<PredictedTube, string>

/** What is said of one tube does not depend on those asked about before. Not to be called from within itself. */
export function tubePredictor(
  circuit: StageRead,
  view: Omit<View, 'readOn' | 'carrying'>,
): Result<TubePredictor, SolveFault> {
  const { stage } = circuit
  const fitted = stage.tubes.map(() => null)
  const filling: Filling = { kind: 'alike', places: [...stage.tubes.keys()] }
  const whole = stockPredictor({ stage, fitted, partDoubts: gridDoubt(circuit) }, filling)
  if (!whole.ok) return whole
  const byReadings = stockPredictor({ stage, fitted }, filling)
  if (!byReadings.ok) return byReadings
  const predictors = { whole: whole.value, byReadings: byReadings.value }
  return ok((tube) => predictionOf(tube, predictors, view))
}

/** All of the circuit that the predictions depend on. */
export type StageRead = Pick<AmpCircuit, 'stage' | 'gridStandard'>

/** Shared by all tubes alike, as none of those that were read stays. */
function gridDoubt({ stage, gridStandard }: StageRead): readonly PartDoubt[] {
  if (gridStandard === null || gridStandard <= 0) return []
  const moved = (step: number) => ({
    ...stage,
    gridSupplies: stage.gridSupplies.map((one) => ({ ...one, voltage: volts(one.voltage + step) })),
  })
  return [{ name: 'grid volts', standard: gridStandard, moved }]
}

function predictionOf(
  stocked: ProposableTube,
  { whole, byReadings }: Predictors,
  { catalogue, now, words }: Proposing,
): Result<PredictedTube, string> {
  const tube = individual(stocked, { catalogue, now, words })
  if (!tube.ok) return tube
  const found = whole(tube.value)
  const own = halfAlone(byReadings, tube.value)
  if (!found.ok || own === null) return fail('The circuit has no operating point with it.')
  const { plateCurrent, transconductance, plateDissipation } = found.value.sockets.reduce(hotter)
  return ok({
    plateCurrent,
    ...ownBands(stocked, own, (bare) => {
      const uncarried = individual(bare, { catalogue, now, words })
      return uncarried.ok ? halfAlone(byReadings, uncarried.value) : null
    }),
    transconductance,
    plateDissipation,
    extrapolated: found.value.extrapolated,
  })
}

type Proposing = Omit<View, 'readOn' | 'carrying'>

function individual(stocked: ProposableTube, { catalogue, now, words }: Proposing): Result<IndividualTube, string> {
  const proposed = proposedFromStock(stocked, catalogue, now)
  if (!proposed.ok) return fail(stockProposalFaultText(proposed.fault, words))
  if (proposed.value.kind !== 'individual') throw new Error('A stocked tube was proposed by its type')
  return ok(proposed.value.tube)
}

/** Half of the band of its plate current by its own readings. null: no operating point. */
function halfAlone(byReadings: StockPredictor, tube: IndividualTube): number | null {
  const own = byReadings({ ...tube, type: { ...tube.type, share: 0, growth: 0 } })
  if (!own.ok) return null
  const { low, high } = own.value.sockets.reduce(hotter).plateCurrent
  return (high - low) / 2
}

/**
 * A record has as many readings as there is to find out of a tube, so variances add up: what
 * is wider than by the same figures read on the spot is by carrying.
 */
function ownBands(
  stocked: ProposableTube,
  own: number,
  halfOf: (bare: ProposableTube) => number | null,
): Pick<PredictedTube, 'byReadings' | 'byCarrying'> {
  if (!stocked.test?.carried) return { byReadings: amps(own) }
  const { carried: _, ...test } = stocked.test
  const bare = Math.min(own, halfOf({ ...stocked, test }) ?? 0)
  return { byReadings: amps(bare), byCarrying: amps(Math.sqrt(own * own - bare * bare)) }
}

const hotter = (a: PredictedSocket, b: PredictedSocket): PredictedSocket =>
  b.plateCurrent.value > a.plateCurrent.value ? b : a
