/** All rows of a table, read in parts so that no query holds the shop up. */
import { money } from '@/lib/domain/money'
import type { Tube, TubeTest } from '@/lib/domain/stock/tube'
import { db } from './database'
import { TEST_ORDER, testColumns, testsByTube, tubeColumns, tubeOf } from './tube-rows'

const ROWS_A_PART = 2000

export type TubeWithTests = { readonly tube: Tube; readonly tests: readonly TubeTest[] }

/** By mark. Tests newest first. */
export async function* allTubes(): AsyncGenerator<TubeWithTests> {
  let after = ''
  for (;;) {
    const rows = await db().tube.findMany({
      where: { mark: { gt: after } },
      orderBy: { mark: 'asc' },
      take: ROWS_A_PART,
      select: tubeColumns,
    })
    const last = rows.at(-1)
    if (!last) return
    const ids = rows.map(({ id }) => id)
    const tests = testsByTube(
      await db().tubeTest.findMany({ where: { tubeId: { in: ids } }, orderBy: TEST_ORDER, select: testColumns }),
    )
    for (const row of rows) yield { tube: tubeOf(row, NO_JOBS), tests: tests.get(row.id) ?? [] }
    after = last.mark
  }
}

const NO_JOBS = new Map<string, string>()

export async function listCustomerRows() {
  return db().customer.findMany({
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    select: { name: true, phone: true, email: true, address: true, preferredContact: true, note: true },
  })
}

export async function listAmpRows() {
  const rows = await db().amp.findMany({
    orderBy: [{ make: 'asc' }, { model: 'asc' }, { id: 'asc' }],
    select: {
      customer: { select: { name: true } },
      make: true,
      model: true,
      serial: true,
      mainsVolts: true,
      protectionClass: true,
      fuse: true,
      outputClass: true,
      plateLoadOhms: true,
      note: true,
      sockets: { orderBy: { place: 'asc' }, select: { position: true, typeFitted: true, markFitted: true } },
    },
  })
  return rows.map(({ customer, sockets, ...amp }) => ({
    ...amp,
    owner: customer.name,
    sockets: sockets
      .map(({ position, typeFitted, markFitted }) => [position, typeFitted, markFitted].filter(Boolean).join(' '))
      .join('; '),
  }))
}

export async function listJobRows() {
  const rows = await db().job.findMany({
    orderBy: { receivedAt: 'asc' },
    select: {
      number: true,
      state: true,
      fault: true,
      findings: true,
      receivedAt: true,
      promisedOn: true,
      collectedAt: true,
      spendingLimit: true,
      customer: { select: { name: true } },
      amp: { select: { make: true, model: true, serial: true } },
      payments: { select: { amount: true } },
    },
  })
  return rows.map(({ customer, amp, payments, spendingLimit, ...job }) => ({
    ...job,
    customer: customer.name,
    amp: `${amp.make} ${amp.model}`.trim(),
    serial: amp.serial,
    spendingLimit: spendingLimit === null ? null : money(spendingLimit),
    paid: money(payments.reduce((sum, { amount }) => sum + amount, 0)),
  }))
}
