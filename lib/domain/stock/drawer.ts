/**
 * What of a part's drawer is set aside for jobs, and what is free.
 *
 * A job claims the pieces its accepted quote lists, less what it has drawn
 * already. Claims are served in the order in which the customers said yes, each
 * as far as the drawer goes:
 *   set aside = min(claimed, what is left), free = in drawer − all set aside,
 *   short = claimed − set aside.
 * A revision does not lose its place: pieces that every yes since then still
 * lists keep the time of that yes, only what was added later stands behind.
 * None of it is stored, so it follows every count and every answer by itself.
 */

/** One yes of a job to a quote. */
export type PartYes = { readonly at: Date; readonly needed: ReadonlyMap<string, number> }

export type JobNeeds = {
  readonly jobId: string
  readonly jobNumber: string
  /** Oldest first; the last is the one that stands. */
  readonly yeses: readonly PartYes[]
  /** Taken out of the drawer for this job and not given back, by part. */
  readonly drawn: ReadonlyMap<string, number>
}

export type PartClaim = {
  readonly jobId: string
  readonly jobNumber: string
  /** Still to be drawn; above nothing. */
  readonly pieces: number
  readonly since: Date
}

export type ServedClaim = PartClaim & { readonly aside: number; readonly short: number }

export type Drawer = {
  readonly inDrawer: number
  readonly aside: number
  readonly free: number
  readonly short: number
  /** In the order they are served. */
  readonly claims: readonly ServedClaim[]
}

/** Pieces a line draws; the drawer gives no part of a piece. */
export const piecesOf = ({ thousandths }: { readonly thousandths: number }): number => Math.ceil(thousandths / 1000)

type DrawingLine = { readonly partId: string | null; readonly thousandths: number }

/** By part, over all lines that draw it. */
export function piecesByPart(lines: readonly DrawingLine[]): Map<string, number> {
  const pieces = new Map<string, number>()
  for (const line of lines)
    if (line.partId !== null) pieces.set(line.partId, (pieces.get(line.partId) ?? 0) + piecesOf(line))
  return pieces
}

export const claimsOn = (partId: string, jobs: readonly JobNeeds[]): PartClaim[] =>
  jobs.flatMap((job) => claimsOf(partId, job))

/** Pieces that were listed from the k-th yes on are the least that any yes since then lists. */
function claimsOf(partId: string, { jobId, jobNumber, yeses, drawn }: JobNeeds): PartClaim[] {
  // What was drawn first is what was wanted first.
  let covered = drawn.get(partId) ?? 0
  return yeses.flatMap(({ at: since }, index) => {
    const lasting = Math.min(...yeses.slice(index).map(({ needed }) => needed.get(partId) ?? 0))
    const pieces = lasting - covered
    if (pieces <= 0) return []
    covered = lasting
    return [{ jobId, jobNumber, pieces, since }]
  })
}

export function drawerOf(inDrawer: number, claims: readonly PartClaim[]): Drawer {
  let left = inDrawer
  const inTurn = claims.toSorted((a, b) => a.since.getTime() - b.since.getTime() || (a.jobId < b.jobId ? -1 : 1))
  const served = inTurn.map((claim) => {
    const aside = Math.min(claim.pieces, left)
    left -= aside
    return { ...claim, aside, short: claim.pieces - aside }
  })
  const aside = inDrawer - left
  return { inDrawer, aside, free: left, short: served.reduce((sum, { short }) => sum + short, 0), claims: served }
}

/** What a job can still take: what is set aside for it, and what is free. */
export function withinReach({ claims, free }: Drawer, jobId: string): number {
  return claims.reduce((sum, claim) => sum + (claim.jobId === jobId ? claim.aside : 0), free)
}

/** Jobs the drawer is short for, each once, with all it waits for. */
export function shortfalls({ claims }: Drawer): { jobId: string; jobNumber: string; pieces: number; short: number }[] {
  const jobs = [...new Set(claims.filter(({ short }) => short > 0).map(({ jobId }) => jobId))]
  return jobs.map((jobId) => {
    const own = claims.filter((claim) => claim.jobId === jobId)
    const total = (of: 'pieces' | 'short') => own.reduce((sum, claim) => sum + claim[of], 0)
    return { jobId, jobNumber: own[0]?.jobNumber ?? '', pieces: total('pieces'), short: total('short') }
  })
}

/** "2 needed, 1 free: order 1"; empty when there is enough. `there` is drawn, set aside for the job, or free. */
export const shortText = (needed: number, there: number): string =>
  there >= needed ? '' : `${needed} needed, ${Math.max(there, 0)} free: order ${needed - Math.max(there, 0)}`
