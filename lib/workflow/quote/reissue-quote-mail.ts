/**
 * Writes the mail of a quote that is out anew, to the address on file now. What
 * still waits under the old address is cancelled. The paper stays the one that
 * was frozen, and the mail says what it says, whatever was exchanged since.
 */
import { quoteNumber } from '@/lib/documents/quote-paper'
import { asAgreed } from '@/lib/domain/quote/exchanged'
import { quoteTitle } from '@/lib/domain/quote/quote'
import { ok, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction, type Tx } from '@/lib/store/database'
import { findJobHead } from '@/lib/store/job-head'
import { cancelMailsOf } from '@/lib/store/mail'
import { listPapers } from '@/lib/store/paper'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { requireLatest, requireOpenJob } from './quote-draft'
import { quoteFacts } from './quote-facts'
import { noteQuote } from './quote-notes'
import { writeMail } from './send-quote'
import { type MailOutcome, sendWithWaiting } from './send-waiting-mail'

export async function reissueQuoteMail(
  step: Step,
  shop: Shop,
  jobNumber: string,
): Promise<Result<MailOutcome, StepFault>> {
  const written = await refusing(() => inTransaction((tx) => rewrite(tx, step, shop, jobNumber)))
  return written.ok ? ok(await sendWithWaiting(step, shop, written.value)) : written
}

async function rewrite(tx: Tx, step: Step, shop: Shop, jobNumber: string): Promise<string> {
  const job = await requireOpenJob(tx, jobNumber)
  const quote = await requireLatest(tx, job)
  const head = (await findJobHead(jobNumber, tx)) ?? refuse({ code: 'not-found', what: `Job ${jobNumber}` })
  if (quote.state !== 'sent' || !quote.sentAt)
    return refuse({ code: 'quote-not-waiting', quote: quoteTitle(quote), state: quote.state })
  if (head.customer.email === '') refuse({ code: 'no-address', customer: head.customer.name })
  const facts = await quoteFacts(tx, shop, head, asAgreed(quote), quote.sentAt)
  const paper = (await listPapers(job.id, 'quote')).find(({ number }) => number === quoteNumber(facts))
  if (!paper) return refuse({ code: 'not-found', what: `The paper of quote ${quoteTitle(quote)}` })
  await cancelMailsOf(tx, paper.id, step.now)
  const did = `Quote ${quoteTitle(quote)} to be mailed again, to ${head.customer.email}`
  await noteQuote(tx, step, { quote, did, version: quote.version })
  return writeMail(tx, step, { head, facts, paperId: paper.id })
}
