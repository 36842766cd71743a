/**
 * Puts the sets that a sharing gave to one job on the draft of its quote, as the choice in the
 * tubes step does: all of its groups, or none. A sharing is worked out at one moment, so what
 * it rests on is looked at again first, and everything that changed is told at once.
 */
import { outputGroup } from '@/lib/domain/bench/bench-result'
import { socketsFor } from '@/lib/domain/bench/group-demand'
import type { Job } from '@/lib/domain/job/job'
import type { TubeTest } from '@/lib/domain/matching/candidate'
import type { MatchStatement, Side } from '@/lib/domain/matching/proposal'
import type { Money } from '@/lib/domain/money'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import type { PlanChange } from '@/lib/domain/stock/plan-change'
import { activeHold, type StockedTube } from '@/lib/domain/stock/tube'
import { findAmpSheet } from '@/lib/store/amp'
import { inTransaction, type Tx } from '@/lib/store/database'
import { listDraftedTubes } from '@/lib/store/draft-tube'
import { listReadingSets } from '@/lib/store/reading-set'
import { listTubesById } from '@/lib/store/tube'
import { type ChosenTube, choose } from './choose-tubes'
import { requireOpenJob } from './quote-draft'
import { refuse, refusing, type Step } from './step'
import type { StepFault } from './step-fault'

/** A tube as the sharing saw it. */
export type SharedTube = {
  readonly tubeId: string
  readonly mark: string
  readonly side: Side | null
  readonly test: TubeTest
  readonly price: Money
}

export type SharedSet = {
  readonly group: string
  readonly tubes: readonly SharedTube[]
  /** Null: nothing is claimed of how alike they are. */
  readonly match: MatchStatement | null
}

export type SharedJob = {
  readonly jobNumber: string
  /** As `readAs` gives it. */
  readonly readAs: string
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
    ...(await readingChanges(tx, job, shared.readAs)),
    ...seats.flatMap(({ change }) => change ?? []),
    ...(await tubeChanges(tx, step, shop, job, shared.sets)),
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

async function readingChanges(tx: Tx, job: Job, seen: string): Promise<PlanChange[]> {
  const [latest] = await listReadingSets(job.id, tx)
  return readAs(latest) === seen ? [] : [{ what: 'amplifier-read' }]
}

/** Which round of readings a demand rests on; empty: none. */
export const readAs = (set: { readonly id: string; readonly version: number } | null | undefined): string =>
  set ? `${set.id}/${set.version}` : ''

async function tubeChanges(
  tx: Tx,
  step: Step,
  shop: Shop,
  job: Job,
  sets: readonly SharedSet[],
): Promise<PlanChange[]> {
  const seen = sets.flatMap(({ tubes }) => tubes)
  const stocked = await listTubesById(
    seen.map(({ tubeId }) => tubeId),
    tx,
  )
  const byId = new Map(stocked.map((each) => [each.tube.id, each]))
  const drafted = (await listDraftedTubes(tx)).filter(({ jobId }) => jobId !== job.id)
  return seen.flatMap((tube): PlanChange[] => {
    const now = byId.get(tube.tubeId)
    if (!now) return [{ what: 'gone', mark: tube.mark, whereabouts: null }]
    const elsewhere = drafted.find(({ tubeId }) => tubeId === tube.tubeId)
    if (elsewhere) return [{ what: 'on-draft', mark: tube.mark, jobNumber: elsewhere.jobNumber }]
    return standingChanges(tube, now, { step, shop, job })
  })
}

type Scene = { readonly step: Step; readonly shop: Shop; readonly job: Job }

function standingChanges(seen: SharedTube, stocked: StockedTube, { step, shop, job }: Scene): PlanChange[] {
  const { tube } = stocked
  const { mark } = tube
  if (tube.whereabouts !== 'in-stock') return [{ what: 'gone', mark, whereabouts: tube.whereabouts }]
  if (activeHold(tube, step.now) !== '' && tube.heldForJob !== job.id)
    return [{ what: 'held', mark, jobNumber: tube.heldForJobNumber }]
  if (tube.condition === 'reject') return [{ what: 'rejected', mark }]
  const view = { now: step.now, timeZone: shop.timeZone, jobInHand: job.id, catalogue: shop }
  const { test } = candidateOf(stocked, view)
  return [
    ...(sameTest(seen.test, test) ? [] : [{ what: 'read-again', mark, before: seen.test, now: test } as const]),
    ...(seen.price === tube.price ? [] : [{ what: 'price', mark } as const]),
  ]
}

function sameTest(a: TubeTest, b: TubeTest | null): boolean {
  if (!b) return false
  const of = ({ testedAt, instrument, testPoint, plateCurrent, transconductance, shorts }: TubeTest) =>
    JSON.stringify([
      [testedAt, instrument, plateCurrent, transconductance, shorts],
      [testPoint.plateVoltage, testPoint.screenVoltage, testPoint.gridVoltage],
    ])
  return of(a) === of(b)
}
