/** Looking a job up by whatever somebody has at hand: part of its number, a quote, the owner, the amplifier. */
import type { Prisma } from '@/generated/sqlite/client'
import type { Day } from '@/lib/domain/calendar'
import { digitsOf, fold } from '@/lib/domain/fold'
import type { JobLine } from '@/lib/domain/job/job'
import type { JobState } from '@/lib/domain/job/job-state'
import { db } from './database'

const columns = {
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

export async function isJob(number: string): Promise<boolean> {
  return (await db().job.count({ where: { number } })) > 0
}

/** Newest first. */
export async function listJobsMatching(search: string, limit = 50): Promise<JobLine[]> {
  const typed = search.trim()
  const words = fold(typed).split(' ').filter(Boolean)
  if (words.length === 0) return []
  const inWords = words.map((word) => ({
    OR: [{ amp: { search: { contains: word } } }, { customer: { search: { contains: word } } }],
  }))
  const OR: Prisma.JobWhereInput[] = [{ AND: inWords }, { quotes: { some: { number: typed.toUpperCase() } } }]
  const digits = digitsOf(typed)
  if (/^[\d\s-]+$/.test(typed) && digits.length >= 2) OR.push({ number: { startsWith: digits } })
  const rows = await db().job.findMany({ where: { OR }, orderBy: { receivedAt: 'desc' }, take: limit, select: columns })
  return rows.map(({ customer, amp, ...row }) => ({
    ...row,
    state: row.state as JobState,
    promisedOn: row.promisedOn as Day | null,
    customerName: customer.name,
    ampName: `${amp.make} ${amp.model}`.trim(),
    serial: amp.serial,
  }))
}
