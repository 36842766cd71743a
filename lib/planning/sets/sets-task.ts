/** Making sets for the shelf as a computation for a thread of its own. */
import { pairTubes } from '@/lib/domain/pairing/pair-tubes'
import { tubePlane } from '@/lib/domain/pairing/tube-plane'
import { planSets } from '../quads/plan-sets'
import type { Task, TaskContext } from '../worker/task'
import { type SetsOrder, type SetsPlan, setsPlan } from './sets-plan'

export const setsTask: Task<SetsOrder, SetsPlan> = (order, context) =>
  order.size === 2 ? pairs(order, context) : quads(order, context)

/** Exact: the certificate is checked before it is given. */
function pairs(order: SetsOrder, { report, cancelled }: TaskContext): SetsPlan {
  const paired = pairTubes(order.cohort.tubes, order.rule, ({ round, missing }) => {
    report({ stage: 'pairing-round', figures: { round, missing } })
    return !cancelled()
  })
  if (!paired.ok) throw new Error(`These cannot be paired: ${paired.fault.kind}`)
  const { pairs: sets, singles, totalCost, proof } = paired.value
  return setsPlan(order, {
    sets: sets.map(({ tubes }) => tubes),
    singles,
    cost: totalCost,
    bound: proof.leastCost,
    ended: 'optimal',
  })
}

async function quads(order: SetsOrder, { report, cancelled }: TaskContext): Promise<SetsPlan> {
  const placed = tubePlane(order.cohort.tubes, order.rule, order.size)
  if (!placed.ok) throw new Error(`These cannot be made into sets: ${placed.fault.kind}`)
  const { tubes, plane } = placed.value
  const found = await planSets(plane, {
    size: order.size,
    seconds: order.seconds,
    now: () => performance.now(),
    report,
    cancelled,
  })
  const at = (places: readonly number[]) => places.flatMap((place) => tubes[place] ?? [])
  const { cost, bound, ended } = found
  return setsPlan(order, {
    sets: found.sets.map(({ members }) => at(members)),
    singles: at(found.singles),
    ...{ cost, bound, ended },
  })
}
