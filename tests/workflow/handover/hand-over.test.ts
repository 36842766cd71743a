import { beforeAll, describe, expect, it } from 'vitest'
import type { Paper } from '@/lib/documents/paper'
import { renderPdf } from '@/lib/documents/pdf'
import { money } from '@/lib/domain/money'
import { db } from '@/lib/store/database'
import { listHistoryOf, listJobHistory } from '@/lib/store/history'
import { findPaper, listPapers } from '@/lib/store/paper'
import { findStockedPart, listDrawsOf } from '@/lib/store/part-draw'
import { listPayments } from '@/lib/store/payment'
import { findAcceptedQuote } from '@/lib/store/quote'
import { findTube } from '@/lib/store/tube'
import { giveBackItem } from '@/lib/workflow/counter/give-back-item'
import { keepJob } from '@/lib/workflow/counter/keep-job'
import { type HandOver, handOver } from '@/lib/workflow/handover/hand-over'
import { jobAccount } from '@/lib/workflow/handover/job-account'
import { pickupPreview } from '@/lib/workflow/handover/pickup-facts'
import { type ReturnUnrepaired, returnUnrepaired } from '@/lib/workflow/handover/return-unrepaired'
import { takeBackHandOver } from '@/lib/workflow/handover/take-back-hand-over'
import { takePayment } from '@/lib/workflow/handover/take-payment'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { keepPart } from '@/lib/workflow/stock/keep-part'
import { finishWork, tickLine } from '@/lib/workflow/work/do-work'
import { releaseJob } from '@/lib/workflow/work/release-job'
import { freshDatabase } from '@/tests/support/fresh-database'
import { readPdf, squeezed } from '@/tests/support/pdf-text'
import { atCounter } from '@/tests/support/person-at-work'
import {
  answer,
  done,
  draftWith,
  holdOf,
  jobOf,
  jobOnBench,
  send,
  shopOnFile,
  totalOf,
} from '@/tests/support/quoted-job'
import { openStockedShop, tubeInStock } from '@/tests/support/stocked-shop'
import { acceptedJob, fitBoth, later, read, signAll, signed } from '@/tests/support/tested-job'

freshDatabase()
beforeAll(() => openStockedShop())

const counter = (minutes = 100) => atCounter('Odo', later(minutes).now)
const OWNER = { name: 'Mirela Thorn', isOwner: true, identity: '' } as const

async function withItems(number: string, labels: readonly string[]): Promise<void> {
  const { version, fault, faultSettings, spendingLimit, promisedOn } = await jobOf(number)
  const items = labels.map((label) => ({ count: 1, label }))
  const intake = { fault, faultSettings, spendingLimit, promisedOn, oldPartsBack: true, items }
  done(await keepJob(counter(5), await shopOnFile(), { number, version, intake }))
}

/** Released, with a footswitch and a cover that came along. */
async function readyJob(): Promise<{ number: string; tubeIds: readonly [string, string] }> {
  const job = await acceptedJob()
  const { number } = job
  await withItems(number, ['footswitch', 'cover'])
  done(await read(number, { phase: 'before', plateVolts: 330, cathodeVolts: 17, step: later(10) }))
  await fitBoth(number)
  const line = (await findAcceptedQuote((await jobOf(number)).id))?.lines.find(({ kind }) => kind === 'labour')
  done(await tickLine(later(22), { jobNumber: number, lineId: line?.id ?? '', done: true }))
  done(await finishWork(later(25), number))
  done(await read(number))
  await signAll(number, ['full-power'])
  done(await signed(number, 'full-power', { outcome: 'not-tested', reason: 'the dummy load is out for repair' }))
  done(await releaseJob(later(50), await shopOnFile(), number))
  return job
}

async function tickItems(number: string, but: readonly string[] = []): Promise<void> {
  for (const { id, label } of (await jobOf(number)).items)
    if (!but.includes(label)) done(await giveBackItem(counter(90), { jobNumber: number, itemId: id, returned: true }))
}

const pay = async (number: string, amount: number, back = false) =>
  takePayment(counter(95), await shopOnFile(), { jobNumber: number, back, amount: money(amount), how: 'card' })

const hand = async (number: string, over: Partial<HandOver> = {}) =>
  handOver(counter(), await shopOnFile(), { jobNumber: number, collector: OWNER, itemsNote: '', owesNote: '', ...over })

async function printed(paperId: string): Promise<string> {
  const paper = await findPaper(paperId)
  if (!paper) throw new Error('no paper')
  return squeezed((await readPdf(await renderPdf(paper.view as Paper, { createdAt: paper.issuedAt }))).text)
}

const says = (text: string, ...parts: string[]) => {
  for (const part of parts) expect(text).toContain(squeezed(part))
}

const balanceOf = async (number: string) => (await jobAccount((await jobOf(number)).id)).account.balance

const partWith = async (count: number) => {
  const details = {
    name: 'Fuse',
    kind: 'fuse',
    value: '',
    count,
    cost: null,
    reorderLevel: null,
    location: '',
  } as const
  return done(await keepPart(counter(1), { id: null, version: 0, details: { ...details, price: money(80) } }))
}

/** On the accepted quote, as if it had been sent with it. */
async function listPart(number: string, partId: string, pieces: number): Promise<void> {
  const quoteId = (await findAcceptedQuote((await jobOf(number)).id))?.id ?? ''
  const line = { kind: 'part', text: 'Fuse', unit: 'pc', unitPrice: 80, thousandths: pieces * 1000, place: 9 }
  await db().quoteLine.create({ data: { ...line, quoteId, partId } })
}

describe('a hand-over', () => {
  it('freezes the sheet with readings before and after, tubes by mark, sign-off, old parts and money; the job is collected', async () => {
    const { number, tubeIds } = await readyJob()
    await tickItems(number)
    done(await pay(number, await balanceOf(number)))
    const paperId = done(await hand(number))
    expect(await jobOf(number)).toMatchObject({
      state: 'collected',
      collectedBy: 'Mirela Thorn',
      collectedIdentity: '',
      collectedAt: counter().now,
    })
    const text = await printed(paperId)
    const marks = await Promise.all(tubeIds.map(async (id) => (await findTube(id))?.mark ?? ''))
    says(text, 'Readings, before and after', 'before', 'after', ...marks)
    // Read on the tubes that sat there: the 12 W 6V6GT as received, the 30 W 6L6GC afterwards.
    says(text, 'V3 6V6GT', 'V3 6L6GC', '313 V', '321 V')
    says(
      text,
      'Safety ground bond',
      '0.11 Ω',
      'not tested, because the dummy load is out for repair',
      'Set idle current',
      'footswitch',
      'cover',
    )
    says(text, `Tubes fitted: V3 ${marks[0]}, V4 ${marks[1]}`)
    says(text, '6V6GT, mark T-101, as received', '6V6GT, mark T-102, as received', 'Mirela Thorn (owner)')
    // 6 May 2031 in New York, 90 days of warranty and 42 to the check.
    says(text, 'Aug 4, 2031', 'Jun 17, 2031', 'Balance', '$0.00')
    expect((await listJobHistory((await jobOf(number)).id))[0]).toMatchObject({
      did: 'Handed over to Mirela Thorn',
      person: 'Odo',
    })
  })

  it('with no days of warranty or to the check in the settings promises neither, least of all for today', async () => {
    const { number } = await readyJob()
    await tickItems(number)
    done(await pay(number, await balanceOf(number)))
    const shop = { ...(await shopOnFile()), warrantyDays: 0, recheckDays: 0 }
    const over = { jobNumber: number, collector: OWNER, itemsNote: '', owesNote: '' }
    says(await printed(done(await handOver(counter(), shop, over))), 'no warranty', 'none arranged')
  })

  it('leaves a history entry for every step of the way', async () => {
    const { number } = await readyJob()
    await tickItems(number)
    done(await pay(number, await balanceOf(number)))
    done(await hand(number))
    const did = (await listJobHistory((await jobOf(number)).id)).map((entry) => entry.did).join('\n')
    for (const part of [
      'fitted in V3',
      'fitted in V4',
      'Done: Set idle current',
      'Work done: on to testing',
      'Readings after the work taken',
      'Soak with a second reading signed: pass',
      'Full power into a dummy load signed: not tested',
      'Released',
      'footswitch: laid ready to go back',
      'Payment taken',
      'Handed over to',
    ])
      expect(did).toContain(part)
  })

  it('takes parts that nobody ticked out of their drawers: 2 of 5, and of 3 only the 1 that is there', async () => {
    const { number } = await readyJob()
    const [enough, short] = [await partWith(5), await partWith(1)]
    await listPart(number, enough, 2)
    await listPart(number, short, 3)
    await tickItems(number)
    done(await pay(number, await balanceOf(number)))
    done(await hand(number))
    expect((await findStockedPart(enough))?.drawer).toMatchObject({ inDrawer: 3, aside: 0, free: 3, short: 0 })
    expect((await findStockedPart(short))?.drawer).toMatchObject({ inDrawer: 0, aside: 0, free: 0, short: 0 })
    expect((await listHistoryOf('part', short)).map(({ did }) => did)).toEqual(
      expect.arrayContaining([
        `1 taken out of the drawer for job ${number}, not ticked, at the hand-over: Fuse`,
        `2 not ticked and not in the drawer at the hand-over of job ${number}; count it: Fuse`,
      ]),
    )
    expect((await listDrawsOf(enough)).map(({ jobNumber, count }) => [jobNumber, count])).toEqual([[number, 2]])
  })

  it('is refused before the release', async () => {
    const { number } = await acceptedJob()
    expect(await hand(number)).toMatchObject({
      ok: false,
      fault: { code: 'cannot-move', from: 'on-bench', to: 'collected' },
    })
  })

  it('is refused when “ready” was reached by hand, without a signed line', async () => {
    const { number } = await acceptedJob()
    await db().job.update({ where: { number }, data: { state: 'ready' } })
    expect(await hand(number)).toMatchObject({ ok: false, fault: { code: 'release-blocked' } })
    expect((await jobOf(number)).state).toBe('ready')
  })

  it('items that stay are named, or go on with a note that is printed', async () => {
    const { number } = await readyJob()
    await tickItems(number, ['cover'])
    done(await pay(number, await balanceOf(number)))
    const refused = await hand(number)
    expect(refused).toMatchObject({ ok: false, fault: { code: 'items-left', labels: ['1 × cover'] } })
    const paperId = done(await hand(number, { itemsNote: 'at the upholsterer' }))
    says(await printed(paperId), 'cover: NOT handed back, at the upholsterer')
  })

  it('an open balance stops it, or is noted and printed', async () => {
    const { number } = await readyJob()
    await tickItems(number)
    const total = await totalOf(number)
    const refused = await hand(number)
    expect(refused).toMatchObject({ ok: false, fault: { code: 'balance-open' } })
    if (!refused.ok) expect(stepFaultText(refused.fault, await shopOnFile())).toContain('is still owed')
    const paperId = done(await hand(number, { owesNote: 'pays by bank transfer within a week' }))
    says(await printed(paperId), 'agreed: pays by bank transfer within a week')
    // The rest may be paid later, and no more than the rest.
    expect(await pay(number, total + 1)).toMatchObject({ ok: false, fault: { code: 'overpaid' } })
    done(await pay(number, total))
    expect(await balanceOf(number)).toBe(0)
  })

  it('somebody else than the owner shows who it is', async () => {
    const { number } = await readyJob()
    await tickItems(number)
    done(await pay(number, await balanceOf(number)))
    const brother = { name: 'Iven Thorn', isOwner: false, identity: '' }
    expect(await hand(number, { collector: brother })).toMatchObject({
      ok: false,
      fault: { code: 'identity-missing', name: 'Iven Thorn' },
    })
    expect(await hand(number, { collector: { ...brother, name: ' ' } })).toMatchObject({
      ok: false,
      fault: { code: 'collector-missing' },
    })
    const paperId = done(await hand(number, { collector: { ...brother, identity: 'driving license' } }))
    says(
      await printed(paperId),
      'Collected by Iven Thorn for Mirela Thorn. Identity shown: driving license, seen by Odo.',
    )
  })

  it('a collected job is closed: not handed over twice, nothing signed or ticked on it', async () => {
    const { number } = await readyJob()
    await tickItems(number)
    done(await pay(number, await balanceOf(number)))
    done(await hand(number))
    expect(await hand(number)).toMatchObject({ ok: false, fault: { code: 'job-closed' } })
    expect(await signed(number, 'cord')).toMatchObject({ ok: false, fault: { code: 'job-closed' } })
    expect(await listPapers((await jobOf(number)).id, 'pickup-sheet')).toHaveLength(1)
  })

  it('the preview keeps nothing and says that nobody has collected yet', async () => {
    const { number } = await readyJob()
    const paper = await pickupPreview(await shopOnFile(), number, counter().now)
    if (!paper) throw new Error('no preview')
    says(squeezed((await readPdf(await renderPdf(paper, { createdAt: counter().now }))).text), 'not yet')
    expect(await listPapers((await jobOf(number)).id, 'pickup-sheet')).toEqual([])
  })
})

describe('payments', () => {
  it('before the release a part is a deposit, and the rest is what is left', async () => {
    const { number } = await acceptedJob()
    const total = await totalOf(number)
    done(await pay(number, 5000))
    expect(await balanceOf(number)).toBe(total - 5000)
    const refused = await pay(number, total)
    expect(refused).toMatchObject({ ok: false, fault: { code: 'overpaid' } })
    if (!refused.ok)
      expect(stepFaultText(refused.fault, await shopOnFile())).toContain('more than is owed: the balance is $')
    done(await pay(number, total - 5000))
    expect((await listPayments((await jobOf(number)).id)).map(({ kind, how }) => [kind, how])).toEqual([
      ['deposit', 'card'],
      ['payment', 'card'],
    ])
    expect(await pay(number, 1)).toMatchObject({ ok: false, fault: { code: 'nothing-owed' } })
  })

  it('nothing is no payment, and no more is given back than was paid too much', async () => {
    const number = await jobOnBench()
    expect(await pay(number, 0)).toMatchObject({ ok: false, fault: { code: 'no-amount' } })
    done(await pay(number, 6000))
    expect(await pay(number, 6001, true)).toMatchObject({ ok: false, fault: { code: 'refund-too-high' } })
    done(await pay(number, 6000, true))
    expect((await listPayments((await jobOf(number)).id)).map(({ kind, amount }) => [kind, amount])).toEqual([
      ['deposit', 6000],
      ['refund', -6000],
    ])
  })
})

describe('returned unrepaired', () => {
  const back = async (number: string, over: Partial<ReturnUnrepaired> = {}) =>
    returnUnrepaired(counter(), await shopOnFile(), {
      jobNumber: number,
      reason: 'The output transformer is open and none is to be had.',
      charge: money(6000),
      how: 'cash',
      collector: OWNER,
      itemsNote: '',
      owesNote: '',
      ...over,
    })

  it('says so on the sheet, claims no test and no warranty, and lets the tubes go', async () => {
    const number = await jobOnBench()
    const tubeId = await tubeInStock()
    await draftWith(number, [tubeId])
    done(await send(number))
    done(await answer(number))
    const paperId = done(await back(number))
    const text = await printed(paperId)
    says(
      text,
      'Not repaired. Not safety-tested. Do not connect.',
      'The output transformer is open',
      'no warranty',
      'none arranged',
      '$60.00',
    )
    expect(text).not.toContain(squeezed('Safety sign-off'))
    expect(await jobOf(number)).toMatchObject({ state: 'returned-unrepaired', collectedBy: 'Mirela Thorn' })
    expect((await holdOf(tubeId)).hold).toBe('')
    expect(await balanceOf(number)).toBe(0)
    const [entry] = await listJobHistory((await jobOf(number)).id)
    expect(entry?.did).toBe('Returned unrepaired to Mirela Thorn')
    expect(entry?.changes).toContainEqual({ label: 'Paid', from: '', to: '$60.00, cash' })
  })

  it('gives back what was paid above the charge', async () => {
    const number = await jobOnBench()
    done(await pay(number, 10_000))
    done(await back(number, { charge: money(6000) }))
    expect((await listPayments((await jobOf(number)).id)).map(({ kind, amount }) => [kind, amount])).toEqual([
      ['deposit', 10_000],
      ['refund', -4000],
    ])
    expect(await balanceOf(number)).toBe(0)
  })

  it('needs its reason, and a way for what changes hands or a note', async () => {
    const number = await jobOnBench()
    expect(await back(number, { reason: ' ' })).toMatchObject({ ok: false, fault: { code: 'return-reason-missing' } })
    expect(await back(number, { how: '' })).toMatchObject({
      ok: false,
      fault: { code: 'way-missing', balance: '$60.00' },
    })
    expect(await listPayments((await jobOf(number)).id)).toEqual([])
    done(await back(number, { how: '', owesNote: 'bill to follow' }))
    expect(await balanceOf(number)).toBe(6000)
    done(await pay(number, 6000))
  })

  it('is not the way out of a test that fails: from testing it goes back to the bench first', async () => {
    const { number } = await acceptedJob()
    done(await finishWork(later(25), number))
    expect(await back(number)).toMatchObject({ ok: false, fault: { code: 'cannot-move', from: 'testing' } })
  })
})

describe('a hand-over taken back', () => {
  const back = (number: string, reason = 'The wrong amplifier was handed out') =>
    takeBackHandOver(counter(120), { jobNumber: number, reason })

  async function handedOver(): Promise<{ readonly number: string; readonly paperId: string }> {
    const { number } = await readyJob()
    await tickItems(number)
    done(await pay(number, await balanceOf(number)))
    return { number, paperId: done(await hand(number)) }
  }

  it('leaves the job ready, the money and the items as noted, and the history with the reason', async () => {
    const { number } = await handedOver()
    done(await back(number))
    const job = await jobOf(number)
    expect(job).toMatchObject({ state: 'ready', collectedBy: '', collectedIdentity: '', collectedAt: null })
    expect(job.items.every(({ returned }) => returned)).toBe(true)
    expect(await balanceOf(number)).toBe(0)
    const [entry] = await listJobHistory(job.id)
    expect(entry).toMatchObject({ did: 'Hand-over taken back', person: 'Odo' })
    expect(entry?.changes).toEqual([
      { label: 'State', from: 'collected', to: 'ready' },
      { label: 'Collected by', from: 'Mirela Thorn', to: '' },
      { label: 'Reason', from: '', to: 'The wrong amplifier was handed out' },
    ])
  })

  it('the sheet says that it no longer holds, on every page; the one of the hand-over that follows holds', async () => {
    const { number, paperId } = await handedOver()
    const before = await findPaper(paperId)
    done(await back(number))
    const paper = (await findPaper(paperId)) ?? expect.fail('no paper')
    expect(paper.view).toEqual(before?.view)
    expect(paper).toMatchObject({
      takenBackAt: counter(120).now,
      takenBackBecause: 'The wrong amplifier was handed out',
    })
    const sentence = `Taken back: ${paper.takenBackBecause}`
    const drawing = { createdAt: paper.issuedAt }
    const [plain, struck] = await Promise.all([
      renderPdf(paper.view as Paper, drawing),
      renderPdf(paper.view as Paper, { ...drawing, takenBack: sentence }),
    ])
    const [held, crossed] = [await readPdf(plain), await readPdf(struck)]
    expect(squeezed(held.text)).not.toContain(squeezed(sentence))
    expect(crossed.pages).toHaveLength(held.pages.length)
    expect(squeezed(crossed.text).split(squeezed(sentence))).toHaveLength(held.pages.length + 1)
    const whole = { jobNumber: number, collector: OWNER, itemsNote: '', owesNote: '' }
    const again = done(await handOver(counter(130), await shopOnFile(), whole))
    const papers = await listPapers((await jobOf(number)).id, 'pickup-sheet')
    expect(papers.map(({ id, takenBackAt }) => [id, takenBackAt !== null])).toEqual([
      [again, false],
      [paperId, true],
    ])
  })

  it('is refused without a reason, on a job that was not handed over, and once the amplifier came back', async () => {
    const { number } = await handedOver()
    expect(await back(number, '  ')).toMatchObject({ ok: false, fault: { code: 'take-back-reason-missing' } })
    const { ampId } = await jobOf(number)
    const other = await jobOnBench()
    await db().job.update({ where: { number: other }, data: { ampId, receivedAt: later(110).now } })
    const refused = await back(number)
    expect(refused).toMatchObject({ ok: false, fault: { code: 'taken-in-since', jobNumber: other } })
    expect(await back(other)).toMatchObject({ ok: false, fault: { code: 'not-handed-over' } })
    expect((await jobOf(number)).state).toBe('collected')
  })

  it('of two at once one goes through', async () => {
    const { number } = await handedOver()
    const both = await Promise.all([back(number), back(number, 'Twice')])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect((await jobOf(number)).state).toBe('ready')
  })
})
