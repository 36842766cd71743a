/** The work on an accepted quote: work order, tubes in their sockets, lines ticked off. */
import { findJob } from '@/lib/store/job'
import { findAcceptedQuote } from '@/lib/store/quote'
import { finishWork as finish, tickLine } from '@/lib/workflow/work/do-work'
import { fitTube } from '@/lib/workflow/work/fit-tubes'
import { issueWorkOrder } from '@/lib/workflow/work/issue-work-order'
import { settled } from '@/seed/settled'
import { ADDRESS } from '@/seed/shop/settings'
import { later } from '@/seed/world'
import type { Deed, ToldJob } from './story'

export const printWorkOrder: Deed = async ({ shop }, step, { number }) => {
  await settled(
    shop,
    `the work order of job ${number}`,
    issueWorkOrder(step, shop, { jobNumber: number, address: ADDRESS }),
  )
}

async function acceptedLines({ number }: ToldJob) {
  const job = await findJob(number)
  const quote = job && (await findAcceptedQuote(job.id))
  if (!quote) throw new Error(`Job ${number} has no accepted quote`)
  return quote.lines
}

export const fitTubes: Deed = async ({ shop }, step, job) => {
  const positions = (await acceptedLines(job)).flatMap(({ kind, socketPosition }) =>
    kind === 'tube' && socketPosition ? [socketPosition] : [],
  )
  for (const [at, position] of positions.entries()) {
    const fitted = fitTube(later(step, 4 * at), job.number, position)
    await settled(shop, `fitting ${position} of job ${job.number}`, fitted)
  }
}

/** Labour and parts; a fee is nothing to be done. `but`: beginnings of lines that are still open. */
export const tickOff =
  (but: readonly string[] = []): Deed =>
  async ({ shop }, step, job) => {
    for (const { id, kind, text } of await acceptedLines(job)) {
      if (kind === 'tube' || but.some((start) => text.startsWith(start))) continue
      await settled(
        shop,
        `${text} of job ${job.number}`,
        tickLine(step, { jobNumber: job.number, lineId: id, done: true }),
      )
    }
  }

export const finishWork: Deed = async ({ shop }, step, { number }) => {
  await settled(shop, `finishing job ${number}`, finish(step, number))
}
