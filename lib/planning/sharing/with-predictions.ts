/** What every tube would do in the amplifier of every job whose circuit is known: the longest part of a large sharing. */
import { solveFaultText } from '@/lib/domain/circuit/circuit-text'
import { carryTarget } from '@/lib/domain/matching/carried-stock'
import { fail } from '@/lib/domain/result'
import { stockPredictions } from '@/lib/domain/stock/stock-predictions'
import type { TaskContext } from '../worker/task'
import type { ShareAsk, ShareJob, ShareOrder } from './share-order'

export function withPredictions(order: ShareOrder, { report, cancelled }: TaskContext): ShareOrder {
  const jobs = order.jobs.map((job, at) => {
    report({ stage: 'predicting', figures: { job: at + 1, jobs: order.jobs.length } })
    return { ...job, groups: job.groups.map((ask) => (cancelled() ? ask : predicted(order, job, ask))) }
  })
  return { ...order, jobs }
}

function predicted({ stock, view, limits }: ShareOrder, { readOn }: ShareJob, ask: ShareAsk): ShareAsk {
  if (!ask.circuit.ok || !view) return ask
  const family = stock.filter(({ candidate }) => candidate.family === ask.demand.family)
  const { carrying } = limits
  const to =
    carrying &&
    carryTarget(
      family.map(({ candidate }) => candidate),
      carrying,
    )
  const found = stockPredictions(
    family.flatMap(({ stocked }) => stocked ?? []),
    ask.circuit.value,
    {
      ...{ ...view, readOn },
      ...(to ? { carrying: { ...carrying, to } } : {}),
    },
  )
  return found.ok
    ? { ...ask, predictions: found.value }
    : { ...ask, circuit: fail(solveFaultText(found.fault, view.words)) }
}
