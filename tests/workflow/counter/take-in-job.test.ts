import { beforeAll, describe, expect, it } from 'vitest'
import type { Paper } from '@/lib/documents/paper'
import { paperText } from '@/lib/documents/paper-text'
import type { Day } from '@/lib/domain/calendar'
import { readJobNumber } from '@/lib/domain/job/job-number'
import { money } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { findAmp, listAmpsOfCustomer } from '@/lib/store/amp'
import { listCustomers } from '@/lib/store/customer'
import { db } from '@/lib/store/database'
import { listHistoryOf, listJobHistory } from '@/lib/store/history'
import { findJob } from '@/lib/store/job'
import { findPaper } from '@/lib/store/paper'
import { findShop } from '@/lib/store/shop'
import { keepJob, moveJobByHand } from '@/lib/workflow/counter/keep-job'
import { type TakeIn, takeInJob } from '@/lib/workflow/counter/take-in-job'
import { stepFaultText } from '@/lib/workflow/step/step-fault-text'
import { ampDetails, ampOnFile, ownerOnFile } from '@/tests/support/amps'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, atCounter, NOW } from '@/tests/support/person-at-work'
import { openStockedShop } from '@/tests/support/stocked-shop'

freshDatabase()

let shop: Shop
beforeAll(async () => {
  await openStockedShop()
  shop = (await findShop()) as Shop
})

const customer = {
  name: 'Tamsin Ode',
  phone: '(555) 0144',
  email: 'tamsin@example.net',
  address: '',
  note: '',
  preferredContact: 'phone',
} as const

const takeIn = (over: Partial<TakeIn> = {}): TakeIn => ({
  customer: { details: customer },
  amp: { details: ampDetails() },
  intake: {
    fault: 'Crackles when warm',
    faultSettings: 'bright channel, volume at 6',
    spendingLimit: money(35_000),
    promisedOn: '2031-05-20' as Day,
    oldPartsBack: true,
    items: [{ count: 1, label: 'footswitch' }],
  },
  address: 'http://bench.test',
  ...over,
})

async function taken(over: Partial<TakeIn> = {}) {
  const result = await takeInJob(atCounter(), shop, takeIn(over))
  if (!result.ok) throw new Error(stepFaultText(result.fault, shop))
  return result.value
}

describe('taking an amplifier in', () => {
  it('gives a number with its check digit, a receipt, and a history entry of who wrote what', async () => {
    const { number, receiptId } = await taken()
    expect(readJobNumber(number)).toEqual({ ok: true, value: number })
    const job = await findJob(number)
    expect(job).toMatchObject({
      state: 'received',
      takenInBy: 'Odo',
      receivedAt: NOW,
      spendingLimit: 35_000,
      version: 1,
    })
    const text = paperText((await findPaper(receiptId))?.view as Paper)
    for (const word of [
      number,
      'Tamsin Ode',
      'footswitch',
      'Crackles when warm',
      '$350.00',
      `http://bench.test/jobs/${number}`,
    ])
      expect(text).toContain(word)
    const [entry] = await listJobHistory(job?.id ?? '')
    expect(entry).toMatchObject({ person: 'Odo', at: NOW, did: `Taken in as job ${number}` })
    expect(entry?.changes).toContainEqual({ label: 'Spending limit', from: '', to: '$350.00' })
  })

  it('numbers two jobs apart', async () => {
    const [one, two] = [await taken(), await taken()]
    expect(one.number).not.toBe(two.number)
  })

  it('refuses an amplifier that is already here, naming its job, and saves nothing of the new customer', async () => {
    const ampId = await ampOnFile({ serial: 'HERE-1' })
    const { number } = await taken({ amp: { id: ampId } })
    const again = await takeInJob(
      atCounter(),
      shop,
      takeIn({ amp: { id: ampId }, customer: { details: { ...customer, name: 'Never Saved' } } }),
    )
    expect(again).toEqual({ ok: false, fault: { code: 'amp-already-here', jobNumber: number } })
    expect(await listCustomers('never saved')).toEqual([])
  })

  it('brought by somebody else, the amplifier changes hands and its history says so', async () => {
    const [seller, buyer] = [await ownerOnFile('Seller Sy'), await ownerOnFile('Buyer Bo')]
    const ampId = await ampOnFile({ serial: 'SOLD-1' }, seller)
    await taken({ amp: { id: ampId }, customer: { id: buyer } })
    expect((await findAmp(ampId))?.customerId).toBe(buyer)
    expect((await listAmpsOfCustomer(seller)).length).toBe(0)
    const [entry] = await listHistoryOf('amp', ampId)
    expect(entry).toMatchObject({
      did: 'Changed hands',
      changes: [{ label: 'Owner', from: 'Seller Sy', to: 'Buyer Bo' }],
    })
  })

  it('a customer is found by part of the phone, whatever its spacing', async () => {
    await taken()
    expect((await listCustomers('5550144')).map(({ name }) => name)).toContain('Tamsin Ode')
    expect((await listCustomers('555 01 44')).map(({ name }) => name)).toContain('Tamsin Ode')
    expect((await listCustomers('TAMSIN od')).map(({ name }) => name)).toContain('Tamsin Ode')
  })
})

describe('correcting a job', () => {
  it('from an older version is refused and tells what the colleague changed', async () => {
    const { number } = await taken()
    const { intake } = takeIn()
    await keepJob(atBench('Ines'), shop, { number, version: 1, intake: { ...intake, fault: 'Hums' } })
    const late = await keepJob(atCounter(), shop, { number, version: 1, intake: { ...intake, oldPartsBack: false } })
    const changes = [{ label: 'Fault', from: 'Crackles when warm', to: 'Hums' }]
    expect(late).toMatchObject({ ok: false, fault: { code: 'stale', savedBy: 'Ines', changes } })
    expect((await findJob(number))?.oldPartsBack).toBe(true)
  })

  it('a state that cannot follow is refused in words', async () => {
    const { number } = await taken()
    const moved = await moveJobByHand(atBench(), number, 1, 'collected')
    expect(moved.ok ? '' : stepFaultText(moved.fault, shop)).toBe(
      'The job is “received” and cannot become “collected”. From there it can go to on bench, returned unrepaired.',
    )
  })

  it('fifty take-ins at once give fifty numbers', async () => {
    const all = await Promise.all(Array.from({ length: 50 }, () => taken()))
    expect(new Set(all.map(({ number }) => number)).size).toBe(50)
    expect(await db().job.count({ where: { number: { in: all.map(({ number }) => number) } } })).toBe(50)
  })
})
