/** The order for the sharing: the jobs ticked, every tube of the types they ask for, and the limits typed. */
import 'server-only'
import { arrangementIn, groupCircuit } from '@/app/jobs/[jobNumber]/bench/group-circuit'
import { dayInZone } from '@/lib/domain/calendar'
import type { MatchLimits } from '@/lib/domain/matching/candidate'
import type { Shop } from '@/lib/domain/shop/shop'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import { activeHold, type StockedTube } from '@/lib/domain/stock/tube'
import { wordsFor } from '@/lib/domain/words'
import type { ShareAsk, ShareJob, ShareOrder, ShareStock } from '@/lib/planning/sharing/share-order'
import { findCarrying } from '@/lib/store/carrying'
import { listDraftedTubes } from '@/lib/store/draft-tube'
import { listStockForFamily } from '@/lib/store/tube'
import type { WaitingJob } from './waiting-jobs'

const SECONDS = 30

export async function shareOrderOf(
  jobs: readonly WaitingJob[],
  limits: MatchLimits,
  { shop, now }: { readonly shop: Shop; readonly now: Date },
): Promise<ShareOrder> {
  const families = [...new Set(jobs.flatMap(({ groups }) => groups.map(({ demand }) => demand.family)))]
  const [stocked, drafted, carrying] = await Promise.all([
    Promise.all(families.map((family) => listStockForFamily(family))),
    listDraftedTubes(),
    findCarrying(),
  ])
  const takingPart = new Set(jobs.map(({ line }) => line.number))
  // A set on the draft of a job that takes part is up for sharing again.
  const spoken = new Map(
    drafted.filter(({ jobNumber }) => !takingPart.has(jobNumber)).map((each) => [each.tubeId, each.jobNumber]),
  )
  const stock = stocked.flat().map((tube): ShareStock => shareStock(tube, spoken.get(tube.tube.id), { shop, now }))
  return {
    jobs: await Promise.all(jobs.map((job) => shareJob(job, shop))),
    stock,
    limits: { ...limits, carrying },
    view: { catalogue: { ownTypes: shop.ownTypes }, now, words: wordsFor(shop.words) },
    seconds: SECONDS,
  }
}

async function shareJob({ line, bench, groups, basis }: WaitingJob, shop: Shop): Promise<ShareJob> {
  const asks = groups.map(async ({ group, designation, demand, sockets }): Promise<ShareAsk> => {
    const circuit = await groupCircuit(bench, group, shop)
    const arrangement = arrangementIn(circuit, demand)
    return { group, designation, sockets, circuit, demand: { ...demand, arrangement } }
  })
  const readOn = bench.set ? dayInZone(bench.set.takenAt, shop.timeZone) : ''
  return { jobNumber: line.number, groups: await Promise.all(asks), basis, readOn }
}

function shareStock(
  stocked: StockedTube,
  draftOf: string | undefined,
  { shop, now }: { readonly shop: Shop; readonly now: Date },
): ShareStock {
  const candidate = candidateOf(stocked, { now, timeZone: shop.timeZone, jobInHand: null, catalogue: shop })
  if (draftOf !== undefined && candidate.state.kind === 'free') {
    const state = { kind: 'reserved', holder: `job ${draftOf}, on its draft quote` } as const
    return { stocked, candidate: { ...candidate, state }, heldFor: null }
  }
  const held = activeHold(stocked.tube, now) !== ''
  return { stocked, candidate, heldFor: held ? stocked.tube.heldForJobNumber : null }
}
