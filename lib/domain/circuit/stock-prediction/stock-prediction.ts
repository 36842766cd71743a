/**
 * How every tube of a stock would idle in one output stage, with 95 % bands: what
 * solve-idle.ts and circuit-bands.ts say of one tube, some hundred times quicker.
 *
 * The stage is laid once. Each tube is then a Newton solution started beside its own
 * (type-start.ts), and its bands come from the Jacobian there (answers.ts), through the
 * circuit's own feedback, instead of from solving the stage anew for each doubt. The bands
 * are those of circuit-bands.ts, where their meaning and limits stand; they agree with it to
 * what its differences leave, 1e-4 of a half-width.
 */
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import type { IndividualTube } from '@/lib/domain/model/individual-tube'
import { ok, type Result } from '@/lib/domain/result'
import type { Filling, StageToFill, StockPrediction, StockPredictor } from './prediction'
import { predictorFor } from './predictor'

export const placesOf = (filling: Filling): readonly number[] =>
  filling.kind === 'one' ? [filling.place] : filling.places

/** Refuses a stage that no tube can mend. The predictor is not to be called from within itself: it reuses its room. */
export function stockPredictor(toFill: StageToFill, filling: Filling): Result<StockPredictor, SolveFault> {
  const { stage } = toFill
  const places = placesOf(filling)
  const wrong = places.find((place) => stage.tubes[place] === undefined)
  if (wrong !== undefined) throw new Error(`Place ${wrong} is not one of ${stage.tubes.length}`)
  const asItIs = solveIdle(stage)
  if (!asItIs.ok && asItIs.fault.code !== 'did-not-converge') return asItIs
  return ok(predictorFor(toFill, places))
}

/** In the order of the tubes. */
export function predictStock(
  toFill: StageToFill,
  filling: Filling,
  tubes: readonly IndividualTube[],
): Result<readonly Result<StockPrediction, SolveFault>[], SolveFault> {
  const predictor = stockPredictor(toFill, filling)
  return predictor.ok ? ok(tubes.map(predictor.value)) : predictor
}
