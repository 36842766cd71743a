/**
 * The outbox. A mail is written down in the transaction that needs it sent, and
 * sent afterwards.
 *
 * While a try is under way the state is 'sending' and `sentAt` holds when it
 * began; only with 'sent' is it the instant the server took the mail. Every try
 * has its number, and a try whose number is no longer the latest cannot settle
 * anything: so two tries at once end in one.
 */
import type { Prisma } from '@/generated/sqlite/client'
import { type Mail, type MailState, STALE_TRY_MINUTES } from '@/lib/domain/quote/mail'
import { db, type Tx } from './database'

const columns = {
  id: true,
  jobId: true,
  paperId: true,
  to: true,
  subject: true,
  body: true,
  state: true,
  tries: true,
  lastError: true,
  createdAt: true,
  sentAt: true,
} satisfies Prisma.MailSelect

type Row = Prisma.MailGetPayload<{ select: typeof columns }>

const mail = ({ sentAt, ...row }: Row): Mail => ({
  ...row,
  state: row.state as MailState,
  sentAt: row.state === 'sent' ? sentAt : null,
})

const NEWEST = [{ createdAt: 'desc' }, { id: 'desc' }] satisfies Prisma.MailOrderByWithRelationInput[]

export async function findMail(id: string, tx: Tx = db()): Promise<Mail | null> {
  const row = await tx.mail.findUnique({ where: { id }, select: columns })
  return row && mail(row)
}

export type OutboxMail = Mail & { readonly jobNumber: string | null }

/** What still has to go first, then the newest. */
export async function listOutbox(limit = 200): Promise<OutboxMail[]> {
  const select = { ...columns, job: { select: { number: true } } } as const
  const open = { in: ['waiting', 'sending', 'failed'] satisfies MailState[] }
  const unsent = await db().mail.findMany({ where: { state: open }, orderBy: NEWEST, select })
  const settled = await db().mail.findMany({
    where: { state: { notIn: open.in } },
    orderBy: NEWEST,
    take: limit,
    select,
  })
  return [...unsent, ...settled].map(({ job, ...row }) => ({ ...mail(row), jobNumber: job?.number ?? null }))
}

/** Newest first. */
export async function listMailsOfJob(jobId: string, tx: Tx = db()): Promise<Mail[]> {
  const rows = await tx.mail.findMany({ where: { jobId }, orderBy: NEWEST, select: columns })
  return rows.map(mail)
}

export type NewMail = Pick<Mail, 'jobId' | 'paperId' | 'to' | 'subject' | 'body' | 'createdAt'>

export async function createMail(tx: Tx, input: NewMail): Promise<string> {
  const row = await tx.mail.create({ data: { ...input, state: 'waiting' satisfies MailState }, select: { id: true } })
  return row.id
}

const stateIs = (...states: MailState[]) => ({ state: { in: states } })

/** A try that died with its process. */
const stale = (now: Date) => ({
  state: 'sending' satisfies MailState,
  sentAt: { lt: new Date(now.getTime() - STALE_TRY_MINUTES * 60_000) },
})

/** Oldest first. Failed ones are tried again only when asked for. */
export async function listUnsentIds(now: Date, { failedToo }: { readonly failedToo: boolean }): Promise<string[]> {
  const OR = [stateIs('waiting', ...(failedToo ? (['failed'] as const) : [])), stale(now)]
  const rows = await db().mail.findMany({ where: { OR }, orderBy: { createdAt: 'asc' }, select: { id: true } })
  return rows.map(({ id }) => id)
}

/** Gives the mail with the number of the try in `tries`; null when it is not to be sent, or somebody is just sending it. */
export async function claimMail(tx: Tx, id: string, now: Date): Promise<Mail | null> {
  const where = { id, OR: [stateIs('waiting', 'failed'), stale(now)] }
  const { count } = await tx.mail.updateMany({
    where,
    data: { state: 'sending', sentAt: now, tries: { increment: 1 } },
  })
  return count === 1 ? findMail(id, tx) : null
}

/** False when a later try has taken over. */
export async function settleMail(
  tx: Tx,
  { id, tries }: Pick<Mail, 'id' | 'tries'>,
  outcome: { readonly sentAt: Date } | { readonly words: string },
): Promise<boolean> {
  const data =
    'sentAt' in outcome
      ? { state: 'sent', sentAt: outcome.sentAt, lastError: '' }
      : { state: 'failed', sentAt: null, lastError: outcome.words }
  const { count } = await tx.mail.updateMany({ where: { id, tries, state: 'sending' }, data })
  return count === 1
}

/** False when it is being sent, has been sent, or was cancelled already. */
export async function cancelMail(tx: Tx, id: string, now: Date): Promise<boolean> {
  const where = { id, OR: [stateIs('waiting', 'failed'), stale(now)] }
  const { count } = await tx.mail.updateMany({ where, data: { state: 'cancelled', sentAt: null } })
  return count === 1
}

/** The paper goes out in another mail. */
export async function cancelMailsOf(tx: Tx, paperId: string, now: Date): Promise<void> {
  const where = { paperId, OR: [stateIs('waiting', 'failed'), stale(now)] }
  await tx.mail.updateMany({ where, data: { state: 'cancelled', sentAt: null } })
}
