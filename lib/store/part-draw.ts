/** What jobs claim of the drawers and have taken out of them. */

import { isClosed, JOB_STATES } from '@/lib/domain/job/job-state'
import { claimsOn, drawerOf, type JobNeeds, piecesByPart } from '@/lib/domain/stock/drawer'
import type { Part, StockedPart } from '@/lib/domain/stock/part'
import { db, type Tx } from './database'
import { findPart, listParts } from './part'

const CLOSED = JOB_STATES.filter(isClosed)

const yesColumns = {
  answeredAt: true,
  state: true,
  lines: { where: { partId: { not: null } }, select: { partId: true, thousandths: true } },
} as const

/** Of every open job with an accepted quote. A yes that a later one replaced is still one. */
async function listJobNeeds(tx: Tx): Promise<JobNeeds[]> {
  const rows = await tx.job.findMany({
    where: { state: { notIn: [...CLOSED] }, quotes: { some: { state: 'accepted' } } },
    select: {
      id: true,
      number: true,
      partDraws: { select: { partId: true, count: true } },
      quotes: {
        where: { answer: 'accepted', state: { in: ['accepted', 'superseded'] } },
        orderBy: [{ answeredAt: 'asc' }, { revision: 'asc' }],
        select: yesColumns,
      },
    },
  })
  return rows.map(({ id, number, quotes, partDraws }) => ({
    jobId: id,
    jobNumber: number,
    yeses: inForce(quotes).map(({ answeredAt, lines }) => ({
      at: answeredAt ?? new Date(0),
      needed: piecesByPart(lines),
    })),
    drawn: new Map(partDraws.map(({ partId, count }) => [partId, count])),
  }))
}

/** The one that stands comes last, whatever the times written beside the answers. */
const inForce = <Yes extends { readonly state: string }>(quotes: readonly Yes[]): Yes[] =>
  quotes.toSorted((a, b) => Number(a.state === 'accepted') - Number(b.state === 'accepted'))

const stocked = (part: Part, jobs: readonly JobNeeds[]): StockedPart => ({
  ...part,
  drawer: drawerOf(part.count, claimsOn(part.id, jobs)),
})

/** By kind, then name. */
export async function listStockedParts(search = '', tx: Tx = db()): Promise<StockedPart[]> {
  const [parts, jobs] = [await listParts(search, tx), await listJobNeeds(tx)]
  return parts.map((part) => stocked(part, jobs))
}

export async function findStockedPart(id: string, tx: Tx = db()): Promise<StockedPart | null> {
  const part = await findPart(id, tx)
  return part && stocked(part, await listJobNeeds(tx))
}

/** By part: what the job has taken and not given back. */
export async function listDrawnBy(jobId: string, tx: Tx = db()): Promise<Map<string, number>> {
  const rows = await tx.partDraw.findMany({ where: { jobId, count: { gt: 0 } }, select: { partId: true, count: true } })
  return new Map(rows.map(({ partId, count }) => [partId, count]))
}

export type PartDrawn = {
  readonly jobNumber: string
  readonly ampName: string
  readonly count: number
  readonly at: Date
  readonly by: string
}

/** Newest first. */
export async function listDrawsOf(partId: string, tx: Tx = db()): Promise<PartDrawn[]> {
  const rows = await tx.partDraw.findMany({
    where: { partId, count: { gt: 0 } },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    select: {
      count: true,
      at: true,
      by: true,
      job: { select: { number: true, amp: { select: { make: true, model: true } } } },
    },
  })
  return rows.map(({ job, ...draw }) => ({
    ...draw,
    jobNumber: job.number,
    ampName: `${job.amp.make} ${job.amp.model}`.trim(),
  }))
}

type Draw = {
  readonly partId: string
  readonly jobId: string
  readonly count: number
  readonly at: Date
  readonly by: string
}

/** `count` is all the job has now. */
export async function saveDraw(tx: Tx, { partId, jobId, ...draw }: Draw): Promise<void> {
  if (draw.count < 0) throw new Error(`Job ${jobId} cannot have drawn ${draw.count} of part ${partId}`)
  await tx.partDraw.upsert({
    where: { partId_jobId: { partId, jobId } },
    create: { partId, jobId, ...draw },
    update: draw,
  })
}
