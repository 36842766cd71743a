/**
 * Puts the sets that a sharing gave to one job on the draft of its quote, as the choice in the
 * tubes step does: all of its groups, or none. A sharing is worked out at one moment, so what
 * it rests on is looked at again first, and everything that changed is told at once.
 */
import { outputGroup } from '@/lib/domain/bench/bench-result'
import { socketsFor } from '@/lib/domain/bench/group-demand'
import type { Job } from '@/lib/domain/job/job'
import type { MatchStatement, Side } from '@/lib/domain/matching/proposal'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { basisChanges, type PlanBasis } from '@/lib/domain/stock/plan-basis'
import type { PlanChange } from '@/lib/domain/stock/plan-change'
import { findAmpSheet } from '@/lib/store/amp'
import { inTransaction, type Tx } from '@/lib/store/database'
import { listDraftedTubes } from '@/lib/store/draft-tube'
import { listTubesById } from '@/lib/store/tube'
import { requireOpenJob } from '@/lib/workflow/quote/quote-draft'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { shopOf } from '@/lib/workflow/stock/add-tube-test'
import { type ChosenTube, choose } from './choose-tubes'
import { planBasis } from './plan-basis'
import { type ChangeScene, type SeenTube, tubeChanges } from './tube-changes'

/** A tube as the sharing saw it. */
export type SharedTube = SeenTube & { readonly side: Side | null }

export type SharedSet = {
  readonly group: string
  readonly tubes: readonly SharedTube[]
  /** Null: nothing is claimed of how alike they are. */
  readonly match: MatchStatement | null
}

export type SharedJob = {
  readonly jobNumber: string
  /** As `planBasis` gave it before the sharing was worked out. */
  readonly basis: PlanBasis
  readonly sets: readonly SharedSet[]
}

/** Gives the id of the quote. */
export function acceptShare(step: Step, shop: Shop, shared: SharedJob): Promise<Result<string, StepFault>> {
  return refusing(() => inTransaction((tx) => accept(tx, step, shop, shared)))
}

async function accept(tx: Tx, step: Step, shop: Shop, shared: SharedJob): Promise<string> {
  const job = await requireOpenJob(tx, shared.jobNumber)
  const seats = await seatsOf(tx, job, shared.sets)
  const changes = [
    ...basisChanges(shared.basis, await planBasis(job, await shopOf(tx), tx)),
    ...seats.flatMap(({ change }) => change ?? []),
    ...(await changesOfTubes(tx, { step, shop, job }, shared.sets)),
  ]
  if (changes.length > 0) refuse({ code: 'plan-stale', changes })
  let quoteId = ''
  for (const { group, match, tubes } of seats)
    quoteId = await choose(tx, step, shop, { jobNumber: job.number, group, tubes, match })
  return quoteId === '' ? refuse({ code: 'not-found', what: 'A set for this job' }) : quoteId
}

type Seats = {
  readonly group: string
  readonly match: MatchStatement | null
  readonly tubes: readonly ChosenTube[]
  readonly change: PlanChange | null
}

async function seatsOf(tx: Tx, job: Job, sets: readonly SharedSet[]): Promise<Seats[]> {
  const sheet = await findAmpSheet(job.ampId, tx)
  return sets.map(({ group, match, tubes }) => {
    const sockets = sheet ? outputGroup(sheet, group) : []
    const placed = socketsFor(tubes, sockets).map(({ tube, position }) => ({
      tubeId: tube.tubeId,
      socketPosition: position,
    }))
    const fits = sockets.length === tubes.length
    return { group, match, tubes: placed, change: fits ? null : { what: 'sockets', group } }
  })
}

async function changesOfTubes(
  tx: Tx,
  scene: ChangeScene & { readonly job: Job },
  sets: readonly SharedSet[],
): Promise<PlanChange[]> {
  const seen = sets.flatMap(({ tubes }) => tubes)
  const stocked = await listTubesById(
    seen.map(({ tubeId }) => tubeId),
    tx,
  )
  const byId = new Map(stocked.map((each) => [each.tube.id, each]))
  const drafted = (await listDraftedTubes(tx)).filter(({ jobId }) => jobId !== scene.job.id)
  return seen.flatMap((tube): PlanChange[] => {
    const elsewhere = drafted.find(({ tubeId }) => tubeId === tube.tubeId)
    if (elsewhere) return [{ what: 'on-draft', mark: tube.mark, jobNumber: elsewhere.jobNumber }]
    return tubeChanges(tube, byId.get(tube.tubeId), scene)
  })
}
