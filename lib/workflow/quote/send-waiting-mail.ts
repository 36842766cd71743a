/**
 * Sends what waits in the outbox, one mail at a time: claim it, draw its paper
 * again from the frozen view, hand it over, write down what the server said.
 *
 * A process that dies in between leaves the mail 'being sent'; after
 * STALE_TRY_MINUTES it may be tried again. If the server had taken it just
 * before, the reader gets it twice, under one message id.
 */
import type { Paper } from '@/lib/documents/paper'
import { renderPdf } from '@/lib/documents/pdf'
import type { Mail } from '@/lib/domain/quote/mail'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { type MailServer, mailServer, noServerText } from '@/lib/mail/mail-server'
import { type OutgoingMail, sendMail } from '@/lib/mail/transport'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { cancelMail, claimMail, findMail, listUnsentIds, settleMail } from '@/lib/store/mail'
import { findPaper } from '@/lib/store/paper'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type MailOutcome =
  | { readonly kind: 'sent' }
  | { readonly kind: 'failed'; readonly words: string }
  /** No server is set up: it stays in the outbox. */
  | { readonly kind: 'waiting' }
  /** Somebody else is sending it, or it has been settled. */
  | { readonly kind: 'not-ours' }

/** A server may take a minute to answer: what happens later in a step is told by its own time. */
function running(step: Step): () => Step {
  const began = performance.now()
  return () => ({ ...step, now: new Date(step.now.getTime() + performance.now() - began) })
}

export async function sendOneMail(step: Step, shop: Shop, mailId: string): Promise<MailOutcome> {
  const server = mailServer(shop)
  if (server.kind === 'none') return { kind: 'waiting' }
  const at = running(step)
  const mail = await inTransaction((tx) => claimMail(tx, mailId, step.now))
  if (!mail) return { kind: 'not-ours' }
  const handed = await handOver(server, mail)
  await settle(at(), mail, handed)
  return handed.ok ? { kind: 'sent' } : { kind: 'failed', words: handed.fault }
}

/** Whatever goes wrong while drawing or sending is told in the outbox and does not stay 'being sent'. */
async function handOver(server: MailServer, mail: Mail): Promise<Result<null, string>> {
  try {
    return await sendMail(server, await outgoing(mail))
  } catch (error) {
    return fail(`The mail could not be made up: ${error instanceof Error ? error.message : String(error)}`)
  }
}

async function outgoing({ id, to, subject, body, paperId }: Mail): Promise<OutgoingMail> {
  const paper = paperId === null ? null : await findPaper(paperId)
  if (paperId !== null && !paper) throw new Error('its paper is not there any more')
  const attachment = paper && {
    filename: `${paper.kind}-${paper.number}.pdf`.replace(/[^A-Za-z0-9.-]+/g, '-'),
    pdf: await renderPdf(paper.view as Paper, { createdAt: paper.issuedAt }),
  }
  return { id, to, subject, text: body, attachment }
}

async function settle({ actor, now }: Step, mail: Mail, handed: Result<null, string>): Promise<void> {
  await inTransaction(async (tx) => {
    const settled = await settleMail(tx, mail, handed.ok ? { sentAt: now } : { words: handed.fault })
    if (!settled || mail.jobId === null) return
    const did = handed.ok
      ? `Mail “${mail.subject}” sent to ${mail.to}`
      : `Mail “${mail.subject}” to ${mail.to} was not taken: ${handed.fault}`
    await writeHistory(tx, {
      at: now,
      person: actor.name,
      subject: 'job',
      subjectId: mail.jobId,
      jobId: mail.jobId,
      did,
    })
  })
}

/** A mail that goes through shows that the server works, so what waits behind it goes too. */
export async function sendWithWaiting(step: Step, shop: Shop, mailId: string): Promise<MailOutcome> {
  const at = running(step)
  const first = await sendOneMail(step, shop, mailId)
  if (first.kind === 'sent') await sendWaitingMail(at(), shop, { failedToo: false })
  return first
}

export type MailRound = { readonly sent: number; readonly failed: number; readonly lastWords: string }

/** Stops at the third refusal: the server is then down, and each try may last a minute. */
export async function sendWaitingMail(
  step: Step,
  shop: Shop,
  which: { readonly failedToo: boolean },
): Promise<MailRound> {
  let round: MailRound = { sent: 0, failed: 0, lastWords: '' }
  if (mailServer(shop).kind === 'none') return round
  const at = running(step)
  for (const id of await listUnsentIds(step.now, which)) {
    const outcome = await sendOneMail(at(), shop, id)
    if (outcome.kind === 'sent') round = { ...round, sent: round.sent + 1 }
    if (outcome.kind === 'failed') round = { ...round, failed: round.failed + 1, lastWords: outcome.words }
    if (round.failed >= 3) break
  }
  return round
}

/** By hand, from the outbox. */
export async function sendMailNow(step: Step, shop: Shop, mailId: string): Promise<Result<MailOutcome, StepFault>> {
  const outcome = await sendOneMail(step, shop, mailId)
  if (outcome.kind !== 'not-ours') return ok(outcome)
  const mail = await findMail(mailId)
  return fail(mail ? { code: 'mail-settled', state: mail.state } : { code: 'not-found', what: 'This mail' })
}

export function cancelWaitingMail({ actor, now }: Step, mailId: string): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const mail = (await findMail(mailId, tx)) ?? refuse({ code: 'not-found', what: 'This mail' })
      if (!(await cancelMail(tx, mailId, now))) refuse({ code: 'mail-settled', state: mail.state })
      if (mail.jobId === null) return null
      const did = `Mail “${mail.subject}” to ${mail.to} cancelled`
      await writeHistory(tx, {
        at: now,
        person: actor.name,
        subject: 'job',
        subjectId: mail.jobId,
        jobId: mail.jobId,
        did,
      })
      return null
    }),
  )
}

/** For the head of the outbox. */
export function mailServerText(shop: Shop): { readonly ready: boolean; readonly text: string } {
  const server = mailServer(shop)
  if (server.kind === 'none') return { ready: false, text: noServerText(server) }
  const text = `Mail goes through ${server.host}, from ${server.from.address}. What waits goes out with the next quote that is mailed, or by the button here.`
  return { ready: true, text }
}
