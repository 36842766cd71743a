/** The circuit of an output group as it was read last, and what a stock would do in it. */
import 'server-only'
import { dayInZone } from '@/lib/domain/calendar'
import { type AmpCircuit, ampCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { circuitFaultText, solveFaultText } from '@/lib/domain/circuit/circuit-text'
import type { Carrying, SocketDemand } from '@/lib/domain/matching/candidate'
import type { SetArrangement } from '@/lib/domain/matching/match-weights'
import type { Predictions } from '@/lib/domain/matching/predicted-tube'
import { fail, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { stockPredictions } from '@/lib/domain/stock/stock-predictions'
import type { StockedTube } from '@/lib/domain/stock/tube'
import { wordsFor } from '@/lib/domain/words'
import { listFittingsOfAmp } from '@/lib/store/fitting'
import type { LatestBench } from '../latest-bench'
import { knownCircuit } from './known-circuit'

/** With the very tubes that sat there; or why it is not known, in a sentence. */
export async function groupCircuit(
  { sheet, set }: LatestBench,
  group: string,
  shop: Shop,
): Promise<Result<AmpCircuit, string>> {
  if (!set) return fail('The amplifier has not been read, so its circuit is not known.')
  const fittings = await listFittingsOfAmp(sheet.amp.id)
  const circuit = ampCircuit({ ...(await knownCircuit({ sheet, fittings, set }, shop)), group })
  return circuit.ok ? circuit : fail(circuitFaultText(circuit.fault, wordsFor(shop.words)))
}

/** Grids that read apart have an adjustment each. */
export function arrangementIn(
  circuit: Result<AmpCircuit, string>,
  { count, arrangement }: Pick<SocketDemand, 'count' | 'arrangement'>,
): SetArrangement {
  const supplies = circuit.ok ? circuit.value.stage.gridSupplies.length : 0
  return supplies > 1 && supplies === count ? 'individual-trims' : arrangement
}

/** What is compared, or why tubes are compared at their test points: a whole sentence. */
export type Basis = Result<Predictions, string>

type Asked = {
  readonly bench: LatestBench
  readonly shop: Shop
  readonly now: Date
  /** With the instrument all are carried to. */
  readonly carrying: Carrying
}

export function predictionsIn(
  circuit: AmpCircuit,
  stock: readonly StockedTube[],
  { bench, shop, now, carrying }: Asked,
): Basis {
  if (!bench.set) throw new Error('A circuit without readings')
  const words = wordsFor(shop.words)
  const readOn = dayInZone(bench.set.takenAt, shop.timeZone)
  const found = stockPredictions(stock, circuit, { catalogue: shop, now, words, readOn, carrying })
  return found.ok ? found : fail(solveFaultText(found.fault, words))
}
