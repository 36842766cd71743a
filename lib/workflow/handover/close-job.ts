/** What every hand-over ends with: who took it, the state, the frozen sheet, and nothing held any more. */
import type { PickupOutcome } from '@/lib/documents/pickup-sheet'
import { pickupPaper } from '@/lib/documents/pickup-sheet'
import type { Change } from '@/lib/domain/history/changes'
import type { Job } from '@/lib/domain/job/job'
import { type JobState, jobStateWord, moveJob } from '@/lib/domain/job/job-state'
import type { Shop } from '@/lib/domain/shop/shop'
import type { Tx } from '@/lib/store/database'
import { findJobHead } from '@/lib/store/job-head'
import { createPaper } from '@/lib/store/paper'
import { releaseHoldsOfJob } from '@/lib/store/tube'
import { changeJob } from '@/lib/workflow/counter/keep-job'
import { refuse, type Step } from '@/lib/workflow/step/step'
import { type Closing, pickupFacts } from './pickup-facts'

export type Collector = {
  readonly name: string
  readonly isOwner: boolean
  /** What was shown; needed of anybody but the owner. */
  readonly identity: string
}

/** Notes that let a hand-over go on although something is open. */
export type OpenEnds = { readonly itemsNote: string; readonly owesNote: string }

export function assertMovable(job: Job, to: JobState): void {
  const moved = moveJob(job.state, to)
  if (job.state === to) refuse({ code: 'job-closed', state: job.state })
  if (!moved.ok) refuse(moved.fault)
}

export function assertCollector({ name, isOwner, identity }: Collector): void {
  if (name.trim() === '') refuse({ code: 'collector-missing' })
  if (!isOwner && identity.trim() === '') refuse({ code: 'identity-missing', name })
}

export function assertItems({ items }: Job, { itemsNote }: OpenEnds): void {
  const left = items.filter(({ returned }) => !returned).map(({ count, label }) => `${count} × ${label}`)
  if (left.length > 0 && itemsNote.trim() === '') refuse({ code: 'items-left', labels: left })
}

export type HandedOver = OpenEnds & {
  readonly to: Extract<JobState, 'collected' | 'returned-unrepaired'>
  readonly outcome: PickupOutcome
  readonly collector: Collector
  readonly changes: readonly Change[]
  readonly did: string
}

/** Gives the id of the pickup sheet. */
export async function closeJob(tx: Tx, step: Step, shop: Shop, job: Job, handed: HandedOver): Promise<string> {
  const { actor, now } = step
  const { to, collector, itemsNote, owesNote } = handed
  const name = collector.name.trim()
  const identity = collector.isOwner ? '' : collector.identity.trim()
  const notes = [
    ['State', jobStateWord(job.state), jobStateWord(to)],
    ['Collected by', '', collector.isOwner ? `${name}, the owner` : name],
    ['Identity', '', identity],
    ['Items that stay', '', itemsNote.trim()],
    ['Balance, as agreed', '', owesNote.trim()],
  ] as const
  const changes = [
    ...notes.map(([label, from, after]) => ({ label, from, to: after })).filter(({ to: after }) => after !== ''),
    ...handed.changes,
  ]
  const change = { state: to, stateSince: now, collectedBy: name, collectedIdentity: identity, collectedAt: now }
  await changeJob(tx, step, job, { did: handed.did, change, changes })
  await releaseHoldsOfJob(tx, job.id)
  const head = await findJobHead(job.number, tx)
  if (!head) throw new Error(`Job ${job.number} is gone in the middle of its hand-over`)
  const shownIdentity = identity === '' ? null : `${identity}, seen by ${actor.name}`
  const closing: Closing = {
    outcome: handed.outcome,
    collector: { name, isOwner: collector.isOwner, identity: shownIdentity },
    itemsNote: itemsNote.trim(),
    owesNote: owesNote.trim(),
  }
  const view = pickupPaper(await pickupFacts(tx, shop, head, now, closing))
  return createPaper(tx, {
    jobId: job.id,
    kind: 'pickup-sheet',
    number: job.number,
    view,
    issuedAt: now,
    issuedBy: actor.name,
  })
}
