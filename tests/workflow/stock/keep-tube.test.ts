import { describe, expect, it } from 'vitest'
import { money } from '@/lib/domain/money'
import { inTransaction } from '@/lib/store/database'
import { listHistoryOf } from '@/lib/store/history'
import { findTube, findTubeByMark, listTests, markFitted, setHold } from '@/lib/store/tube'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { keepTube } from '@/lib/workflow/stock/keep-tube'
import { moveTube } from '@/lib/workflow/stock/move-tube'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, atCounter, NOW } from '@/tests/support/person-at-work'
import { jobOnFile, openStockedShop, SHOP, testEntry, tubeDetails, tubeInStock } from '@/tests/support/stocked-shop'
import { saveSheet } from '@/tests/support/stocked-sockets'

const database = freshDatabase()
await openStockedShop()

const keepNew = (over = {}, test: ReturnType<typeof testEntry> | null = null, step = atBench()) =>
  keepTube(step, { id: null, version: 0, details: tubeDetails(over), test })

describe('a tube taken into stock', () => {
  it('gets the next free mark, passing over one that was written by hand', async () => {
    await tubeInStock({ mark: 'T-0002' }, null)
    const first = await findTube(await tubeInStock({}, null))
    const second = await findTube(await tubeInStock({}, null))
    expect([first?.mark, second?.mark]).toEqual(['T-0001', 'T-0003'])
  })

  it('is found by its mark however it is typed, with its family, in stock and free', async () => {
    const id = await tubeInStock({ mark: 'l 0147', designation: '6l6wgb', price: money(5200) }, null)
    expect(await findTubeByMark('L-0147')).toMatchObject({
      id,
      family: '6L6',
      price: 5200,
      whereabouts: 'in-stock',
      hold: '',
    })
  })

  it('with its first test carries it, and the history tells both', async () => {
    const id = await tubeInStock()
    expect(await listTests(id)).toMatchObject([
      {
        testedAt: NOW,
        testedBy: 'Ines',
        plateVoltage: 250,
        gridVoltage: -14,
        sections: [{ section: 1, plateCurrent: 0.072 }],
      },
    ])
    const history = await listHistoryOf('tube', id)
    expect(history.map(({ did }) => did).sort()).toEqual(['Taken into stock', 'Tested'])
    const changes = history.flatMap((entry) => entry.changes)
    expect(changes).toContainEqual({ label: 'Price', from: '', to: '$45.00' })
    expect(changes).toContainEqual({ label: 'Test point', from: '', to: '250 / 250 / −14 V' })
    expect(changes).toContainEqual({ label: 'Plate current', from: '', to: '72 mA' })
  })

  it('at a mark that is taken is refused and names the other', async () => {
    await tubeInStock({ mark: 'Q7', designation: 'EL34' }, null)
    const kept = await keepNew({ mark: 'q7' })
    expect(kept.ok ? '' : stepFaultText(kept.fault, SHOP)).toBe(
      'Mark Q7 already stands on another one here, type EL34. Give this one another.',
    )
  })

  it('with an incomplete test leaves nothing behind, not even a used-up mark', async () => {
    const before = await database.tube.count()
    const counter = await database.counter.findUnique({ where: { name: 'tube' } })
    const kept = await keepNew({}, testEntry({ plateVoltage: null }))
    expect(kept).toMatchObject({
      ok: false,
      fault: { code: 'tubes-refused', faults: [{ code: 'point-missing', field: 'plateVolts' }] },
    })
    expect(await database.tube.count()).toBe(before)
    expect(await database.counter.findUnique({ where: { name: 'tube' } })).toEqual(counter)
  })

  it('with a test is bench work; without one anybody may do it', async () => {
    expect(await keepNew({}, testEntry(), atCounter())).toEqual({
      ok: false,
      fault: { code: 'not-your-duty', duty: 'bench-work' },
    })
    expect((await keepNew({}, null, atCounter())).ok).toBe(true)
  })
})

describe('a correction', () => {
  it('keeps the mark when its box is empty, and moves the family with the type', async () => {
    const id = await tubeInStock({ mark: 'K-1' }, null)
    await keepTube(atCounter(), { id, version: 1, details: tubeDetails({ designation: 'EL34' }), test: null })
    expect(await findTube(id)).toMatchObject({ mark: 'K-1', designation: 'EL34', family: 'EL34', version: 2 })
  })

  it('made from an older version is refused and tells what the colleague changed', async () => {
    const id = await tubeInStock({ mark: 'K-2' }, null)
    await keepTube(atBench('Ines'), { id, version: 1, details: tubeDetails({ location: 'Drawer 9' }), test: null })
    const late = await keepTube(atCounter(), { id, version: 1, details: tubeDetails({ price: money(1) }), test: null })
    const changes = [{ label: 'Location', from: 'Drawer 4', to: 'Drawer 9' }]
    expect(late).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Ines', changes } })
    expect(await findTube(id)).toMatchObject({ location: 'Drawer 9', price: 4500 })
  })
})

describe('taking a tube out of stock', () => {
  const sell = (tubeId: string, version = 1) =>
    moveTube(atCounter(), { tubeId, version, to: 'sold', reason: 'Over the counter' })

  it('sells it with the reason, and putting it back undoes that', async () => {
    const id = await tubeInStock({}, null)
    expect((await sell(id)).ok).toBe(true)
    expect(await findTube(id)).toMatchObject({ whereabouts: 'sold', version: 2 })
    expect((await moveTube(atCounter(), { tubeId: id, version: 2, to: 'in-stock', reason: 'Returned' })).ok).toBe(true)
    expect(await findTube(id)).toMatchObject({ whereabouts: 'in-stock', version: 3 })
    const history = await listHistoryOf('tube', id)
    expect(history.flatMap(({ changes }) => changes)).toContainEqual({
      label: 'Reason',
      from: '',
      to: 'Over the counter',
    })
  })

  it('is refused while a job holds it, and names the job; a lapsed hold does not count', async () => {
    const job = await jobOnFile()
    const id = await tubeInStock({ mark: 'H-1' }, null)
    const until = new Date(NOW.getTime() + 1000)
    await inTransaction((tx) => setHold(tx, [id], { hold: 'held', jobId: job.id, quoteId: 'q', until, now: NOW }))
    const sold = await sell(id)
    expect(sold.ok ? '' : stepFaultText(sold.fault, SHOP)).toContain(`H-1 is held for job ${job.number}.`)
    const later = atCounter('Odo', new Date(until.getTime() + 1))
    expect((await moveTube(later, { tubeId: id, version: 1, to: 'sold', reason: 'x' })).ok).toBe(true)
    expect(await findTube(id)).toMatchObject({ whereabouts: 'sold', hold: '', heldForJob: null })
  })

  it('is refused while it sits in an amplifier, and names the socket', async () => {
    const job = await jobOnFile()
    const [socketId = ''] = await saveSheet(job.id)
    const id = await tubeInStock({ mark: 'F-1' }, null)
    const fitting = { tubeId: id, socketId, jobId: job.id, text: '6L6GC, F-1', fittedAt: NOW, fittedBy: 'Ines' }
    expect(await inTransaction((tx) => markFitted(tx, fitting))).toBe(true)
    const sold = await sell(id)
    expect(sold.ok ? '' : stepFaultText(sold.fault, SHOP)).toContain(
      `F-1 sits in V1 of the Corvane Tilt 20, job ${job.number}.`,
    )
  })

  it('is told when it was already done, and when the sheet is an older one', async () => {
    const id = await tubeInStock({ mark: 'S-1' }, null)
    await sell(id)
    expect(await sell(id, 2)).toEqual({ ok: false, fault: { code: 'tube-already', mark: 'S-1', whereabouts: 'sold' } })
    expect(await sell(id, 1)).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Odo' } })
  })
})
