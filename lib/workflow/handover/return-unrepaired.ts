/**
 * The amplifier goes back as it is, neither repaired nor safety-tested, with the
 * reason. What is charged for looking at it is settled in the same step.
 */

import type { PaymentWay } from '@/lib/domain/job/account'
import type { Job } from '@/lib/domain/job/job'
import { jobStateWord } from '@/lib/domain/job/job-state'
import { type Money, money } from '@/lib/domain/money'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction, type Tx } from '@/lib/store/database'
import { createCharge, createPayment } from '@/lib/store/payment'
import { findAcceptedQuote } from '@/lib/store/quote'
import { requireJob } from '@/lib/workflow/counter/keep-job'
import { moneyIn } from '@/lib/workflow/quote/quote-notes'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { giveAllBack, noteSetAside, partsOn } from '@/lib/workflow/work/draw-parts'
import { assertCollector, assertItems, assertMovable, type Collector, closeJob, type OpenEnds } from './close-job'
import { jobAccount } from './job-account'

export type ReturnUnrepaired = OpenEnds & {
  readonly jobNumber: string
  readonly reason: string
  /** What is asked for it in all, bench fee included; may be nothing. */
  readonly charge: Money
  /** How what is left of it changes hands now; empty: as noted. */
  readonly how: PaymentWay | ''
  /** What was taken out of the drawers for it is out of the amplifier again, and goes back. Left out: it stays in. */
  readonly partsBack?: boolean
  readonly collector: Collector
}

/** Gives the id of the pickup sheet. */
export function returnUnrepaired(step: Step, shop: Shop, input: ReturnUnrepaired): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireJob(tx, input.jobNumber)
      const reason = input.reason.trim()
      assertMovable(job, 'returned-unrepaired')
      if (reason === '') refuse({ code: 'return-reason-missing' })
      assertItems(job, input)
      assertCollector(input.collector)
      const settled = await settle(tx, step, shop, job, input)
      const changes = [
        { label: 'Reason', from: '', to: reason },
        { label: 'Charged', from: '', to: moneyIn(shop, input.charge) },
        ...settled,
      ]
      const did = `Returned ${jobStateWord('returned-unrepaired').replace('returned ', '')} to ${input.collector.name.trim()}`
      const outcome = { kind: 'returned-unrepaired', reason } as const
      if (input.partsBack) await giveAllBack(tx, step, job)
      const sheetId = await closeJob(tx, step, shop, job, {
        ...input,
        to: 'returned-unrepaired',
        outcome,
        changes,
        did,
      })
      await noteSetAside(tx, step, job, partsOn(await findAcceptedQuote(job.id, tx)), 'returned unrepaired')
      return sheetId
    }),
  )
}

/** Takes what is left of the charge, or gives back what was paid above it. */
async function settle(tx: Tx, { actor, now }: Step, shop: Shop, job: Job, { charge, how, owesNote }: ReturnUnrepaired) {
  await createCharge(tx, job.id, { amount: charge, at: now, takenBy: actor.name })
  const { balance } = (await jobAccount(job.id, tx)).account
  if (balance === 0) return []
  const back = balance < 0
  const amount = moneyIn(shop, money(Math.abs(balance)))
  if (how === '') return owesNote.trim() === '' ? refuse({ code: 'way-missing', balance: amount }) : []
  await createPayment(tx, job.id, {
    amount: balance,
    kind: back ? 'refund' : 'payment',
    how,
    at: now,
    takenBy: actor.name,
  })
  return [{ label: back ? 'Given back' : 'Paid', from: '', to: `${amount}, ${how}` }]
}
