/**
 * What every tube of a stock would do in the output sockets of one amplifier, all of them
 * filled with tubes like it: by its own test record, in the circuit as it was read.
 *
 * The grid volts stay as read. Where they are adjusted afterwards all tubes move together,
 * so what is compared is how they differ.
 */
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { PartDoubt } from '@/lib/domain/circuit/circuit-bands'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import type { Filling, PredictedSocket, StockPredictor } from '@/lib/domain/circuit/stock-prediction/prediction'
import { stockPredictor } from '@/lib/domain/circuit/stock-prediction/stock-prediction'
import type { PredictedTube, Predictions } from '@/lib/domain/matching/predicted-tube'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { amps, volts } from '@/lib/domain/units'
import type { Words } from '@/lib/domain/words'
import { proposedFromStock, stockProposalFaultText } from './proposed-from-stock'
import type { StockedTube } from './tube'

type View = { readonly catalogue: TubeCatalogue; readonly now: Date; readonly words: Words; readonly readOn: string }

/** The second knows of no doubt but that of the tube's own readings. */
type Predictors = { readonly whole: StockPredictor; readonly byReadings: StockPredictor }

export function stockPredictions(
  stock: readonly StockedTube[],
  circuit: AmpCircuit,
  view: View,
): Result<Predictions, SolveFault> {
  const { stage } = circuit
  const fitted = stage.tubes.map(() => null)
  const filling: Filling = { kind: 'alike', places: [...stage.tubes.keys()] }
  const whole = stockPredictor({ stage, fitted, partDoubts: gridDoubt(circuit) }, filling)
  if (!whole.ok) return whole
  const byReadings = stockPredictor({ stage, fitted }, filling)
  if (!byReadings.ok) return byReadings
  const predictors = { whole: whole.value, byReadings: byReadings.value }
  const tested = stock.filter(({ test }) => test !== null)
  const ofTube = new Map(tested.map((each) => [each.tube.id, predictionOf(each, predictors, view)]))
  return ok({ readOn: view.readOn, ofTube })
}

/** Shared by all tubes alike, as none of those that were read stays. */
function gridDoubt({ stage, gridStandard }: AmpCircuit): readonly PartDoubt[] {
  if (gridStandard === null || gridStandard <= 0) return []
  const moved = (step: number) => ({
    ...stage,
    gridSupplies: stage.gridSupplies.map((one) => ({ ...one, voltage: volts(one.voltage + step) })),
  })
  return [{ name: 'grid volts', standard: gridStandard, moved }]
}

function predictionOf(
  stocked: StockedTube,
  { whole, byReadings }: Predictors,
  { catalogue, now, words }: View,
): Result<PredictedTube, string> {
  const proposed = proposedFromStock(stocked, catalogue, now)
  if (!proposed.ok) return fail(stockProposalFaultText(proposed.fault, words))
  if (proposed.value.kind !== 'individual') throw new Error('A stocked tube was proposed by its type')
  const { tube } = proposed.value
  const found = whole(tube)
  const own = byReadings({ ...tube, type: { ...tube.type, share: 0, growth: 0 } })
  if (!found.ok || !own.ok) return fail('The circuit has no operating point with it.')
  const { plateCurrent, transconductance, plateDissipation } = found.value.sockets.reduce(hotter)
  const alone = own.value.sockets.reduce(hotter).plateCurrent
  return ok({
    plateCurrent,
    byReadings: amps((alone.high - alone.low) / 2),
    transconductance,
    plateDissipation,
    extrapolated: found.value.extrapolated,
  })
}

const hotter = (a: PredictedSocket, b: PredictedSocket): PredictedSocket =>
  b.plateCurrent.value > a.plateCurrent.value ? b : a
