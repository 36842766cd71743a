/** What a job costs and what was paid, from its records. */
import { type Account, accountOf, type Payment } from '@/lib/domain/job/account'
import { totalsOf } from '@/lib/domain/quote/quote'
import { db, type Tx } from '@/lib/store/database'
import { findCharge, listPayments } from '@/lib/store/payment'
import { findAcceptedQuote } from '@/lib/store/quote'

export type JobAccount = { readonly account: Account; readonly payments: readonly Payment[] }

/** What was charged for an unrepaired return stands before the quote, which was then not carried out. */
export async function jobAccount(jobId: string, tx: Tx = db()): Promise<JobAccount> {
  const payments = await listPayments(jobId, tx)
  const charge = await findCharge(jobId, tx)
  const quote = charge === null ? await findAcceptedQuote(jobId, tx) : null
  return { account: accountOf(charge ?? (quote && totalsOf(quote).total), payments), payments }
}
