import { beforeAll, describe, expect, it } from 'vitest'
import { money } from '@/lib/domain/money'
import type { PartDetails } from '@/lib/domain/stock/part'
import { listHistoryOf, listJobHistory } from '@/lib/store/history'
import { findStockedPart, listDrawnBy, listDrawsOf } from '@/lib/store/part-draw'
import { returnUnrepaired } from '@/lib/workflow/handover/return-unrepaired'
import { reviseQuote } from '@/lib/workflow/quote/revise-quote'
import { undoAnswer } from '@/lib/workflow/quote/undo-answer'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { changePartCount, keepPart } from '@/lib/workflow/stock/keep-part'
import { exportTable } from '@/lib/workflow/tables/export-table'
import { tickLine } from '@/lib/workflow/work/do-work'
import { giveBackParts } from '@/lib/workflow/work/give-back-parts'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, NOW } from '@/tests/support/person-at-work'
import {
  answer,
  daysLater,
  done,
  draftWith,
  jobOf,
  jobOnBench,
  keep,
  quoteOf,
  send,
  shopOnFile,
  written,
  writtenLine,
} from '@/tests/support/quoted-job'
import { openStockedShop } from '@/tests/support/stocked-shop'

const database = freshDatabase()
beforeAll(() => openStockedShop())

const FUSE: PartDetails = {
  ...{ name: 'Fuse', kind: 'fuse', value: 'T 2 A', count: 0, cost: null, price: money(80), reorderLevel: null },
  location: 'Rack 2',
}

const partWith = async (count: number, name = 'Fuse') =>
  done(await keepPart(atBench(), { id: null, version: 0, details: { ...FUSE, name, count } }))

const partLine = (partId: string, pieces = 1, text = 'Fuse, T 2 A') =>
  writtenLine({ kind: 'part', text, thousandths: pieces * 1000, unit: 'pc', unitPrice: money(80), partId })

type Drawn = { readonly partId: string; readonly pieces?: number; readonly text?: string }

async function sentWith(...drawn: readonly Drawn[]): Promise<string> {
  const job = await jobOnBench()
  await draftWith(job)
  const lines = drawn.map(({ partId, pieces, text }) => partLine(partId, pieces, text))
  done(await keep(job, { lines: [writtenLine(), ...lines] }))
  done(await send(job))
  return job
}

async function acceptedWith(...drawn: readonly Drawn[]): Promise<string> {
  const job = await sentWith(...drawn)
  done(await answer(job))
  return job
}

async function drawer(partId: string) {
  const part = await findStockedPart(partId)
  if (!part) throw new Error(`No part ${partId}`)
  const { aside, free, short } = part.drawer
  return [part.count, aside, free, short]
}

async function tick(jobNumber: string, partId: string, isDone = true) {
  const line = (await quoteOf(jobNumber)).lines.find((each) => each.partId === partId)
  if (!line) throw new Error(`Job ${jobNumber} has no line of ${partId}`)
  return tickLine(atBench(), { jobNumber, lineId: line.id, done: isDone })
}

const undo = async (jobNumber: string) =>
  undoAnswer(atBench(), await shopOnFile(), { jobNumber, version: (await quoteOf(jobNumber)).version })

async function revisedTo(jobNumber: string, ...drawn: readonly Drawn[]) {
  done(await reviseQuote(atBench(), await shopOnFile(), jobNumber))
  const lines = drawn.map(({ partId, pieces, text }) => partLine(partId, pieces, text))
  done(await keep(jobNumber, { lines: [writtenLine(), ...lines] }))
  done(await send(jobNumber, 'hand-over', daysLater(1)))
  done(await answer(jobNumber, {}, daysLater(2)))
}

async function returned(jobNumber: string, partsBack: boolean) {
  const end = { itemsNote: '', owesNote: '', reason: 'Not worth it', charge: money(0), how: '' } as const
  const collector = { name: 'Mirela Thorn', isOwner: true, identity: '' }
  return returnUnrepaired(atBench(), await shopOnFile(), { jobNumber, collector, partsBack, ...end })
}

const told = async (partId: string) => (await listHistoryOf('part', partId)).map(({ did }) => did)

describe('a part on a quote', () => {
  it('is not touched by a draft or a sent quote', async () => {
    const partId = await partWith(5)
    await sentWith({ partId, pieces: 2 })
    expect(await drawer(partId)).toEqual([5, 0, 5, 0])
  })

  it('is set aside by the yes, and taken when its line is ticked: 5, then 2 aside, then 3 in the drawer', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, pieces: 2 })
    expect(await drawer(partId)).toEqual([5, 2, 3, 0])
    done(await tick(job, partId))
    expect(await drawer(partId)).toEqual([3, 0, 3, 0])
    expect(await listDrawsOf(partId)).toMatchObject([{ jobNumber: job, count: 2, by: 'Ines' }])
    expect(await told(partId)).toEqual([
      `2 taken out of the drawer for job ${job}, ticked on the work order: Fuse, T 2 A`,
      `2 set aside for job ${job}, accepted quote ${(await quoteOf(job)).number}, revision 1: Fuse, T 2 A`,
      'Part written down',
    ])
    expect((await listJobHistory((await jobOf(job)).id)).map(({ did }) => did)).toContain(
      `2 taken out of the drawer for job ${job}, ticked on the work order: Fuse, T 2 A`,
    )
  })

  it('ticked twice is taken once, and unticked goes back', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, pieces: 2 })
    done(await tick(job, partId))
    done(await tick(job, partId))
    expect((await drawer(partId))[0]).toBe(3)
    done(await tick(job, partId, false))
    expect(await drawer(partId)).toEqual([5, 2, 3, 0])
    expect(await listDrawsOf(partId)).toEqual([])
  })

  it('on two lines of one quote is taken line by line', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, text: 'Mains fuse' }, { partId, pieces: 2, text: 'HT fuse' })
    const [one, two] = (await quoteOf(job)).lines.filter((line) => line.partId === partId)
    done(await tickLine(atBench(), { jobNumber: job, lineId: two?.id ?? '', done: true }))
    expect(await drawer(partId)).toEqual([3, 1, 2, 0])
    done(await tickLine(atBench(), { jobNumber: job, lineId: one?.id ?? '', done: true }))
    expect(await drawer(partId)).toEqual([2, 0, 2, 0])
  })

  it('that is not there blocks no quote; ticking it is refused with what is missing, and nothing is saved', async () => {
    const partId = await partWith(1)
    const job = await acceptedWith({ partId, pieces: 2 })
    expect(await drawer(partId)).toEqual([1, 1, 0, 1])
    const ticked = await tick(job, partId)
    expect(ticked).toMatchObject({ ok: false, fault: { code: 'part-not-there', needed: 2, there: 1, inDrawer: 1 } })
    expect(await drawer(partId)).toEqual([1, 1, 0, 1])
    expect((await quoteOf(job)).lines.every(({ doneAt }) => doneAt === null)).toBe(true)
    if (!ticked.ok)
      expect(stepFaultText(ticked.fault, await shopOnFile())).toBe(
        'Fuse, T 2 A: 2 needed, 1 free for this job; 1 in the drawer. Nothing was saved. Put in what came, or correct the count of the part, and tick it then.',
      )
    done(await changePartCount(atBench(), { partId, by: 1, reason: 'Delivery' }))
    done(await tick(job, partId))
    expect(await drawer(partId)).toEqual([0, 0, 0, 0])
  })

  it('that is not of the drawers is refused when the quote is kept', async () => {
    const job = await jobOnBench()
    await draftWith(job)
    expect(await keep(job, { lines: [partLine('no-such-part')] })).toMatchObject({
      ok: false,
      fault: { code: 'not-found' },
    })
  })

  it('as a labour line draws nothing, whatever the form says', async () => {
    const partId = await partWith(5)
    const job = await jobOnBench()
    await draftWith(job)
    done(await keep(job, { lines: [{ ...partLine(partId), kind: 'labour' }] }))
    expect((await quoteOf(job)).lines[0]?.partId).toBeNull()
  })

  it('stays on the line when the quote is kept again and revised', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId })
    done(await reviseQuote(atBench(), await shopOnFile(), job))
    const { lines } = await written(job)
    done(await keep(job, { lines }))
    expect((await quoteOf(job)).lines.map((line) => line.partId)).toEqual([null, partId])
  })
})

describe('two jobs for the last part', () => {
  it('whose yes comes at the same instant: one has it set aside, the other is short of 1', async () => {
    const partId = await partWith(1)
    const [one, two] = [await sentWith({ partId }), await sentWith({ partId })]
    const answered = await Promise.all([answer(one), answer(two)])
    expect(answered.every(({ ok }) => ok)).toBe(true)
    expect(await drawer(partId)).toEqual([1, 1, 0, 1])
  })

  it('ticked at the same instant: one takes it, the other is told which job it is set aside for', async () => {
    const partId = await partWith(1)
    const [one, two] = [await acceptedWith({ partId }), await acceptedWith({ partId })]
    const results = await Promise.all([tick(one, partId), tick(two, partId)])
    expect(results.filter(({ ok }) => ok)).toHaveLength(1)
    expect(results.find(({ ok }) => !ok)).toMatchObject({ fault: { code: 'part-not-there', needed: 1, there: 0 } })
    expect((await drawer(partId))[0]).toBe(0)
  })

  it('the later one cannot take what is set aside for the earlier', async () => {
    const partId = await partWith(1)
    const early = await acceptedWith({ partId })
    const late = await sentWith({ partId })
    done(await answer(late, {}, daysLater(1)))
    expect(await tick(late, partId)).toMatchObject({
      ok: false,
      fault: { code: 'part-not-there', there: 0, inDrawer: 1, asideFor: [early] },
    })
    done(await tick(early, partId))
  })
})

describe('given back', () => {
  it('by taking the answer back: nothing is set aside any more', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, pieces: 2 })
    done(await undo(job))
    expect(await drawer(partId)).toEqual([5, 0, 5, 0])
    expect((await told(partId))[0]).toBe(`No longer set aside for job ${job}, an answer was taken back: Fuse, T 2 A`)
  })

  it('not while its line is ticked: the answer then stays, and so does the count', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, pieces: 2 })
    done(await tickLineLater(job, partId))
    expect(await undo(job)).toMatchObject({ ok: false, fault: { code: 'work-begun', done: 1 } })
    expect((await drawer(partId))[0]).toBe(3)
  })

  it('by a revision without it: free again once the customer said yes to that', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, pieces: 2 })
    await revisedTo(job)
    expect(await drawer(partId)).toEqual([5, 0, 5, 0])
  })

  it('by a revision that lists fewer, and set aside anew by one that lists more', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, pieces: 3 })
    await revisedTo(job, { partId, pieces: 1 })
    expect(await drawer(partId)).toEqual([5, 1, 4, 0])
    await revisedTo(job, { partId, pieces: 4 })
    expect(await drawer(partId)).toEqual([5, 4, 1, 0])
  })

  it('a part taken already stays taken through a revision, its tick with it', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, pieces: 2 })
    done(await tick(job, partId))
    await revisedTo(job, { partId, pieces: 2 })
    expect(await drawer(partId)).toEqual([3, 0, 3, 0])
    expect((await quoteOf(job)).lines.find((line) => line.partId === partId)?.doneAt).not.toBeNull()
  })

  it('2 taken and 3 listed by the revision: 1 more is set aside, and the line is open until it is taken', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, pieces: 2 })
    done(await tick(job, partId))
    await revisedTo(job, { partId, pieces: 3 })
    expect(await drawer(partId)).toEqual([3, 1, 2, 0])
    done(await tick(job, partId))
    expect(await drawer(partId)).toEqual([2, 0, 2, 0])
  })

  it('a part taken and dropped by the revision is left over, until somebody puts it back', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, pieces: 2 })
    done(await tick(job, partId))
    await revisedTo(job)
    expect((await drawer(partId))[0]).toBe(3)
    expect([...(await listDrawnBy((await jobOf(job)).id))]).toEqual([[partId, 2]])
    done(await giveBackParts(atBench(), { jobNumber: job, partId }))
    expect(await drawer(partId)).toEqual([5, 0, 5, 0])
    done(await giveBackParts(atBench(), { jobNumber: job, partId }))
    expect((await drawer(partId))[0]).toBe(5)
  })

  it('taking the answer to a revision back sets aside what the yes before it listed', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, pieces: 2 })
    await revisedTo(job)
    done(await undo(job))
    expect(await drawer(partId)).toEqual([5, 2, 3, 0])
  })

  it('by a return unrepaired: what was set aside is free; what was taken goes along, unless it came out again', async () => {
    const [one, two] = [await partWith(5, 'Fuse one'), await partWith(5, 'Fuse two')]
    const goesAlong = await acceptedWith({ partId: one }, { partId: two, pieces: 2, text: 'Second' })
    done(await tick(goesAlong, one))
    done(await returned(goesAlong, false))
    expect(await drawer(one)).toEqual([4, 0, 4, 0])
    expect(await drawer(two)).toEqual([5, 0, 5, 0])
    expect((await told(two))[0]).toBe(`No longer set aside for job ${goesAlong}, returned unrepaired: Fuse two, T 2 A`)
    const cameOut = await acceptedWith({ partId: one })
    done(await tick(cameOut, one))
    expect((await drawer(one))[0]).toBe(3)
    done(await returned(cameOut, true))
    expect(await drawer(one)).toEqual([4, 0, 4, 0])
    expect((await listDrawsOf(one)).map(({ jobNumber }) => jobNumber)).toEqual([goesAlong])
  })
})

describe('the count', () => {
  it('corrected on a form opened before a part was taken is refused as late, not overwritten', async () => {
    const partId = await partWith(5)
    const job = await acceptedWith({ partId, pieces: 2 })
    const opened = await findStockedPart(partId)
    done(await tick(job, partId))
    const late = await keepPart(atBench('Odo'), {
      id: partId,
      version: opened?.version ?? 0,
      details: { ...FUSE, count: 5 },
    })
    expect(late).toMatchObject({
      ok: false,
      fault: { code: 'stale', changes: [{ label: 'Count', from: '5', to: '3' }] },
    })
    expect((await drawer(partId))[0]).toBe(3)
  })

  it('lowered by hand below what is set aside makes the job short, and nothing falls below nothing', async () => {
    const partId = await partWith(3)
    await acceptedWith({ partId, pieces: 2 })
    done(await changePartCount(atBench(), { partId, by: -2, reason: 'Recount' }))
    expect(await drawer(partId)).toEqual([1, 1, 0, 1])
    expect(await changePartCount(atBench(), { partId, by: -2, reason: 'Recount' })).toMatchObject({ ok: false })
    expect(await database.part.count({ where: { count: { lt: 0 } } })).toBe(0)
    expect(await database.partDraw.count({ where: { count: { lt: 0 } } })).toBe(0)
  })

  it('is exported with what is set aside, free and short', async () => {
    const partId = await partWith(3, 'Exported fuse')
    await acceptedWith({ partId, pieces: 2 })
    let csv = ''
    for await (const piece of exportTable('parts', await shopOnFile())) csv += piece
    const rows = csv.replace('\ufeff', '').split('\r\n')
    expect(rows[0]).toBe('Name,Kind,Value,Count,Set aside for jobs,Free,Short for jobs,Reorder at,Price,Paid,Location')
    expect(rows.find((row) => row.startsWith('Exported fuse'))).toBe('Exported fuse,fuse,T 2 A,3,2,1,0,,0.80,,Rack 2')
  })
})

/** The undo counts work since the answer, which was noted at NOW. */
async function tickLineLater(jobNumber: string, partId: string) {
  const line = (await quoteOf(jobNumber)).lines.find((each) => each.partId === partId)
  const later = atBench('Ines', new Date(NOW.getTime() + 60_000))
  return tickLine(later, { jobNumber, lineId: line?.id ?? '', done: true })
}
