import 'server-only'
import type { LatestBench } from '@/app/jobs/[jobNumber]/latest-bench'
import { sheetAsOf, stockedTubesAt } from '@/lib/domain/amp/fitting'
import { type AmpCircuit, ampCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { circuitFaultText } from '@/lib/domain/circuit/circuit-text'
import { fail, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { testRecordOf } from '@/lib/domain/stock/test-record-of'
import { wordsFor } from '@/lib/domain/words'
import { findSupply } from '@/lib/store/amp-supply'
import { listFittingsOfAmp } from '@/lib/store/fitting'
import { listTubesById } from '@/lib/store/tube'

/** As read last, with the very tubes that sat there; or why it is not known, in a sentence. */
export async function groupCircuit(
  { sheet, set }: LatestBench,
  group: string,
  shop: Shop,
): Promise<Result<AmpCircuit, string>> {
  if (!set) return fail('The amplifier has not been read, so its circuit is not known.')
  const fittings = await listFittingsOfAmp(sheet.amp.id)
  const sits = [...stockedTubesAt(fittings, set.takenAt)]
  const [facts, tubes] = await Promise.all([findSupply(sheet.amp.id), listTubesById(sits.map(([, id]) => id))])
  const tests = new Map(tubes.map(({ tube, test }) => [tube.id, test]))
  const records = sits.flatMap(([socketId, tubeId]) => {
    const test = tests.get(tubeId)
    const record = test ? testRecordOf(test) : null
    return record ? [[socketId, [record]] as const] : []
  })
  const sheetThen = sheetAsOf(sheet, fittings, set.takenAt)
  const circuit = ampCircuit({ sheet: sheetThen, group, facts, set, shop, records: Object.fromEntries(records) })
  return circuit.ok ? circuit : fail(circuitFaultText(circuit.fault, wordsFor(shop.words)))
}
