/** At the counter: customer, amplifier and fault become a job with a number and a receipt. */
import type { AmpDetails } from '@/lib/domain/amp/amp'
import type { CustomerDetails } from '@/lib/domain/customer/customer'
import { changesBetween, shown } from '@/lib/domain/history/changes'
import type { Job, JobIntake } from '@/lib/domain/job/job'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { findAmp, giveAmpTo } from '@/lib/store/amp'
import { findCustomer } from '@/lib/store/customer'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { createJob, findOpenJobOfAmp } from '@/lib/store/job'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { issueReceipt } from './issue-receipt'
import { addAmp } from './keep-amp'
import { addCustomer } from './keep-customer'
import { intakeShown } from './keep-job'

export type KnownOrNew<Details> = { readonly id: string } | { readonly details: Details }

export type TakeIn = {
  readonly customer: KnownOrNew<CustomerDetails>
  readonly amp: KnownOrNew<AmpDetails>
  readonly intake: JobIntake
  /** Where a code on the receipt leads: the shop's own address. */
  readonly address: string
}

export type TakenIn = { readonly number: string; readonly receiptId: string }

export function takeInJob(step: Step, shop: Shop, input: TakeIn): Promise<Result<TakenIn, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const customerId = await customerOf(tx, step, input.customer)
      const ampId = await ampOf(tx, step, customerId, input.amp)
      const { actor, now } = step
      const who = { takenInById: actor.id, takenInBy: actor.name, receivedAt: now }
      const job = await createJob(tx, { ...input.intake, ...who, customerId, ampId })
      await noteTakenIn(tx, step, shop, job)
      const receiptId = await issueReceipt(tx, step, shop, job.number, input.address)
      return { number: job.number, receiptId }
    }),
  )
}

async function noteTakenIn(tx: Tx, { actor, now }: Step, shop: Shop, job: Job): Promise<void> {
  const changes = changesBetween(shown([]), intakeShown(job, shop))
  await writeHistory(tx, {
    at: now,
    person: actor.name,
    subject: 'job',
    subjectId: job.id,
    jobId: job.id,
    did: `Taken in as job ${job.number}`,
    changes,
    version: 1,
  })
}

async function customerOf(tx: Tx, step: Step, customer: TakeIn['customer']): Promise<string> {
  if ('details' in customer) return addCustomer(tx, step, customer.details)
  const known = await findCustomer(customer.id, tx)
  return known ? known.id : refuse({ code: 'not-found', what: 'This customer' })
}

async function ampOf(tx: Tx, step: Step, customerId: string, amp: TakeIn['amp']): Promise<string> {
  if ('details' in amp) return addAmp(tx, step, customerId, amp.details)
  const known = await findAmp(amp.id, tx)
  if (!known) return refuse({ code: 'not-found', what: 'This amplifier' })
  const open = await findOpenJobOfAmp(amp.id, tx)
  if (open) return refuse({ code: 'amp-already-here', jobNumber: open })
  if (known.customerId !== customerId) await changeHands(tx, step, known.id, known.customerId, customerId)
  return known.id
}

/** An amplifier that was sold comes in with its new owner. */
async function changeHands(tx: Tx, { actor, now }: Step, ampId: string, from: string, to: string): Promise<void> {
  const [before, after] = [await findCustomer(from, tx), await findCustomer(to, tx)]
  const version = await giveAmpTo(tx, ampId, to)
  const changes = [{ label: 'Owner', from: before?.name ?? '', to: after?.name ?? '' }]
  await writeHistory(tx, {
    at: now,
    person: actor.name,
    subject: 'amp',
    subjectId: ampId,
    did: 'Changed hands',
    changes,
    version,
  })
}
