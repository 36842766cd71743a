/** Choosing tubes from the drawers the way the tubes page does: by the latest readings, exact, with its statement. */
import { benchResult } from '@/lib/domain/bench/bench-result'
import { groupDemand, socketsFor } from '@/lib/domain/bench/group-demand'
import { dayInZone } from '@/lib/domain/calendar'
import type { Candidate } from '@/lib/domain/matching/candidate'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { matchStatement } from '@/lib/domain/matching/match-statement'
import type { Proposal, SetOption } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { candidateOf } from '@/lib/domain/stock/candidate-of'
import { stockType } from '@/lib/domain/stock/stock-type'
import type { TubeCondition } from '@/lib/domain/stock/tube'
import { findJob } from '@/lib/store/job'
import { findLatestReadings } from '@/lib/store/reading-set'
import { listStockForFamily } from '@/lib/store/tube'
import type { Step } from '@/lib/workflow/step/step'
import { chooseTubes, type TubeChoice } from '@/lib/workflow/tubes/choose-tubes'
import { settled } from '@/seed/settled'
import type { DemoWorld } from '@/seed/world'
import { sheetOf } from './bench'
import type { Deed, ToldJob } from './story'

export type Wanted = { readonly type: string; readonly condition: TubeCondition }

async function candidates(
  world: DemoWorld,
  step: Step,
  jobId: string,
  { type, condition }: Wanted,
): Promise<Candidate[]> {
  const stock = await listStockForFamily(stockType(type, world.shop).family)
  const view = { now: step.now, timeZone: world.shop.timeZone, jobInHand: jobId, catalogue: world.shop }
  return stock
    .filter(({ tube }) => tube.designation === type && tube.condition === condition)
    .map((stocked) => candidateOf(stocked, view))
}

async function jobId({ number }: ToldJob): Promise<string> {
  const job = await findJob(number)
  if (!job) throw new Error(`Job ${number} is not there`)
  return job.id
}

/** The best may lie outside the yardsticks where its sides balance better: this shop quotes what it can call matched. */
const matchedOf = ({ best, closest, leastPrice }: Proposal): SetOption | null =>
  [best, closest, leastPrice].find((option) => option?.match === 'both') ?? best

/** The best matched set for a group of output sockets. */
export const chooseSet =
  (group: string, wanted: Wanted): Deed =>
  async (world, step, job) => {
    const { shop } = world
    const id = await jobId(job)
    const sheet = await sheetOf(world, job.amp)
    const readings = await findLatestReadings(id, 'before')
    const asked = groupDemand(sheet, group, readings && benchResult(sheet, readings, shop), shop)
    if (!asked.ok) throw new Error(`No set can be asked for on ${job.amp}: ${asked.fault.code}`)
    const proposal = proposeSet(await candidates(world, step, id, wanted), asked.value.demand, {
      maximumTestAgeDays: shop.testAgeDays,
      allowOverPrintedRating: true,
      priceCap: null,
      oneDesignation: true,
      yardsticks: USUAL_YARDSTICKS,
      asOf: dayInZone(step.now, shop.timeZone),
    })
    const set = matchedOf(proposal)
    if (!set) throw new Error(`The demo stock has no set of ${wanted.type} for ${job.amp}`)
    const placed = socketsFor(set.tubes, asked.value.sockets)
    const tubes = placed.map(({ tube, position }) => ({ tubeId: tube.candidate.tubeId, socketPosition: position }))
    await choose(world, step, {
      jobNumber: job.number,
      group,
      tubes,
      match: matchStatement(set, USUAL_YARDSTICKS, null),
    })
  }

/** One tube for a socket of its own: the strongest free one. */
export const chooseOne =
  (position: string, wanted: Wanted): Deed =>
  async (world, step, job) => {
    const free = (await candidates(world, step, await jobId(job), wanted)).filter(
      ({ state, test }) => state.kind === 'free' && test?.shorts !== true,
    )
    const strength = ({ test }: Candidate) => test?.plateCurrent ?? 0
    const [first] = free.sort((a, b) => strength(b) - strength(a) || a.mark.localeCompare(b.mark))
    if (!first) throw new Error(`The demo stock has no ${wanted.type} for ${position} of ${job.amp}`)
    const tubes = [{ tubeId: first.tubeId, socketPosition: position }]
    await choose(world, step, { jobNumber: job.number, group: position, tubes, match: null })
  }

async function choose(world: DemoWorld, step: Step, choice: TubeChoice): Promise<void> {
  await settled(world.shop, `tubes for job ${choice.jobNumber}`, chooseTubes(step, world.shop, choice))
}
