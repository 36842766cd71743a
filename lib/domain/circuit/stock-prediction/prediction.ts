/** What is asked about a stock of tubes, and what is answered; stock-prediction.ts says how. */
import type { Band } from '@/lib/domain/circuit/band'
import type { PartDoubt } from '@/lib/domain/circuit/circuit-bands'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import type { IndividualTube } from '@/lib/domain/model/individual-tube'
import type { Result } from '@/lib/domain/result'

/** `place`, `places`: in the order of the stage's tubes. */
export type Filling =
  /** One tube; the others stay as they are. */
  | { readonly kind: 'one'; readonly place: number }
  /** A matched set: tubes like the one asked about in all these places, each with a doubt of its own. */
  | { readonly kind: 'alike'; readonly places: readonly number[] }

export type StageToFill = {
  /** What stands in the places to be filled is not looked at. */
  readonly stage: OutputStage
  /** In the order of the stage's tubes, for the doubt about those that stay. Null: taken as known exactly. */
  readonly fitted: readonly (IndividualTube | null)[]
  /** Of the circuit: circuit-bands.ts. The tubes that its stages hold in the filled places are not looked at. */
  readonly partDoubts?: readonly PartDoubt[]
}

/** Amperes, volts, siemens, watts. */
export type PredictedSocket = {
  readonly socket: string
  readonly plateCurrent: Band
  readonly screenCurrent: Band
  readonly plateToCathode: Band
  readonly transconductance: Band
  readonly plateDissipation: Band
}

export type StockPrediction = {
  /** The filled places, in the order asked for. */
  readonly sockets: readonly PredictedSocket[]
  /** In some of them the tube is more than a factor 1.5 outside the rows its type was fitted to. */
  readonly extrapolated: boolean
}

export type StockPredictor = (tube: IndividualTube) => Result<StockPrediction, SolveFault>
