/** A stock read on two testers: what is kept proposes the very same as the records read, carried over and reckoned from scratch. */
import { beforeAll, expect, it } from 'vitest'
import { dayInZone } from '@/lib/domain/calendar'
import type { Carrying } from '@/lib/domain/matching/candidate'
import { carryTarget } from '@/lib/domain/matching/carried-stock'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import type { Proposal } from '@/lib/domain/matching/proposal'
import { proposeFrom, proposeSet } from '@/lib/domain/matching/propose-set'
import { candidatesOf } from '@/lib/domain/stock/candidate-of'
import { stockPredictions } from '@/lib/domain/stock/stock-predictions'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'
import { wordsFor } from '@/lib/domain/words'
import { findCarrying } from '@/lib/store/carrying'
import { stockToChooseFrom } from '@/lib/store/kept/kept-stock'
import { findShop } from '@/lib/store/shop'
import { listStockForFamily } from '@/lib/store/tube'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { keepTube } from '@/lib/workflow/stock/keep-tube'
import { circuitOf, trueStage } from '@/tests/domain/circuit/amp/read-amp'
import { aDemand } from '@/tests/domain/matching/tubes'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { openStockedShop, section, testEntry, tubeDetails, tubeInStock } from '@/tests/support/stocked-shop'

freshDatabase()
const CIRCUIT = circuitOf(trueStage())
const OLD = 'Old tester'

/** Kept for comparing, read on both. Gives the id. */
async function reference(there: number): Promise<string> {
  const kept = await keepTube(atBench(), {
    ...{ id: null, version: 0, details: tubeDetails({ designation: 'EL34' }) },
    further: { ...NOTHING_FURTHER, reference: true },
    test: testEntry({ sections: [section(60, 11)] }),
  })
  if (!kept.ok) throw new Error(kept.fault.code)
  const test = testEntry({ instrumentName: OLD, sections: [section(there, 11)] })
  const tested = await addTubeTest(atBench(), { tubeId: kept.value, test, reject: false })
  if (!tested.ok) throw new Error(tested.fault.code)
  return kept.value
}

beforeAll(async () => {
  await openStockedShop()
  for (const milliamps of [64, 68, 72]) await tubeInStock({}, { sections: [section(milliamps, 6)] })
  for (const milliamps of [70.8, 80]) await tubeInStock({}, { instrumentName: OLD, sections: [section(milliamps, 6)] })
})

async function proposed(atTestPoint: boolean, on = ''): Promise<Proposal> {
  const shop = (await findShop()) ?? expect.fail('no shop')
  const carrying = await findCarrying(on)
  const view = { now: NOW, jobInHand: null, timeZone: shop.timeZone, catalogue: shop, words: wordsFor(shop.words) }
  const demand = aDemand(2)
  const limits = {
    ...{ maximumTestAgeDays: 365, allowOverPrintedRating: true, priceCap: null, oneDesignation: false },
    ...{ yardsticks: USUAL_YARDSTICKS, asOf: dayInZone(NOW, shop.timeZone), carrying },
  }
  const circuit = atTestPoint ? null : CIRCUIT
  const { running } = await stockToChooseFrom({ ...view, family: '6L6', circuit, carrying })
  const kept = proposeFrom(running, demand, limits)
  const stock = await listStockForFamily('6L6')
  const candidates = candidatesOf(stock, view)
  const to = carryTarget(candidates, carrying)
  const whole: Carrying = to === null ? carrying : { ...carrying, to }
  const found = stockPredictions(stock, CIRCUIT, { ...view, readOn: '', carrying: whole })
  if (!found.ok) throw new Error(found.fault.code)
  const scratch = { ...limits, ...(atTestPoint ? {} : { predictions: found.value }) }
  expect(kept).toEqual(proposeSet(candidates, demand, scratch))
  return kept
}

const readings = ({ best }: Proposal) =>
  best?.tubes.map(({ candidate: { test } }) => Math.round(1e4 * (test.carried?.plateCurrent ?? test.plateCurrent)) / 10)

it('follows the references: none, then 4 % more on the old tester, then a second one that says 8 %', async () => {
  for (const at of [true, false]) expect((await proposed(at)).best?.tubes).toHaveLength(2)
  expect(readings(await proposed(true))).toEqual([64, 68])

  // 70.8 mA there are 68.1 here.
  await reference(62.4)
  const carried = await proposed(true)
  expect(readings(carried)).toEqual([68, 70.8])
  expect(carried.best?.instrument).toBe('Bench tester 1')
  const there = await proposed(false)
  expect(there.best?.tubes.map(({ candidate }) => candidate.test.instrument)).toEqual([
    'Bench tester 1',
    'Bench tester 1',
  ])

  // Twice as far, the mean factor being 1.06: 66.8 here, and 72 against 70.8 no closer.
  await reference(64.8)
  const again = await proposed(true)
  const [, old] = again.best?.tubes ?? []
  expect(1000 * (old?.candidate.test.plateCurrent ?? 0)).toBeCloseTo(70.8 / Math.sqrt(1.04 * 1.08), 2)
  await proposed(false)
})

it('compares on the other tester when asked to', async () => {
  const { best } = await proposed(true, OLD)
  expect(best?.instrument).toBe(OLD)
  await proposed(false, OLD)
})
