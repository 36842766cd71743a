/** Sharing out as a computation for a thread of its own. */
import highsLoader from 'highs'
import { shareOut } from '../share-out/share-out'
import type { Task } from '../worker/task'
import { orderProblem } from './order-problem'
import type { ShareOrder } from './share-order'
import { type SharePlan, sharePlan } from './share-plan'
import { withPredictions } from './with-predictions'

export const shareTask: Task<ShareOrder, SharePlan> = async (asked, context) => {
  const { report, cancelled } = context
  const highs = await highsLoader()
  const order = withPredictions(asked, context)
  const built = orderProblem(order)
  const result = shareOut(highs, built.problem, {
    seconds: order.seconds,
    clock: () => performance.now() / 1000,
    onRound: ({ rounds, sets, jobsAtMost }) =>
      report({ stage: 'share-round', figures: { rounds, sets, jobsAtMost, jobs: order.jobs.length } }),
    cancelled,
  })
  return sharePlan(order, built, result)
}
