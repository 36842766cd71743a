/** Whatever is written, and by whom: what is kept proposes the very same as the records read and reckoned from scratch. */
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { dayInZone } from '@/lib/domain/calendar'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import type { Proposal } from '@/lib/domain/matching/proposal'
import { proposeFrom, proposeSet } from '@/lib/domain/matching/propose-set'
import { money } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { candidatesOf } from '@/lib/domain/stock/candidate-of'
import type { StageRead } from '@/lib/domain/stock/stock-predictions'
import { stockPredictions } from '@/lib/domain/stock/stock-predictions'
import type { TubeDetails } from '@/lib/domain/stock/tube'
import { NOTHING_FURTHER } from '@/lib/domain/stock/tube-further'
import { volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { guessedColumns } from '@/lib/exchange/tube-columns'
import { databasePath, inTransaction, openDatabase } from '@/lib/store/database'
import { type KeepBounds, keptStock, stockToChooseFrom } from '@/lib/store/kept/kept-stock'
import { findOwnType } from '@/lib/store/own-type'
import { findShop } from '@/lib/store/shop'
import { createTube, findTube, listStockForFamily, releaseHold, setHold } from '@/lib/store/tube'
import { keepOwnType } from '@/lib/workflow/shop/keep-own-type'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { keepTube } from '@/lib/workflow/stock/keep-tube'
import { moveTube } from '@/lib/workflow/stock/move-tube'
import { chooseImport, chosenTable, startImport } from '@/lib/workflow/tables/import-tubes'
import { undoImport } from '@/lib/workflow/tables/undo-import'
import { circuitOf, trueStage } from '@/tests/domain/circuit/amp/read-amp'
import { aDemand } from '@/tests/domain/matching/tubes'
import { ownEntry } from '@/tests/domain/tube/own/own-type-fixture'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { jobOnFile, openStockedShop, section, testEntry, tubeDetails, tubeInStock } from '@/tests/support/stocked-shop'

const database = freshDatabase()
const CIRCUIT: StageRead = circuitOf(trueStage())
const OTHER_CIRCUIT: StageRead = circuitOf(
  trueStage({ gridSupplies: [{ id: 'bias', voltage: volts(-47), range: null }] }),
)

type Asking = { circuit?: StageRead | null; now?: Date; jobInHand?: string | null; count?: number; family?: string }

async function asked({ circuit = CIRCUIT, now = NOW, jobInHand = null, count = 2, family = '6L6' }: Asking) {
  const shop = (await findShop()) ?? expect.fail('no shop')
  const limits = {
    maximumTestAgeDays: 365,
    allowOverPrintedRating: false,
    priceCap: null,
    oneDesignation: false,
    yardsticks: USUAL_YARDSTICKS,
    asOf: dayInZone(now, shop.timeZone),
  }
  const demand = { ...aDemand(count, { family }), plateToCathodeVoltage: volts(400), screenVoltage: volts(380) }
  return { view: viewOf(shop, now, jobInHand), circuit, family, demand, limits }
}

const viewOf = (shop: Shop, now: Date, jobInHand: string | null) => ({
  ...{ now, jobInHand, timeZone: shop.timeZone, catalogue: shop, words: wordsFor(shop.words) },
})

async function fromKept(asking: Asking): Promise<Proposal> {
  const { view, circuit, family, demand, limits } = await asked(asking)
  const { running, fault } = await stockToChooseFrom({ ...view, family, circuit })
  if (fault) throw new Error(fault.code)
  return proposeFrom(running, demand, limits)
}

async function fromScratch(asking: Asking): Promise<Proposal> {
  const { view, circuit, family, demand, limits } = await asked(asking)
  const stock = await listStockForFamily(family)
  const found =
    circuit && stockPredictions(stock, circuit as Parameters<typeof stockPredictions>[1], { ...view, readOn: '' })
  if (found && !found.ok) throw new Error(found.fault.code)
  return proposeSet(candidatesOf(stock, view), demand, { ...limits, ...(found ? { predictions: found.value } : {}) })
}

async function same(asking: Asking = {}): Promise<Proposal> {
  const kept = await fromKept(asking)
  expect(kept).toEqual(await fromScratch(asking))
  return kept
}

const marksOf = ({ best }: Proposal) => best?.tubes.map(({ candidate }) => candidate.mark)
const usableOf = async (asking: Asking = {}) => (await same(asking)).usable

/** Readings that rise slowly; the pair of equal ones is the best. */
const READINGS = [60, 63.1, 66.3, 69.6, 69.6, 73.2, 76.9, 80.7] as const
const ids: string[] = []
const idOf = (at: number) => ids[at] as string

beforeAll(async () => {
  await openStockedShop()
  for (const milliamps of READINGS) ids.push(await tubeInStock({}, { sections: [section(milliamps, milliamps / 12)] }))
  await tubeInStock({ designation: 'EL34' })
  await tubeInStock({}, null)
})

/** What was kept before each write is warm: both ways of comparing, and a second amplifier. */
beforeEach(async () => {
  await same()
  await same({ circuit: null })
  await same({ circuit: OTHER_CIRCUIT, count: 4 })
})

afterEach(async () => {
  await same()
  await same({ circuit: null, count: 4 })
  await same({ circuit: OTHER_CIRCUIT })
})

async function save(id: string, over: Partial<TubeDetails>): Promise<void> {
  const tube = (await findTube(id)) ?? expect.fail('no tube')
  const { mark, designation, condition, acquired, construction, location, cost, price } = tube
  const details = { mark, designation, condition, acquired, construction, location, cost, price, ...over }
  const kept = await keepTube(atBench(), { id, version: tube.version, details, test: null })
  if (!kept.ok) throw new Error(kept.fault.code)
}

describe('kept as long as nothing was written to it', () => {
  it('proposes the pair of equal readings, in this amplifier and at the test point', async () => {
    const best = [idOf(3), idOf(4)].sort()
    for (const circuit of [CIRCUIT, null]) {
      const { best: set } = await same({ circuit })
      expect(set?.tubes.map(({ candidate }) => candidate.tubeId).sort()).toEqual(best)
    }
  })

  it('reads and reckons nothing twice: the very same columns, until something is written', async () => {
    const { view } = await asked({})
    const columns = async () => (await stockToChooseFrom({ ...view, family: '6L6', circuit: CIRCUIT })).running
    const [one, two] = [await columns(), await columns()]
    expect(two.predicted).toBe(one.predicted)
    expect(two.byCurrent).toBe(one.byCurrent)
    await save(idOf(2), { location: 'Drawer 9' })
    expect((await columns()).predicted).toBe(one.predicted)
    await tubeInStock({ designation: 'EL84' })
    expect((await columns()).predicted).toBe(one.predicted)
    await save(idOf(2), { price: money(4600) })
    expect((await columns()).predicted).not.toBe(one.predicted)
  })

  it('a tube sold is out, and put back it is in', async () => {
    const before = await usableOf()
    const { version } = (await findTube(idOf(3))) ?? expect.fail()
    const move = { tubeId: idOf(3), reason: 'over the counter' } as const
    expect((await moveTube(atBench(), { ...move, version, to: 'sold' })).ok).toBe(true)
    expect(await usableOf()).toBe(before - 1)
    expect((await moveTube(atBench(), { ...move, version: version + 1, to: 'in-stock' })).ok).toBe(true)
    expect(await usableOf()).toBe(before)
  })

  it('a tube held is out for other jobs, in for its own, and in again for all once the hold has lapsed unwritten', async () => {
    const { id, number } = await jobOnFile()
    const until = new Date(NOW.getTime() + 60_000)
    const hold = { hold: 'held', jobId: id, quoteId: 'quote-1', until, now: NOW } as const
    const before = await usableOf()
    const columns = async () =>
      (await stockToChooseFrom({ ...(await asked({})).view, family: '6L6', circuit: CIRCUIT })).running
    const { predicted } = await columns()
    await inTransaction((tx) => setHold(tx, [idOf(3)], hold))
    // A hold is no reason to reckon anything anew.
    expect((await columns()).predicted).toBe(predicted)
    const held = await same()
    expect(held.usable).toBe(before - 1)
    expect(held.excluded).toContainEqual(
      expect.objectContaining({ reasons: [{ code: 'reserved', holder: `job ${number}` }] }),
    )
    expect(await usableOf({ jobInHand: id })).toBe(before)
    expect(await usableOf({ now: until })).toBe(before - 1)
    expect(await usableOf({ now: new Date(until.getTime() + 1) })).toBe(before)
    await database.job.update({ where: { id }, data: { number: '9999-9' } })
    expect(JSON.stringify((await same()).excluded)).toContain('job 9999-9')
    await inTransaction((tx) => releaseHold(tx, 'quote-1'))
    expect(await usableOf()).toBe(before)
  })

  it('a tube tested again, priced anew, or known as another type is weighed as it now is', async () => {
    const chosen = marksOf(await same())
    expect(
      (
        await addTubeTest(atBench(), {
          tubeId: idOf(3),
          reject: false,
          test: testEntry({ sections: [section(71, 4)] }),
        })
      ).ok,
    ).toBe(true)
    expect(marksOf(await same())).not.toEqual(chosen)
    await save(idOf(0), { price: money(100) })
    expect((await same()).leastPrice?.tubes.map(({ candidate }) => candidate.price)).toContain(100)
    await save(idOf(1), { designation: 'EL34' })
    await same({ family: 'EL34' })
    await save(idOf(1), { designation: '5881' })
    await same({ family: 'EL34' })
    await save(idOf(1), { designation: '6L6GC', mark: 'A-1' })
    expect(
      (
        await addTubeTest(atBench(), {
          tubeId: idOf(5),
          reject: false,
          test: testEntry({ shorts: true, sections: [] }),
        })
      ).ok,
    ).toBe(true)
  })

  it('tubes imported are in and, taken back, out', async () => {
    const rows = Array.from(
      { length: 60 },
      (_, i) => `B-${i};6L6GC;40;Bench tester 1;2031-05-02;250;250;-14;${60 + i / 7};6`,
    )
    const text = `Mark;Type;Price;Tester;Test date;Va;Vg2;Vg;Ia;gm\n${rows.join('\n')}\n`
    const chosen = await chooseImport(atBench(), { fileName: 'list.csv', bytes: new TextEncoder().encode(text) })
    if (!chosen.ok) throw new Error(chosen.fault.code)
    const mapping = guessedColumns((await chosenTable(chosen.value))?.headings ?? [])
    const before = await usableOf()
    const started = await startImport(atBench(), { id: chosen.value, mapping, allOrNothing: true })
    if (!started.ok) throw new Error(started.fault.code)
    expect(await started.value.finished).toMatchObject({ state: 'done', taken: 60 })
    expect(await usableOf()).toBe(before + 60)
    expect((await undoImport(atBench(), chosen.value)).ok).toBe(true)
    expect(await usableOf()).toBe(before)
  })

  it('a type of the shop counts from the moment it is written, changed and withdrawn', async () => {
    const tube = await tubeInStock({ designation: '6L6-QH25' }, { sections: [section(69.6, 5.8)] })
    const write = async (id: string | null, version: number, active: boolean, plateWatts: number) => {
      const entry = ownEntry({ limits: { plateVolts: 450, screenVolts: 400, plateWatts, screenWatts: 4 } })
      const kept = await keepOwnType(atBench(), { id, version, entry, active })
      if (!kept.ok) throw new Error(kept.fault.code)
      return kept.value
    }
    const id = await write(null, 0, true, 25)
    const reasons = async () =>
      (await same()).excluded.find(({ candidate }) => candidate.tubeId === tube)?.reasons.map(({ code }) => code)
    expect(await reasons()).toBeUndefined()
    await write(id, (await findOwnType(id))?.version ?? 0, true, 15)
    expect(await reasons()).toEqual(['idle-over-dissipation'])
    await write(id, (await findOwnType(id))?.version ?? 0, false, 15)
    await same()
    await database.tubeTest.deleteMany({ where: { tubeId: tube } })
    await database.tube.delete({ where: { id: tube } })
  })

  it('an amplifier read anew, or in other words, is another one', async () => {
    const [one, other] = [await same(), await same({ circuit: OTHER_CIRCUIT })]
    expect(one.best?.tubes[0]?.predicted).not.toEqual(other.best?.tubes[0]?.predicted)
    await same({ circuit: { ...CIRCUIT, gridStandard: 1.5 } })
  })

  it('days and prices of the shop itself are those of the request', async () => {
    await database.shop.updateMany({ data: { timeZone: 'Asia/Tokyo' } })
    await same()
    await database.shop.updateMany({ data: { timeZone: 'America/New_York', words: 'UK' } })
    await same()
    await database.shop.updateMany({ data: { words: 'US' } })
  })
})

describe('written past the steps', () => {
  it('in raw SQL, and by a foreign key', async () => {
    await database.$executeRawUnsafe(`UPDATE "Tube" SET "price" = "price" + 7 WHERE "family" = '6L6'`)
    expect((await same()).best?.tubes[0]?.candidate.price).toBe(4507)
    await database.$executeRawUnsafe(`UPDATE "TubeTest" SET "plateAmps" = "plateAmps" * 1.01`)
    await same()
    await database
      .$executeRawUnsafe(`INSERT OR REPLACE INTO "Tube" SELECT * FROM "Tube" WHERE "id" = ?`, idOf(2))
      .catch(() => 0)
  })

  it('through another connection to the same file, as another process would', async () => {
    const before = await usableOf()
    const elsewhere = openDatabase(databasePath())
    await elsewhere.tube.update({ where: { id: idOf(6) }, data: { whereabouts: 'scrapped' } })
    expect(await usableOf()).toBe(before - 1)
    await elsewhere.tube.update({ where: { id: idOf(6) }, data: { whereabouts: 'in-stock' } })
    await elsewhere.$disconnect()
    expect(await usableOf()).toBe(before)
  })

  it('in a transaction: asked for in its midst it is not there yet, after its end it is', async () => {
    const before = await usableOf()
    await inTransaction(async (tx) => {
      await createTube(tx, tubeDetails({ mark: 'M-1' }), '6L6', NOTHING_FURTHER)
      await tx.tube.update({ where: { id: idOf(7) }, data: { whereabouts: 'sold' } })
      expect((await fromKept({})).usable).toBe(before)
      expect((await fromKept({ circuit: null })).usable).toBe(before)
    })
    expect(await usableOf()).toBe(before - 1)
    expect((await same()).excluded.map(({ candidate }) => candidate.mark)).toContain('M-1')
    await database.tube.update({ where: { id: idOf(7) }, data: { whereabouts: 'in-stock' } })
    expect(await usableOf()).toBe(before)
  })

  it('and taken back: a transaction rolled back leaves what was', async () => {
    const before = await same()
    const rolledBack = inTransaction(async (tx) => {
      await tx.tube.updateMany({ where: { family: '6L6' }, data: { whereabouts: 'sold' } })
      await fromKept({})
      throw new Error('on second thoughts')
    })
    await expect(rolledBack).rejects.toThrow('on second thoughts')
    expect(await same()).toEqual(before)
  })

  it('by many at once, while many ask', async () => {
    const writes = ids.map((id, at) => save(id, { price: money(4000 + 10 * at) }))
    await Promise.all([
      ...writes,
      ...Array.from({ length: 12 }, (_, at) => fromKept({ circuit: at % 2 ? CIRCUIT : null })),
    ])
    expect((await same()).leastPrice?.price).toBeLessThan(9000)
  })
})

describe('how much is kept', () => {
  const ask = async (bounds: KeepBounds, grid: number, family = '6L6') => {
    const { view } = await asked({})
    await stockToChooseFrom({ ...view, family, circuit: { ...CIRCUIT, gridStandard: grid } }, bounds)
    return keptStock()
  }

  it('stays within its bounds: what was asked for longest ago goes first, and is reckoned again when it is wanted', async () => {
    const { tubes } = keptStock()
    const size = await database.tube.count({ where: { family: '6L6', whereabouts: 'in-stock' } })
    const bounds = { tubes, predicted: 2 * size + 1 }
    for (const grid of [0.1, 0.2, 0.3, 0.4]) {
      expect((await ask(bounds, grid)).predicted).toBeLessThanOrEqual(bounds.predicted)
    }
    expect(keptStock()).toEqual({ tubes, circuits: 2, predicted: 2 * size })
    await same({ circuit: { ...CIRCUIT, gridStandard: 0.1 } })
    expect(await ask({ tubes: 1, predicted: 1 }, 0.1, 'EL34')).toEqual({ tubes: 1, circuits: 1, predicted: 1 })
    await same()
  })
})
