/** The amplifier goes back repaired: released, all items with it, paid or agreed. Freezes the pickup sheet. */

import type { Job } from '@/lib/domain/job/job'
import { money } from '@/lib/domain/money'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction, type Tx } from '@/lib/store/database'
import { requireJob } from '@/lib/workflow/counter/keep-job'
import { moneyIn } from '@/lib/workflow/quote/quote-notes'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { drawTheRest } from '@/lib/workflow/work/draw-parts'
import { assertReleasable } from '@/lib/workflow/work/release-job'
import { assertCollector, assertItems, assertMovable, type Collector, closeJob, type OpenEnds } from './close-job'
import { jobAccount } from './job-account'

export type HandOver = OpenEnds & { readonly jobNumber: string; readonly collector: Collector }

/** Gives the id of the pickup sheet. */
export function handOver(step: Step, shop: Shop, input: HandOver): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireJob(tx, input.jobNumber)
      assertMovable(job, 'collected')
      await assertReleasable(tx, shop, job)
      assertItems(job, input)
      await assertSettled(tx, shop, job, input)
      assertCollector(input.collector)
      await drawTheRest(tx, step, job)
      const did = `Handed over to ${input.collector.name.trim()}`
      return closeJob(tx, step, shop, job, {
        ...input,
        to: 'collected',
        outcome: { kind: 'repaired' },
        changes: [],
        did,
      })
    }),
  )
}

async function assertSettled(tx: Tx, shop: Shop, job: Job, { owesNote }: OpenEnds): Promise<void> {
  const { balance } = (await jobAccount(job.id, tx)).account
  if (balance === 0 || owesNote.trim() !== '') return
  if (balance > 0) refuse({ code: 'balance-open', balance: moneyIn(shop, balance) })
  refuse({ code: 'balance-over', over: moneyIn(shop, money(-balance)) })
}
