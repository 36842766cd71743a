/**
 * Parts of the drawers on a job's quote. They are set aside by the yes (worked
 * out, lib/domain/stock/drawer.ts), leave the drawer when their line is ticked
 * as used, and at the latest when the amplifier is handed over. The count of
 * the drawer, what the job has drawn and both histories change together.
 */
import type { Job } from '@/lib/domain/job/job'
import type { Quote } from '@/lib/domain/quote/quote'
import { piecesByPart, withinReach } from '@/lib/domain/stock/drawer'
import { partName, type StockedPart } from '@/lib/domain/stock/part'
import type { Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { savePart } from '@/lib/store/part'
import { findStockedPart, listDrawnBy, saveDraw } from '@/lib/store/part-draw'
import { findAcceptedQuote } from '@/lib/store/quote'
import { refuse, type Step, stale } from '@/lib/workflow/step/step'

/** Told on the part, and by the job's number on the job. */
async function notePart(
  tx: Tx,
  { actor, now }: Step,
  job: Job,
  part: StockedPart,
  { did, count }: { readonly did: string; readonly count?: number },
): Promise<void> {
  const changes = count === undefined ? [] : [{ label: 'Count', from: String(part.count), to: String(count) }]
  const version = count === undefined ? undefined : part.version + 1
  const about = { subject: 'part', subjectId: part.id, jobId: job.id } as const
  await writeHistory(tx, { at: now, person: actor.name, ...about, did: `${did}: ${partName(part)}`, changes, version })
}

type Drawn = { readonly partId: string; readonly to: number; readonly by: string }

/** Brings what the job has of the part to `to`: out of the drawer, or back into it. */
async function draw(tx: Tx, step: Step, job: Job, { partId, to, by }: Drawn): Promise<void> {
  const has = (await listDrawnBy(job.id, tx)).get(partId) ?? 0
  const more = to - has
  if (more === 0) return
  const part = (await findStockedPart(partId, tx)) ?? refuse({ code: 'not-found', what: 'This part' })
  if (more > withinReach(part.drawer, job.id)) refuseShort(part, job, more)
  const { id, version, drawer: _drawer, ...details } = part
  const count = part.count - more
  if (!(await savePart(tx, id, version, { ...details, count }))) refuse(await stale(tx, 'part', id, version))
  await saveDraw(tx, { partId, jobId: job.id, count: to, at: step.now, by: step.actor.name })
  const did = more > 0 ? `${more} taken out of the drawer` : `${-more} back in the drawer`
  await notePart(tx, step, job, part, { did: `${did} for job ${job.number}, ${by}`, count })
}

function refuseShort(part: StockedPart, job: Job, needed: number): never {
  const { claims, inDrawer } = part.drawer
  const others = claims.filter(({ jobId, aside }) => jobId !== job.id && aside > 0).map(({ jobNumber }) => jobNumber)
  return refuse({
    code: 'part-not-there',
    part: partName(part),
    needed,
    there: withinReach(part.drawer, job.id),
    inDrawer,
    asideFor: [...new Set(others)],
  })
}

const used = ({ lines }: Quote): Map<string, number> => piecesByPart(lines.filter(({ doneAt }) => doneAt !== null))

/** The job then has what its ticked lines use, and no more: after a tick, or when what is left over goes back. */
export async function drawAsTicked(tx: Tx, step: Step, job: Job, { partId, by }: Omit<Drawn, 'to'>): Promise<void> {
  const quote = await findAcceptedQuote(job.id, tx)
  await draw(tx, step, job, { partId, to: (quote && used(quote).get(partId)) ?? 0, by })
}

/**
 * At the hand-over: what the quote lists and nobody ticked leaves the drawer now, as far as it is there. An
 * amplifier that is paid for is not kept back for a count.
 */
export async function drawTheRest(tx: Tx, step: Step, job: Job): Promise<void> {
  const quote = await findAcceptedQuote(job.id, tx)
  const drawn = await listDrawnBy(job.id, tx)
  for (const [partId, needed] of piecesByPart(quote?.lines ?? [])) {
    const has = drawn.get(partId) ?? 0
    if (needed <= has) continue
    const part = (await findStockedPart(partId, tx)) ?? refuse({ code: 'not-found', what: 'This part' })
    const there = Math.min(needed - has, withinReach(part.drawer, job.id))
    await draw(tx, step, job, { partId, to: has + there, by: 'not ticked, at the hand-over' })
    const missing = needed - has - there
    const did = `${missing} not ticked and not in the drawer at the hand-over of job ${job.number}; count it`
    if (missing > 0) await notePart(tx, step, job, part, { did })
  }
}

/** Of an amplifier that goes back unrepaired: what was built in is out of it again. */
export async function giveAllBack(tx: Tx, step: Step, job: Job): Promise<void> {
  for (const [partId] of await listDrawnBy(job.id, tx))
    await draw(tx, step, job, { partId, to: 0, by: 'out of the amplifier again' })
}

/** What is set aside now, or no longer is: told on every part that an answer or a hand-over touches. */
export async function noteSetAside(
  tx: Tx,
  step: Step,
  job: Job,
  partIds: Iterable<string>,
  why: string,
): Promise<void> {
  for (const partId of new Set(partIds)) {
    const part = await findStockedPart(partId, tx)
    if (!part) continue
    const own = part.drawer.claims.filter(({ jobId }) => jobId === job.id)
    // Nothing is wanted any more because all of it was taken: that was told then.
    if (own.length === 0 && (await listDrawnBy(job.id, tx)).has(partId)) continue
    const total = (of: 'aside' | 'short') => own.reduce((sum, claim) => sum + claim[of], 0)
    const [aside, short] = [total('aside'), total('short')]
    const missing = short === 0 ? '' : `, ${short} to be ordered`
    const did = own.length === 0 ? 'No longer set aside' : `${aside} set aside${missing}`
    await notePart(tx, step, job, part, { did: `${did} for job ${job.number}, ${why}` })
  }
}

export const partsOn = (quote: Pick<Quote, 'lines'> | null): string[] =>
  quote?.lines.flatMap(({ partId }) => partId ?? []) ?? []
