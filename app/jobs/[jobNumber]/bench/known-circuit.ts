import 'server-only'
import type { StockedAnswer, StockedAnswers } from '@/app/_components/what-if/asked-change'
import type { WhatIfLists } from '@/app/_components/what-if/what-if-boxes'
import { marksTyped, type WhatIfTyped } from '@/app/_components/what-if/what-if-typed'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { type Fitting, sheetAsOf, stockedTubesAt } from '@/lib/domain/amp/fitting'
import type { ReadingSet } from '@/lib/domain/bench/reading-set'
import { milliampsText, voltsText } from '@/lib/domain/bias/bias-figures'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { CircuitGiven } from '@/lib/domain/circuit/amp/circuit-given'
import { catalogueModel } from '@/lib/domain/model/catalogue-model'
import type { TestRecord } from '@/lib/domain/model/individual-tube'
import { fail, ok } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { proposedFromStock, stockProposalFaultText } from '@/lib/domain/stock/proposed-from-stock'
import { carriedRecord, testRecordOf } from '@/lib/domain/stock/test-record-of'
import type { StockedTube } from '@/lib/domain/stock/tube'
import { readMark } from '@/lib/domain/stock/tube-mark'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { wordsFor } from '@/lib/domain/words'
import { findSupply } from '@/lib/store/amp-supply'
import { findTubeByMark, listTubes, listTubesById } from '@/lib/store/tube'

export type KnownCircuit = Omit<CircuitGiven, 'group'>

type Round = { readonly sheet: AmpSheet; readonly fittings: readonly Fitting[]; readonly set: ReadingSet }

/** All that the circuit of any output group is made of: the round, the supplies, and the tests of the very tubes read. */
export async function knownCircuit({ sheet, fittings, set }: Round, shop: Shop): Promise<KnownCircuit> {
  const sits = [...stockedTubesAt(fittings, set.takenAt)]
  const [facts, tubes] = await Promise.all([findSupply(sheet.amp.id), listTubesById(sits.map(([, id]) => id))])
  const byId = new Map(tubes.map((stocked) => [stocked.tube.id, stocked]))
  const records = sits.flatMap(([socketId, tubeId]) => {
    const stocked = byId.get(tubeId)
    return stocked ? [[socketId, recordsFor(stocked, shop)] as const] : []
  })
  return { sheet: sheetAsOf(sheet, fittings, set.takenAt), facts, set, shop, records: Object.fromEntries(records) }
}

function recordsFor({ tube, test }: StockedTube, shop: Shop): TestRecord[] {
  const type = findTubeType(tube.designation, shop)
  const model = type ? catalogueModel(type.typeId, shop) : null
  const record = test ? testRecordOf(test) : null
  return record && model?.ok ? [carriedRecord(record, model.value)] : []
}

async function stockedAnswer(mark: string, shop: Shop, now: Date): Promise<StockedAnswer> {
  const words = wordsFor(shop.words)
  const known = readMark(mark)
  if (known === null) return fail(`“${mark}” is no mark. A mark is like T-0147.`)
  const tube = await findTubeByMark(known)
  const [stocked] = tube ? await listTubesById([tube.id]) : []
  if (!stocked) return fail(`The stock book has no ${words.tube} marked ${known}.`)
  const proposed = proposedFromStock(stocked, shop, now)
  return proposed.ok ? ok(proposed.value) : fail(stockProposalFaultText(proposed.fault, words))
}

export async function stockedAnswers(typed: WhatIfTyped, shop: Shop, now: Date): Promise<StockedAnswers> {
  const marks = [...new Set(marksTyped(typed).map(([, mark]) => mark))]
  const answers = await Promise.all(marks.map((mark) => stockedAnswer(mark, shop, now)))
  return Object.fromEntries(marks.flatMap((mark, at) => (answers[at] ? [[mark, answers[at]]] : [])))
}

/** Free tubes of the types fitted, with what they tested: the first hundred of each. */
export async function marksToPropose({ sockets }: AmpCircuit, now: Date): Promise<WhatIfLists['marks']> {
  const families = [...new Set(sockets.map(({ variant }) => variant.family))]
  const pages = await Promise.all(families.map((family) => listTubes({ family, view: 'free', now })))
  return pages.flatMap(({ tubes }) =>
    tubes.flatMap(({ tube, test, shortsFoundAt }) => {
      const current = test?.sections[0]?.plateCurrent
      if (!test || shortsFoundAt || !current || tube.condition === 'reject') return []
      const point = test.plateVoltage === null ? '' : ` at ${voltsText(test.plateVoltage)}`
      return [{ mark: tube.mark, text: `${tube.designation}, ${milliampsText(current)}${point}` }]
    }),
  )
}
