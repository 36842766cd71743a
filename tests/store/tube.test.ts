import { beforeEach, describe, expect, it } from 'vitest'
import { inTransaction } from '@/lib/store/database'
import {
  findTube,
  listFittingsOf,
  listStockForFamily,
  listTubes,
  markFitted,
  releaseHold,
  releaseHoldsOfJob,
  type StockView,
  setHold,
} from '@/lib/store/tube'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { moveTube } from '@/lib/workflow/stock/move-tube'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, NOW } from '@/tests/support/person-at-work'
import { jobOnFile, openStockedShop, section, testEntry, tubeInStock } from '@/tests/support/stocked-shop'
import { saveSheet } from '@/tests/support/stocked-sockets'

const database = freshDatabase()
await openStockedShop()
const [mine, other] = [await jobOnFile(), await jobOnFile()]

beforeEach(async () => {
  await database.fitting.deleteMany()
  await database.tube.deleteMany()
})

const LATER = new Date(NOW.getTime() + 3_600_000)

const hold = (ids: readonly string[], jobId = mine.id, over = {}) =>
  inTransaction((tx) =>
    setHold(tx, ids, { hold: 'held', jobId, quoteId: `quote of ${jobId}`, until: LATER, now: NOW, ...over }),
  )

const marks = async (view: StockView, search = '', now = NOW) =>
  (await listTubes({ view, search, now })).tubes.map(({ tube }) => tube.mark)

describe('a hold', () => {
  it('names the job by its number, and its own job may take it over', async () => {
    const id = await tubeInStock()
    expect(await hold([id])).toBe(true)
    expect(await findTube(id)).toMatchObject({
      hold: 'held',
      heldForJob: mine.id,
      heldForJobNumber: mine.number,
      heldUntil: LATER,
    })
    expect(await hold([id], mine.id, { hold: 'reserved', quoteId: 'second', until: null })).toBe(true)
    expect(await findTube(id)).toMatchObject({ hold: 'reserved', heldByQuoteId: 'second', heldUntil: null })
  })

  it('is refused when one of the set is held for another job', async () => {
    const [a, b] = [await tubeInStock(), await tubeInStock()]
    await hold([b], other.id)
    expect(await hold([a, b])).toBe(false)
    expect(await findTube(b)).toMatchObject({ heldForJob: other.id })
  })

  it('is refused for a tube that was sold, and for one that is not there', async () => {
    const id = await tubeInStock()
    await moveTube(atBench(), { tubeId: id, version: 1, to: 'sold', reason: 'x' })
    expect(await hold([id])).toBe(false)
    expect(await hold(['nobody'])).toBe(false)
  })

  it('that has lapsed is free for another job', async () => {
    const id = await tubeInStock()
    await hold([id])
    expect(await hold([id], other.id, { now: LATER })).toBe(false)
    expect(await hold([id], other.id, { now: new Date(LATER.getTime() + 1) })).toBe(true)
  })

  it('of twenty asked for at once is given to one job alone', async () => {
    const ids = [await tubeInStock(), await tubeInStock()]
    const asked = await Promise.all(
      Array.from({ length: 20 }, (_, number) => hold(ids, number % 2 ? mine.id : other.id, { quoteId: 'q' })),
    )
    const holders = new Set((await Promise.all(ids.map((id) => findTube(id)))).map((tube) => tube?.heldForJob))
    expect(holders.size).toBe(1)
    expect(asked.filter(Boolean)).toHaveLength(10)
  })

  it('is let go by its quote or with its job, and only by them', async () => {
    const [a, b] = [await tubeInStock(), await tubeInStock()]
    await hold([a])
    await hold([b], other.id)
    expect(await inTransaction((tx) => releaseHold(tx, `quote of ${mine.id}`))).toBe(1)
    expect(await findTube(a)).toMatchObject({ hold: '', heldForJob: null, heldByQuoteId: null, heldUntil: null })
    expect(await findTube(b)).toMatchObject({ hold: 'held' })
    expect(await inTransaction((tx) => releaseHoldsOfJob(tx, other.id))).toBe(1)
    expect(await findTube(b)).toMatchObject({ hold: '' })
  })
})

describe('fitting', () => {
  it('takes the tube out of stock, ends its hold, and ends the stay of the one before it', async () => {
    const [socketId = ''] = await saveSheet(mine.id)
    const [first, second] = [await tubeInStock(), await tubeInStock()]
    await hold([first])
    const seat = (tubeId: string, fittedAt: Date) =>
      inTransaction((tx) =>
        markFitted(tx, { tubeId, socketId, jobId: mine.id, text: '6L6GC', fittedAt, fittedBy: 'Ines' }),
      )
    expect(await seat(first, NOW)).toBe(true)
    expect(await findTube(first)).toMatchObject({ whereabouts: 'fitted', hold: '', heldForJob: null })
    expect(await seat(first, LATER)).toBe(false)
    expect(await seat(second, LATER)).toBe(true)
    expect(await listFittingsOf(first)).toMatchObject([
      { position: 'V1', jobNumber: mine.number, fittedAt: NOW, removedAt: LATER },
    ])
    expect(await listFittingsOf(second)).toMatchObject([{ removedAt: null }])
    await database.socket.deleteMany({ where: { fittings: { none: {} } } })
  })

  it('is refused for a tube held elsewhere', async () => {
    const socketId = (await database.socket.findFirst())?.id ?? (await saveSheet(other.id))[0] ?? ''
    const id = await tubeInStock()
    await hold([id], other.id)
    const fitted = await inTransaction((tx) =>
      markFitted(tx, { tubeId: id, socketId, jobId: mine.id, text: '', fittedAt: NOW, fittedBy: 'Ines' }),
    )
    expect(fitted).toBe(false)
    expect(await listFittingsOf(id)).toEqual([])
  })
})

describe('the list', () => {
  it('shows what is asked for: in stock, free, held, untested, out', async () => {
    const [a, b] = [await tubeInStock({ mark: 'A1' }), await tubeInStock({ mark: 'B1' })]
    await tubeInStock({ mark: 'C1' }, null)
    await tubeInStock({ mark: 'D1' }, { shorts: true, sections: [section(null)] })
    await hold([a])
    await moveTube(atBench(), { tubeId: b, version: 1, to: 'scrapped', reason: 'cracked' })
    expect(await marks('in-stock')).toEqual(['A1', 'C1', 'D1'])
    expect(await marks('free')).toEqual(['C1', 'D1'])
    expect(await marks('held')).toEqual(['A1'])
    expect(await marks('held', '', new Date(LATER.getTime() + 1))).toEqual([])
    expect(await marks('untested')).toEqual(['C1', 'D1'])
    expect(await marks('out')).toEqual(['B1'])
    expect(await marks('all')).toEqual(['A1', 'B1', 'C1', 'D1'])
  })

  it('is searched by mark with or without hyphen, type, family and location, all words at once', async () => {
    await tubeInStock({ mark: 'L-0147', designation: '6L6WGB', location: 'Drawer 4' }, null)
    await tubeInStock({ mark: 'L-0148', designation: 'EL84', location: 'Schrank Süd' }, null)
    expect(await marks('all', 'l0147')).toEqual(['L-0147'])
    expect(await marks('all', '6l6 drawer')).toEqual(['L-0147'])
    expect(await marks('all', 'SUD')).toEqual(['L-0148'])
    expect(await marks('all', 'el84 drawer')).toEqual([])
  })

  it('counts and values everything found, and shows a hundred at a time', async () => {
    const rows = Array.from({ length: 130 }, (_, number) => ({
      ...{ mark: `P${1000 + number}`, designation: 'EL84', family: 'EL84', condition: 'pull', price: 1500 },
      ...{ whereabouts: 'in-stock', search: 'el84' },
    }))
    await database.tube.createMany({ data: rows })
    const { tubes, ...rest } = await listTubes({ page: 2, now: NOW })
    expect(rest).toEqual({ count: 130, value: 195_000, page: 2, pages: 2 })
    expect(tubes).toHaveLength(30)
    expect((await listTubes({ page: 99, now: NOW })).page).toBe(2)
  })
})

it('2,000 tubes of a family with two tests each are read each with its latest', async () => {
  const ids = Array.from({ length: 2000 }, (_, number) => `bulk-${number}`)
  await database.tube.createMany({
    data: ids.map((id) => ({
      ...{ id, mark: id.toUpperCase(), designation: '6L6GC', family: '6L6', condition: 'used-tested', price: 4000 },
      ...{ whereabouts: 'in-stock', search: '' },
    })),
  })
  const point = {
    plateVolts: 250,
    screenVolts: 250,
    gridVolts: -14,
    testedBy: 'Ines',
    instrumentName: 'Bench tester 1',
  }
  await database.tubeTest.createMany({
    data: ids.flatMap((tubeId, number) => [
      { ...point, tubeId, testedAt: new Date('2031-01-01'), plateAmps: 0.05 },
      { ...point, tubeId, testedAt: new Date('2031-03-01'), plateAmps: (60 + (number % 40)) / 1000 },
    ]),
  })
  await addTubeTest(atBench(), { tubeId: 'bulk-7', test: testEntry({ sections: [section(71, 6)] }), reject: false })
  const stock = await listStockForFamily('6L6')
  expect(stock).toHaveLength(2000)
  const readOf = new Map(stock.map(({ tube, test }) => [tube.id, test?.sections[0]?.plateCurrent]))
  expect([readOf.get('bulk-7'), readOf.get('bulk-8'), readOf.get('bulk-41')]).toEqual([0.071, 0.068, 0.061])
})
