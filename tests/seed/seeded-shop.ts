/** What the tests of the demo ask of its records, read past the screens. */

import type { IdleResult } from '@/lib/domain/bias/idle'
import type { Job } from '@/lib/domain/job/job'
import { db } from '@/lib/store/database'
import { findJob } from '@/lib/store/job'
import { findReadingSet } from '@/lib/store/reading-set'
import { findShop } from '@/lib/store/shop'
import { ampState, type WorkedRound, workedRound } from '@/lib/workflow/work/safety-state'

export type SeededRound = WorkedRound & { readonly job: Job; readonly model: string }

/** Every round of readings, worked out with the tubes that sat there then; oldest first. */
export async function seededRounds(): Promise<SeededRound[]> {
  const shop = await findShop()
  const rows = await db().readingSet.findMany({
    orderBy: { takenAt: 'asc' },
    select: { id: true, job: { select: { number: true } } },
  })
  const rounds: SeededRound[] = []
  for (const { id, job: row } of rows) {
    const [set, job] = [await findReadingSet(id), await findJob(row.number)]
    if (!set || !job || !shop) throw new Error(`Round ${id} has lost its job`)
    const state = await ampState(job)
    rounds.push({ ...workedRound(state, set, shop), job, model: state.sheet.amp.model })
  }
  return rounds
}

export type IdleAt = { readonly round: SeededRound; readonly position: string; readonly idle: IdleResult }

export const idlesOf = (rounds: readonly SeededRound[]): IdleAt[] =>
  rounds.flatMap((round) =>
    round.result.sockets.flatMap(({ socket, outcome }) =>
      outcome.kind === 'idle' ? [{ round, position: socket.position, idle: outcome.idle }] : [],
    ),
  )

type Dated = { readonly where: string; readonly at: Date }

/** Columns that say when a row was put into the file, or that point ahead by their nature. */
const NOT_EVENTS = new Set([
  'customer.createdAt',
  'amp.createdAt',
  'tube.createdAt',
  'person.createdAt',
  'tube.heldUntil',
])

/** Every instant of the records but those of NOT_EVENTS. */
export async function datesOfRecords(): Promise<Dated[]> {
  const tables = {
    person: await db().person.findMany(),
    customer: await db().customer.findMany(),
    amp: await db().amp.findMany(),
    job: await db().job.findMany(),
    readingSet: await db().readingSet.findMany(),
    tube: await db().tube.findMany(),
    tubeTest: await db().tubeTest.findMany(),
    fitting: await db().fitting.findMany(),
    quote: await db().quote.findMany(),
    quoteLine: await db().quoteLine.findMany(),
    safetyLine: await db().safetyLine.findMany(),
    payment: await db().payment.findMany(),
    paper: await db().paper.findMany(),
    mail: await db().mail.findMany(),
    historyEntry: await db().historyEntry.findMany(),
  }
  return Object.entries(tables).flatMap(([table, rows]) =>
    rows.flatMap((row) =>
      Object.entries(row).flatMap(([column, value]) =>
        value instanceof Date && !NOT_EVENTS.has(`${table}.${column}`)
          ? [{ where: `${table}.${column}`, at: value }]
          : [],
      ),
    ),
  )
}

/** What a reader of the shop sees, without the ids that chance gives. */
export async function contentOfShop(): Promise<string> {
  const history = await db().historyEntry.findMany({ select: { at: true, person: true, did: true, changes: true } })
  const tests = await db().tubeTest.findMany({
    select: { testedAt: true, plateAmps: true, gmSiemens: true, section: true, tube: { select: { mark: true } } },
  })
  const readings = await db().reading.findMany({
    select: {
      plateVolts: true,
      senseDropVolts: true,
      halfDropVolts: true,
      cathodeVolts: true,
      set: { select: { takenAt: true } },
    },
  })
  const jobs = await db().job.findMany({ select: { number: true, state: true, promisedOn: true, fault: true } })
  return [...history, ...tests, ...readings, ...jobs]
    .map((row) => JSON.stringify(row))
    .toSorted()
    .join('\n')
}
