/** Takes a payment at the counter, or gives back what was paid too much. */
import type { Account, PaymentKind, PaymentWay } from '@/lib/domain/job/account'
import type { Job } from '@/lib/domain/job/job'
import { isClosed } from '@/lib/domain/job/job-state'
import { type Money, money } from '@/lib/domain/money'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { createPayment } from '@/lib/store/payment'
import { requireJob } from '@/lib/workflow/counter/keep-job'
import { moneyIn } from '@/lib/workflow/quote/quote-notes'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { jobAccount } from './job-account'

export type PaymentInput = {
  readonly jobNumber: string
  readonly back: boolean
  /** Never below nothing, also when it is given back. */
  readonly amount: Money
  readonly how: PaymentWay
}

export function takePayment(
  step: Step,
  shop: Shop,
  { jobNumber, back, amount, how }: PaymentInput,
): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireJob(tx, jobNumber)
      const { account } = await jobAccount(job.id, tx)
      if (amount <= 0) refuse({ code: 'no-amount' })
      if (back) assertRefund(shop, account, amount)
      else assertOwed(shop, job, account, amount)
      const { actor, now } = step
      const kind = back ? 'refund' : kindOf(job, account, amount)
      const signed = money(back ? -amount : amount)
      await createPayment(tx, job.id, { amount: signed, kind, how, at: now, takenBy: actor.name })
      const did = `${back ? 'Given back' : kind === 'deposit' ? 'Deposit taken' : 'Payment taken'}: ${moneyIn(shop, amount)}, ${how}`
      await writeHistory(tx, { at: now, person: actor.name, subject: 'job', subjectId: job.id, jobId: job.id, did })
      return null
    }),
  )
}

/** On account while nothing is agreed yet; from then on never above the balance. */
function assertOwed(shop: Shop, job: Job, { total, balance }: Account, amount: Money): void {
  if (total === null) {
    if (isClosed(job.state)) refuse({ code: 'nothing-owed' })
    return
  }
  if (balance <= 0) refuse({ code: 'nothing-owed' })
  if (amount > balance) refuse({ code: 'overpaid', amount: moneyIn(shop, amount), balance: moneyIn(shop, balance) })
}

function assertRefund(shop: Shop, { balance }: Account, amount: Money): void {
  const most = money(Math.max(0, -balance))
  if (amount > most) refuse({ code: 'refund-too-high', amount: moneyIn(shop, amount), most: moneyIn(shop, most) })
}

/** Before the work is released, and less than all of it. */
function kindOf(job: Job, { total, balance }: Account, amount: Money): PaymentKind {
  const early = job.state !== 'ready' && job.state !== 'uncollected' && !isClosed(job.state)
  return early && (total === null || amount < balance) ? 'deposit' : 'payment'
}
