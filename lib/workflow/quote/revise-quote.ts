/**
 * Begins the next revision of a quote that is out: a draft with the same lines
 * at today's tax, its tubes as they were exchanged since. A quote still waiting for its answer is superseded and what it
 * holds passes to the draft, to the same end. A quote that was accepted stands
 * until the customer has said yes to the revision.
 */
import { addDays, dayInZone } from '@/lib/domain/calendar'
import { settledLines } from '@/lib/domain/quote/exchanged'
import { type Quote, quoteTitle, standingMatches, tubeIdsOf } from '@/lib/domain/quote/quote'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction, type Tx } from '@/lib/store/database'
import { createQuote, passHolds, saveQuote } from '@/lib/store/quote'
import { listTubesById } from '@/lib/store/tube'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { requireLatest, requireOpenJob } from './quote-draft'
import { noteQuote } from './quote-notes'

/** Gives the id of the draft; a draft that is there already is that draft. */
export function reviseQuote(step: Step, shop: Shop, jobNumber: string): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireOpenJob(tx, jobNumber)
      const before = await requireLatest(tx, job)
      return before.state === 'draft' ? before.id : revise(tx, step, shop, before)
    }),
  )
}

async function revise(tx: Tx, step: Step, shop: Shop, before: Quote): Promise<string> {
  const validUntil = addDays(dayInZone(step.now, shop.timeZone), shop.quoteValidDays)
  const { taxName, taxMilliPercent } = shop
  const { jobId, depositPercent, note } = before
  const tubes = (await listTubesById(tubeIdsOf(before), tx)).map(({ tube }) => tube)
  const lines = settledLines(
    before.lines.map(({ id: _id, doneAt: _at, doneBy: _by, ...line }) => line),
    tubes,
  )
  const matches = standingMatches(before.matches, lines)
  const terms = { taxName, taxMilliPercent, depositPercent, note, validUntil }
  const draft = await createQuote(tx, { jobId, createdAt: step.now, revises: before, matches, lines, ...terms })
  await noteQuote(tx, step, {
    quote: draft,
    did: `Quote ${quoteTitle(draft)} begun from revision ${before.revision}`,
    version: draft.version,
  })
  if (before.state === 'sent') await supersede(tx, step, before, draft)
  return draft.id
}

async function supersede(tx: Tx, step: Step, before: Quote, draft: Quote): Promise<void> {
  if (!(await saveQuote(tx, before.id, before.version, { state: 'superseded' })))
    refuse(await stale(tx, 'quote', before.id, before.version))
  await passHolds(tx, before.id, draft.id)
  await noteQuote(tx, step, {
    quote: before,
    did: `Quote ${quoteTitle(before)} is superseded`,
    version: before.version + 1,
  })
}
