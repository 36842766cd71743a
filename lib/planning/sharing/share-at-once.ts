/** Sharing out where it may be waited for. The integer solver is loaded with this file. */
import highsLoader from 'highs'
import { shareOut } from '../share-out/share-out'
import { orderProblem } from './order-problem'
import type { ShareOrder } from './share-order'
import { type SharePlan, sharePlan } from './share-plan'

const highs = await highsLoader()

export function shareAtOnce(order: ShareOrder): SharePlan {
  const built = orderProblem(order)
  const { seconds } = order
  return sharePlan(order, built, shareOut(highs, built.problem, { seconds, clock: () => performance.now() / 1000 }))
}
