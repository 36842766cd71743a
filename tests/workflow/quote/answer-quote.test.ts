import { beforeAll, describe, expect, it } from 'vitest'
import type { Day } from '@/lib/domain/calendar'
import { findAmpSheet } from '@/lib/store/amp'
import { inTransaction } from '@/lib/store/database'
import { listHistoryOf, listJobHistory } from '@/lib/store/history'
import { listPayments } from '@/lib/store/payment'
import { findAcceptedQuote, listQuotes, saveLineDone } from '@/lib/store/quote'
import { markFitted, releaseHold } from '@/lib/store/tube'
import { reviseQuote } from '@/lib/workflow/quote/revise-quote'
import { undoAnswer } from '@/lib/workflow/quote/undo-answer'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, atCounter, NOW } from '@/tests/support/person-at-work'
import {
  answer,
  choose,
  daysLater,
  done,
  draftWith,
  holdOf,
  jobOf,
  jobOnBench,
  keep,
  quoteOf,
  send,
  shopOnFile,
  written,
  writtenLine,
} from '@/tests/support/quoted-job'
import { openStockedShop, tubeInStock } from '@/tests/support/stocked-shop'

const database = freshDatabase()
beforeAll(() => openStockedShop())

const pair = async () => [await tubeInStock(), await tubeInStock()] as const
/** 27 May 2031, the last day of a quote of 6 May, is over in New York at this instant (less the second endOfDay leaves). */
const LAST = '2031-05-28T03:59:59.000Z'

async function sent(tubeIds: readonly string[] = []): Promise<string> {
  const job = await jobOnBench()
  await draftWith(job, tubeIds)
  done(await send(job))
  return job
}

const undo = async (jobNumber: string, step = atBench()) =>
  undoAnswer(step, await shopOnFile(), { jobNumber, version: (await quoteOf(jobNumber)).version })

describe('sending', () => {
  it('holds the tubes to the end of the last day in the shop’s zone, and the job waits for its answer', async () => {
    const ids = await pair()
    const job = await sent(ids)
    expect(await holdOf(ids[0])).toEqual({ hold: 'held', job, until: LAST })
    expect((await quoteOf(job)).state).toBe('sent')
    expect((await jobOf(job)).state).toBe('waiting-for-answer')
    expect((await listHistoryOf('tube', ids[1]))[0]?.did).toBe(
      `Held for job ${job} by quote ${(await quoteOf(job)).number}, revision 1, until the end of May 27, 2031`,
    )
  })

  it('is refused without lines, below nothing, and with its last day past', async () => {
    const job = await jobOnBench()
    await draftWith(job)
    done(await keep(job, { lines: [] }))
    expect(await send(job)).toMatchObject({ ok: false, fault: { code: 'quote-empty' } })
    done(await keep(job, { lines: [writtenLine({ kind: 'fee', unitPrice: -500 as never })] }))
    expect(await send(job)).toMatchObject({ ok: false, fault: { code: 'quote-below-zero' } })
    done(await keep(job, { lines: [writtenLine()], validUntil: '2031-05-05' as Day }))
    expect(await send(job)).toMatchObject({
      ok: false,
      fault: { code: 'valid-day-past', validUntil: '2031-05-05', today: '2031-05-06' },
    })
    expect((await quoteOf(job)).state).toBe('draft')
  })

  it('of two quotes with the same tube the second is refused, with nothing saved', async () => {
    const ids = await pair()
    const [one, two] = [await jobOnBench(), await jobOnBench()]
    await draftWith(one, ids)
    const others = await pair()
    await draftWith(two, [others[0], ids[0]])
    done(await send(one))
    expect(await send(two)).toMatchObject({
      ok: false,
      fault: { code: 'tube-not-free', position: 'V4', why: 'held', jobNumber: one },
    })
    expect(await holdOf(others[0])).toEqual({ hold: '', job: null, until: null })
    expect((await quoteOf(two)).state).toBe('draft')
    expect((await jobOf(two)).state).toBe('on-bench')
    expect(await database.paper.count({ where: { jobId: (await jobOf(two)).id } })).toBe(0)
  })

  it('two at the same instant: one holds the tube, the other is told who', async () => {
    const ids = await pair()
    const [one, two] = [await jobOnBench(), await jobOnBench()]
    await draftWith(one, ids)
    await draftWith(two, ids)
    const results = await Promise.all([send(one), send(two)])
    expect(results.filter(({ ok }) => ok)).toHaveLength(1)
    expect(results.find(({ ok }) => !ok)).toMatchObject({ fault: { code: 'tube-not-free' } })
  })
})

describe('a yes', () => {
  it('reserves the very tubes without an end, logs who, how and when, and moves the job', async () => {
    const ids = await pair()
    const job = await sent(ids)
    done(await answer(job, {}, daysLater(2, 'Odo')))
    expect(await holdOf(ids[1])).toEqual({ hold: 'reserved', job, until: null })
    expect(await quoteOf(job)).toMatchObject({
      state: 'accepted',
      answer: 'accepted',
      answerBy: 'Mirela Thorn',
      answerHow: 'by phone, 207-555-0177',
      answerTakenBy: 'Odo',
    })
    expect((await jobOf(job)).state).toBe('on-bench')
    const said = (await listJobHistory((await jobOf(job)).id)).map(({ did }) => did)
    expect(said).toContain(
      `Quote ${(await quoteOf(job)).number}, revision 1 over $220.47 accepted by Mirela Thorn, by phone, 207-555-0177`,
    )
  })

  it('with a deposit writes the payment down', async () => {
    const job = await sent()
    done(await answer(job, { deposit: { amount: 6000, how: 'cash' } }, atCounter()))
    expect(await listPayments((await jobOf(job)).id)).toMatchObject([
      { amount: 6000, kind: 'deposit', how: 'cash', takenBy: 'Odo' },
    ])
  })

  it('on the last day in the last minute counts; a minute later it is refused with the day', async () => {
    const [one, two] = [await sent(), await sent()]
    done(await answer(one, {}, atBench('Ines', new Date('2031-05-28T03:59:00Z'))))
    const late = await answer(two, {}, atBench('Ines', new Date('2031-05-28T04:00:00Z')))
    expect(late).toMatchObject({ ok: false, fault: { code: 'validity-over', validUntil: '2031-05-27' } })
    expect(!late.ok && stepFaultText(late.fault, await shopOnFile())).toMatch(
      /was valid until May 27, 2031 .* Revise it/,
    )
    expect((await quoteOf(two)).state).toBe('sent')
  })

  it('given in time and written down later counts, while the tubes are still free', async () => {
    const ids = await pair()
    const job = await sent(ids)
    done(await answer(job, { at: new Date('2031-05-27T22:00:00Z') }, daysLater(30)))
    expect(await holdOf(ids[0])).toMatchObject({ hold: 'reserved', job })
  })

  it('is refused before the quote went out and from the future', async () => {
    const job = await sent()
    expect(await answer(job, { at: new Date(NOW.getTime() - 86_400_000) })).toMatchObject({
      ok: false,
      fault: { code: 'answer-before-quote' },
    })
    expect(await answer(job, { at: new Date(NOW.getTime() + 60_000) })).toMatchObject({
      ok: false,
      fault: { code: 'answer-ahead' },
    })
  })

  it('is refused twice, and on a draft', async () => {
    const job = await sent()
    done(await answer(job))
    expect(await answer(job)).toMatchObject({ ok: false, fault: { code: 'quote-not-waiting', state: 'accepted' } })
    const draft = await jobOnBench()
    await draftWith(draft)
    expect(await answer(draft)).toMatchObject({ ok: false, fault: { code: 'quote-not-out' } })
  })

  it('a tube whose hold was let go and taken by another job: refused with tube and job, nothing saved', async () => {
    const ids = await pair()
    const first = await sent(ids)
    await inTransaction(async (tx) => releaseHold(tx, (await quoteOf(first)).id))
    const second = await sent([ids[1]])
    done(await answer(second))
    const late = await answer(first, { deposit: { amount: 6000, how: 'cash' } })
    expect(late).toMatchObject({
      ok: false,
      fault: { code: 'tube-not-free', position: 'V4', why: 'reserved', jobNumber: second },
    })
    expect(await holdOf(ids[0])).toEqual({ hold: '', job: null, until: null })
    expect((await quoteOf(first)).state).toBe('sent')
    expect((await jobOf(first)).state).toBe('waiting-for-answer')
    expect(await listPayments((await jobOf(first)).id)).toEqual([])
  })

  it('two yeses to quotes with the same tube at the same instant: one only', async () => {
    const ids = await pair()
    const first = await sent(ids)
    await inTransaction(async (tx) => releaseHold(tx, (await quoteOf(first)).id))
    const second = await sent(ids)
    await inTransaction(async (tx) => releaseHold(tx, (await quoteOf(second)).id))
    const results = await Promise.all([answer(first), answer(second)])
    expect(results.filter(({ ok }) => ok)).toHaveLength(1)
    const holders = await Promise.all(ids.map(holdOf))
    expect(new Set(holders.map(({ job }) => job)).size).toBe(1)
    expect(holders[0]?.hold).toBe('reserved')
  })
})

describe('a hold that has run out', () => {
  it('frees the tube for another job’s quote', async () => {
    const ids = await pair()
    await sent(ids)
    const later = daysLater(22)
    const other = await jobOnBench()
    await draftWith(other, ids, later)
    done(await send(other, 'hand-over', later))
    expect(await holdOf(ids[0])).toMatchObject({ hold: 'held', job: other })
  })

  it('a day before its end it does not', async () => {
    const ids = await pair()
    const job = await sent(ids)
    expect(await choose(await jobOnBench(), ids, daysLater(20))).toMatchObject({ ok: false, fault: { jobNumber: job } })
  })
})

describe('a no', () => {
  it('lets the tubes go, notes the declined work, and the job goes back to the bench', async () => {
    const ids = await pair()
    const job = await sent(ids)
    done(await answer(job, { answer: 'declined' }))
    expect(await holdOf(ids[0])).toEqual({ hold: '', job: null, until: null })
    expect((await quoteOf(job)).state).toBe('declined')
    expect(await jobOf(job)).toMatchObject({ state: 'on-bench' })
    expect((await jobOf(job)).declinedWork).toMatch(
      /^Quote Q\d+, revision 1, declined May 6, 2031 by Mirela Thorn: Set idle current; 6L6GC, mark T-\d+ for V3; 6L6GC, mark T-\d+ for V4$/,
    )
  })

  it('after the last day is still written down', async () => {
    const job = await sent()
    done(await answer(job, { answer: 'declined' }, daysLater(40)))
    expect((await quoteOf(job)).state).toBe('declined')
  })
})

describe('a revision', () => {
  const revise = async (job: string, step = atBench()) => reviseQuote(step, await shopOnFile(), job)

  it('has the same number and the next revision; the old one is superseded and its holds go over', async () => {
    const ids = await pair()
    const job = await sent(ids)
    done(await revise(job, daysLater(3)))
    const [draft, old] = await listQuotes((await jobOf(job)).id)
    expect([draft?.number, draft?.revision, draft?.state, draft?.validUntil]).toEqual([
      old?.number,
      2,
      'draft',
      '2031-05-30',
    ])
    expect(old?.state).toBe('superseded')
    expect(draft?.lines.map(({ text }) => text)).toEqual(old?.lines.map(({ text }) => text))
    // Not longer than the customer was promised.
    expect(await holdOf(ids[0])).toEqual({ hold: 'held', job, until: LAST })
    expect(await answer(job)).toMatchObject({ ok: false, fault: { code: 'quote-not-out' } })
  })

  it('a tube taken off the revision is free at once; sending it holds the other to the new day', async () => {
    const ids = await pair()
    const job = await sent(ids)
    done(await revise(job, daysLater(3)))
    done(await keep(job, { tubes: (await written(job)).tubes.slice(0, 1) }))
    expect(await holdOf(ids[1])).toEqual({ hold: '', job: null, until: null })
    done(await send(job, 'hand-over', daysLater(3)))
    expect(await holdOf(ids[0])).toMatchObject({ hold: 'held', until: '2031-05-31T03:59:59.000Z' })
  })

  it('pressed twice gives one draft', async () => {
    const job = await sent()
    expect(done(await revise(job))).toBe(done(await revise(job)))
  })

  it('of a lapsed quote can be accepted', async () => {
    const ids = await pair()
    const job = await sent(ids)
    const later = daysLater(30)
    done(await revise(job, later))
    done(await send(job, 'hand-over', later))
    done(await answer(job, {}, later))
    expect(await holdOf(ids[0])).toMatchObject({ hold: 'reserved', job })
  })

  it('of an accepted quote leaves it standing until the next yes; tubes not on the new one are then free', async () => {
    const ids = await pair()
    const job = await sent(ids)
    done(await answer(job))
    const { id: jobId } = await jobOf(job)
    const accepted = await findAcceptedQuote(jobId)
    const labour = accepted?.lines[0]?.id ?? ''
    await inTransaction((tx) => saveLineDone(tx, labour, { at: NOW, by: 'Ines' }))
    done(await revise(job))
    done(await keep(job, { tubes: (await written(job)).tubes.slice(0, 1) }))
    done(await send(job))
    expect((await findAcceptedQuote(jobId))?.revision).toBe(1)
    expect(await holdOf(ids[0])).toEqual({ hold: 'reserved', job, until: null })
    done(await answer(job))
    const standing = await findAcceptedQuote(jobId)
    expect(standing?.revision).toBe(2)
    expect(standing?.lines[0]).toMatchObject({ text: 'Set idle current', doneBy: 'Ines' })
    expect(await holdOf(ids[0])).toMatchObject({ hold: 'reserved' })
    expect(await holdOf(ids[1])).toEqual({ hold: '', job: null, until: null })
  })

  it('declined leaves the accepted one and its tubes as they were', async () => {
    const ids = await pair()
    const job = await sent(ids)
    done(await answer(job))
    done(await revise(job))
    done(await keep(job, { lines: [writtenLine(), writtenLine({ text: 'New reverb tank' })] }))
    done(await send(job))
    done(await answer(job, { answer: 'declined' }))
    expect((await findAcceptedQuote((await jobOf(job)).id))?.revision).toBe(1)
    expect(await holdOf(ids[1])).toEqual({ hold: 'reserved', job, until: null })
  })
})

describe('an answer taken back', () => {
  it('a yes: the quote waits again, its tubes held to its last day', async () => {
    const ids = await pair()
    const job = await sent(ids)
    done(await answer(job))
    expect(done(await undo(job))).toEqual([])
    expect(await quoteOf(job)).toMatchObject({ state: 'sent', answer: '', answerBy: '', answeredAt: null })
    expect(await holdOf(ids[0])).toEqual({ hold: 'held', job, until: LAST })
    expect((await jobOf(job)).state).toBe('waiting-for-answer')
  })

  it('a no: the declined line goes, and a tube taken meanwhile is named', async () => {
    const ids = await pair()
    const job = await sent(ids)
    done(await answer(job, { answer: 'declined' }))
    const other = await sent([ids[1]])
    const lost = done(await undo(job))
    expect(lost).toHaveLength(1)
    expect((await jobOf(job)).declinedWork).toBe('')
    expect(await holdOf(ids[0])).toMatchObject({ hold: 'held', job })
    expect(await holdOf(ids[1])).toMatchObject({ hold: 'held', job: other })
  })

  it('is refused once a tube was fitted', async () => {
    const ids = await pair()
    const job = await sent(ids)
    done(await answer(job))
    const { id: jobId, ampId } = await jobOf(job)
    const socketId = (await findAmpSheet(ampId))?.sockets.find(({ position }) => position === 'V3')?.id ?? ''
    const fitted = { tubeId: ids[0], socketId, jobId, text: '6L6GC', fittedAt: NOW, fittedBy: 'Ines' }
    expect(await inTransaction((tx) => markFitted(tx, fitted))).toBe(true)
    expect(await undo(job)).toMatchObject({ ok: false, fault: { code: 'work-begun', fitted: 1, done: 0 } })
    expect((await quoteOf(job)).state).toBe('accepted')
  })

  it('to a revision gives the earlier yes its standing and its tubes back', async () => {
    const ids = await pair()
    const job = await sent(ids)
    done(await answer(job))
    done(await reviseQuote(atBench(), await shopOnFile(), job))
    done(await keep(job, { tubes: [] }))
    done(await send(job))
    done(await answer(job))
    expect(await holdOf(ids[0])).toMatchObject({ hold: '' })
    done(await undo(job))
    expect((await findAcceptedQuote((await jobOf(job)).id))?.revision).toBe(1)
    expect(await holdOf(ids[0])).toEqual({ hold: 'reserved', job, until: null })
  })

  it('is refused when there is none', async () => {
    expect(await undo(await sent())).toMatchObject({ ok: false, fault: { code: 'quote-not-answered' } })
  })
})
