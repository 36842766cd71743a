/** How far a job has come, for the step strip: counts only, one query each. */
import { db } from './database'

export type JobProgress = {
  readonly sockets: number
  readonly readingsBefore: number
  readonly readingsAfter: number
  readonly quote: {
    readonly number: string
    readonly revision: number
    readonly state: string
    readonly tubes: number
  } | null
  readonly workOrders: number
  readonly safetyFailed: number
  readonly safetySigned: number
  readonly pickupSheets: number
}

export async function findJobProgress(jobId: string, ampId: string): Promise<JobProgress> {
  const [sockets, phases, quote, papers, safety] = await Promise.all([
    db().socket.count({ where: { ampId } }),
    db().readingSet.groupBy({ by: ['phase'], where: { jobId }, _count: true }),
    db().quote.findFirst({
      where: { jobId },
      orderBy: [{ createdAt: 'desc' }, { revision: 'desc' }],
      select: { number: true, revision: true, state: true, lines: { where: { kind: 'tube' }, select: { id: true } } },
    }),
    db().paper.groupBy({ by: ['kind'], where: { jobId, takenBackAt: null }, _count: true }),
    db().safetyLine.groupBy({ by: ['outcome'], where: { jobId }, _count: true }),
  ])
  const count = <Row extends { _count: number }>(rows: readonly Row[], is: (row: Row) => boolean) =>
    rows.find(is)?._count ?? 0
  return {
    sockets,
    readingsBefore: count(phases, (row) => row.phase === 'before'),
    readingsAfter: count(phases, (row) => row.phase === 'after'),
    quote: quote && { number: quote.number, revision: quote.revision, state: quote.state, tubes: quote.lines.length },
    workOrders: count(papers, (row) => row.kind === 'work-order'),
    pickupSheets: count(papers, (row) => row.kind === 'pickup-sheet'),
    safetyFailed: count(safety, (row) => row.outcome === 'fail'),
    safetySigned: safety.reduce((total, row) => total + row._count, 0),
  }
}
