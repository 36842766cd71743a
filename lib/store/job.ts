import type { Prisma } from '@/generated/sqlite/client'
import type { Day } from '@/lib/domain/calendar'
import type { Job, JobIntake, JobLine } from '@/lib/domain/job/job'
import { FIRST_JOB, jobNumber } from '@/lib/domain/job/job-number'
import { isClosed, JOB_STATES, type JobState } from '@/lib/domain/job/job-state'
import { money } from '@/lib/domain/money'
import { nextNumber } from './counter'
import { db, type Tx } from './database'

const columns = {
  id: true,
  number: true,
  customerId: true,
  ampId: true,
  state: true,
  stateSince: true,
  fault: true,
  faultSettings: true,
  spendingLimit: true,
  promisedOn: true,
  oldPartsBack: true,
  takenInBy: true,
  receivedAt: true,
  findings: true,
  declinedWork: true,
  collectedBy: true,
  collectedIdentity: true,
  collectedAt: true,
  version: true,
  items: { orderBy: { place: 'asc' }, select: { id: true, count: true, label: true, returned: true } },
} satisfies Prisma.JobSelect

type Row = Prisma.JobGetPayload<{ select: typeof columns }>

const job = (row: Row): Job => ({
  ...row,
  state: row.state as JobState,
  promisedOn: row.promisedOn as Day | null,
  spendingLimit: row.spendingLimit === null ? null : money(row.spendingLimit),
})

const lineColumns = {
  id: true,
  ampId: true,
  number: true,
  state: true,
  stateSince: true,
  fault: true,
  promisedOn: true,
  receivedAt: true,
  customer: { select: { name: true } },
  amp: { select: { make: true, model: true, serial: true } },
} satisfies Prisma.JobSelect

type LineRow = Prisma.JobGetPayload<{ select: typeof lineColumns }>

const line = ({ customer, amp, ...row }: LineRow): JobLine => ({
  ...row,
  state: row.state as JobState,
  promisedOn: row.promisedOn as Day | null,
  customerName: customer.name,
  ampName: `${amp.make} ${amp.model}`.trim(),
  serial: amp.serial,
})

const CLOSED: readonly JobState[] = JOB_STATES.filter(isClosed)

export async function findJob(number: string, tx: Tx = db()): Promise<Job | null> {
  const row = await tx.job.findUnique({ where: { number }, select: columns })
  return row && job(row)
}

export async function findJobById(id: string, tx: Tx = db()): Promise<Job | null> {
  const row = await tx.job.findUnique({ where: { id }, select: columns })
  return row && job(row)
}

/** Jobs still in the shop, oldest promise first; those without a promise last. */
export async function listOpenJobs(): Promise<JobLine[]> {
  const where = { state: { notIn: [...CLOSED] } }
  const rows = await db().job.findMany({ where, orderBy: { receivedAt: 'asc' }, select: lineColumns })
  const promise = (row: LineRow) => row.promisedOn ?? '9999'
  return rows.sort((a, b) => promise(a).localeCompare(promise(b))).map(line)
}

export async function listClosedJobs(limit = 50): Promise<JobLine[]> {
  const where = { state: { in: [...CLOSED] } }
  const rows = await db().job.findMany({ where, orderBy: { stateSince: 'desc' }, take: limit, select: lineColumns })
  return rows.map(line)
}

export async function listJobsOf(who: { customerId: string } | { ampId: string }): Promise<JobLine[]> {
  const rows = await db().job.findMany({ where: who, orderBy: { receivedAt: 'desc' }, select: lineColumns })
  return rows.map(line)
}

export async function findOpenJobOfAmp(ampId: string, tx: Tx): Promise<string | null> {
  const row = await tx.job.findFirst({ where: { ampId, state: { notIn: [...CLOSED] } }, select: { number: true } })
  return row?.number ?? null
}

/** Number of the first job of the amplifier that was taken in after that moment; null: none was. */
export async function findJobOfAmpSince(ampId: string, moment: Date, tx: Tx): Promise<string | null> {
  const where = { ampId, receivedAt: { gt: moment } }
  const row = await tx.job.findFirst({ where, orderBy: { receivedAt: 'asc' }, select: { number: true } })
  return row?.number ?? null
}

export type NewJob = JobIntake & {
  readonly customerId: string
  readonly ampId: string
  readonly takenInById: string
  readonly takenInBy: string
  readonly receivedAt: Date
}

export async function createJob(tx: Tx, { items, ...intake }: NewJob): Promise<Job> {
  const number = jobNumber(await nextNumber(tx, 'job', FIRST_JOB))
  const rows = items.map((item, place) => ({ ...item, place }))
  const data = { ...intake, number, state: 'received', stateSince: intake.receivedAt, items: { create: rows } }
  return job(await tx.job.create({ data, select: columns }))
}

export type JobChange = Partial<
  Pick<
    Job,
    | 'fault'
    | 'faultSettings'
    | 'spendingLimit'
    | 'promisedOn'
    | 'oldPartsBack'
    | 'findings'
    | 'declinedWork'
    | 'state'
    | 'stateSince'
    | 'collectedBy'
    | 'collectedIdentity'
    | 'collectedAt'
  >
>

/** False when somebody saved since `version`. Items, when given, replace the list. */
export async function saveJob(
  tx: Tx,
  id: string,
  version: number,
  change: JobChange,
  items?: readonly { readonly count: number; readonly label: string; readonly returned: boolean }[],
): Promise<boolean> {
  const { count } = await tx.job.updateMany({ where: { id, version }, data: { ...change, version: version + 1 } })
  if (count !== 1) return false
  if (items) {
    await tx.jobItem.deleteMany({ where: { jobId: id } })
    await tx.jobItem.createMany({ data: items.map((item, place) => ({ ...item, place, jobId: id })) })
  }
  return true
}
