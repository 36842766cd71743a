/** Draws the receipt from the records and freezes it. */
import { receiptPaper } from '@/lib/documents/receipt'
import type { Shop } from '@/lib/domain/shop/shop'
import { findAmpSheet } from '@/lib/store/amp'
import type { Tx } from '@/lib/store/database'
import { findJobHead } from '@/lib/store/job-head'
import { createPaper } from '@/lib/store/paper'
import { refuse, type Step } from '@/lib/workflow/step/step'
import { ampFacts, customerFacts, paperSettings } from './paper-facts'

export async function issueReceipt(
  tx: Tx,
  { actor, now }: Step,
  shop: Shop,
  number: string,
  address: string,
): Promise<string> {
  const head = await findJobHead(number, tx)
  if (!head) return refuse({ code: 'not-found', what: `Job ${number}` })
  const { job, customer, amp } = head
  const sheet = await findAmpSheet(amp.id, tx)
  const view = receiptPaper({
    settings: paperSettings(shop, now),
    jobNumber: job.number,
    jobUrl: `${address}/jobs/${job.number}`,
    receivedAt: job.receivedAt.toISOString(),
    receivedBy: job.takenInBy,
    customer: customerFacts(customer),
    amp: ampFacts(amp),
    fault: job.faultSettings === '' ? job.fault : `${job.fault}\nShows at: ${job.faultSettings}`,
    itemsLeft: job.items,
    spendingLimit: job.spendingLimit,
    promisedOn: job.promisedOn,
    oldPartsBack: job.oldPartsBack,
    depositPaid: null,
    terms: shop.receiptTerms,
    tubesReceived: (sheet?.sockets ?? []).map(({ position, typeFitted, markFitted }) => ({
      position,
      type: typeFitted,
      mark: markFitted,
    })),
  })
  return createPaper(tx, {
    jobId: job.id,
    kind: 'receipt',
    number: job.number,
    view,
    issuedAt: now,
    issuedBy: actor.name,
  })
}
