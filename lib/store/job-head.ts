/** A job with whose it is and what it is: every page of a job begins with this. */
import type { Amp } from '@/lib/domain/amp/amp'
import type { Customer } from '@/lib/domain/customer/customer'
import type { Job } from '@/lib/domain/job/job'
import { findAmp } from './amp'
import { findCustomer } from './customer'
import { db, type Tx } from './database'
import { findJob } from './job'

export type JobHead = { readonly job: Job; readonly customer: Customer; readonly amp: Amp }

export async function findJobHead(number: string, tx: Tx = db()): Promise<JobHead | null> {
  const job = await findJob(number, tx)
  if (!job) return null
  const [customer, amp] = [await findCustomer(job.customerId, tx), await findAmp(job.ampId, tx)]
  if (!customer || !amp) throw new Error(`Job ${number} has lost its customer or amplifier`)
  return { job, customer, amp }
}
