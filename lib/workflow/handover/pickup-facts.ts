/** What the pickup sheet says, from the shop's records. */

import type { MatchFacts } from '@/lib/documents/facts'
import type { Paper } from '@/lib/documents/paper'
import {
  type CollectorFacts,
  type FittedTubeFacts,
  type PickupFacts,
  type PickupOutcome,
  pickupPaper,
} from '@/lib/documents/pickup-sheet'
import { type Fitting, fittedBy, fittedTubeText, takenOut } from '@/lib/domain/amp/fitting'
import { addDays, dayInZone } from '@/lib/domain/calendar'
import { paymentText } from '@/lib/domain/job/account'
import type { Job } from '@/lib/domain/job/job'
import { nextStates } from '@/lib/domain/job/job-state'
import { money } from '@/lib/domain/money'
import { groupLoad } from '@/lib/domain/plot/group-load'
import { groupPlots, type PlotRound } from '@/lib/domain/plot/group-plots'
import type { PlateSheet } from '@/lib/domain/plot/plate-sheet'
import { exchangedText, exchangesOn } from '@/lib/domain/quote/exchanged'
import type { Quote } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { conditionWord, type TubeCondition } from '@/lib/domain/stock/tube'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { capital, type Words, wordsFor } from '@/lib/domain/words'
import { db, type Tx } from '@/lib/store/database'
import { findJobHead, type JobHead } from '@/lib/store/job-head'
import { findAcceptedQuote } from '@/lib/store/quote'
import { listTubesById } from '@/lib/store/tube'
import { readingSetFacts } from '@/lib/workflow/bench/reading-facts'
import { ampFacts, customerFacts, paperSettings } from '@/lib/workflow/counter/paper-facts'
import { quoteFacts } from '@/lib/workflow/quote/quote-facts'
import { type SafetyState, safetyState } from '@/lib/workflow/work/safety-state'
import { signOffFacts } from '@/lib/workflow/work/sign-off-facts'
import { type JobAccount, jobAccount } from './job-account'

/** What the hand-over itself adds to the records. Before it: nobody has collected. */
export type Closing = {
  readonly outcome: PickupOutcome
  readonly collector: CollectorFacts | null
  /** Why items stay here; empty when all go back. */
  readonly itemsNote: string
  /** What was agreed about an open balance; empty when there is none. */
  readonly owesNote: string
}

const USED: readonly TubeCondition[] = ['used-tested', 'pull', 'as-found']

const paragraphs = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean)

export async function pickupFacts(
  tx: Tx,
  shop: Shop,
  head: JobHead,
  now: Date,
  closing: Closing,
): Promise<PickupFacts> {
  const { job, customer, amp } = head
  const words = wordsFor(shop.words)
  const state = await safetyState(job, shop, tx)
  const quote = await findAcceptedQuote(job.id, tx)
  const here = fittedBy(state.fittings, job.id)
  const today = dayInZone(now, shop.timeZone)
  const repaired = closing.outcome.kind === 'repaired'
  return {
    settings: paperSettings(shop, now),
    jobNumber: job.number,
    outcome: closing.outcome,
    customer: customerFacts(customer),
    amp: ampFacts(amp),
    fault: job.faultSettings === '' ? job.fault : `${job.fault}\nShows at: ${job.faultSettings}`,
    collectedAt: closing.collector && now.toISOString(),
    collector: closing.collector,
    readingsBefore: state.before && readingSetFacts(state.before, words),
    readingsAfter: state.after && readingSetFacts(state.after, words),
    plots: plots(state, shop),
    tubes: await fittedTubes(tx, state, here),
    exchanged: quote ? await exchangedTexts(tx, quote, here) : [],
    matches: quote ? await standingMatches(tx, shop, head, { quote, here, now }) : [],
    workDone: [...workDone(quote), ...fittedText(here, state, words)],
    workDeclined: paragraphs(job.declinedWork),
    itemsReturned: itemsReturned(job, closing),
    oldParts: oldParts(state, job),
    oldPartsBack: job.oldPartsBack,
    signOff: signOffFacts(state.lines),
    warrantyUntil: repaired && shop.warrantyDays > 0 ? addDays(today, shop.warrantyDays) : null,
    warrantyTerms: repaired ? shop.warrantyTerms : '',
    recheckOn: repaired && shop.recheckDays > 0 ? addDays(today, shop.recheckDays) : null,
    ...moneyFacts(await jobAccount(job.id, tx), closing, now),
  }
}

function plots({ sheet, before, after }: SafetyState, catalogue: TubeCatalogue): PlateSheet[] {
  const rounds: PlotRound[] = []
  if (before) rounds.push({ when: 'before', result: before.result })
  if (after) rounds.push({ when: 'after', result: after.result })
  return groupPlots(rounds, { loadOf: (group) => groupLoad(sheet, group), catalogue }).flatMap(({ plot }) =>
    plot.ok ? [plot.value] : [],
  )
}

async function fittedTubes(tx: Tx, { sheet }: SafetyState, here: readonly Fitting[]): Promise<FittedTubeFacts[]> {
  const stocked = await listTubesById(
    here.flatMap(({ tubeId }) => tubeId ?? []),
    tx,
  )
  const conditions = new Map(stocked.map(({ tube }) => [tube.id, tube.condition]))
  return sheet.sockets.map(({ id, position, typeFitted: type, markFitted: mark }) => {
    const fitted = here.find(({ socketId }) => socketId === id)
    const condition = conditions.get(fitted?.tubeId ?? '')
    if (!condition) return { position, type, mark, origin: 'as received', used: false }
    return {
      position,
      type,
      mark,
      origin: `fitted on this job, ${conditionWord(condition)}`,
      used: USED.includes(condition),
    }
  })
}

/** What was quoted, where another tube went in: told only of tubes that did. */
async function exchangedTexts(tx: Tx, quote: Quote, here: readonly Fitting[]): Promise<string[]> {
  const fitted = new Set(here.flatMap(({ tubeId }) => tubeId ?? []))
  const tubes = (await listTubesById([...fitted], tx)).map(({ tube }) => tube)
  return exchangesOn(quote, tubes).map((each) => exchangedText(each, 'fitted'))
}

type Matching = { readonly quote: Quote; readonly here: readonly Fitting[]; readonly now: Date }

/** Claimed only of tubes that all went in. */
async function standingMatches(
  tx: Tx,
  shop: Shop,
  head: JobHead,
  { quote, here, now }: Matching,
): Promise<MatchFacts[]> {
  const marks = new Set(here.map(({ mark }) => mark))
  const { matches } = await quoteFacts(tx, shop, head, quote, now)
  return matches.filter((match) => match.marks.every((mark) => marks.has(mark)))
}

/** What was ordered and not ticked off is told as well. */
function workDone(quote: Quote | null): string[] {
  const lines = quote?.lines.filter(({ kind }) => kind === 'labour' || kind === 'part') ?? []
  const texts = (done: boolean) => lines.filter(({ doneAt }) => (doneAt !== null) === done).map(({ text }) => text)
  return [...texts(true), ...texts(false).map((text) => `Ordered, but not done: ${text}`)]
}

/** Putting them in is work done, whether or not a line of labour was charged for it. */
function fittedText(here: readonly Fitting[], { sheet }: SafetyState, { tubes }: Words): string[] {
  const marks = new Map(here.map(({ socketId, mark }) => [socketId, mark]))
  const placed = sheet.sockets.flatMap(({ id, position }) => (marks.has(id) ? [`${position} ${marks.get(id)}`] : []))
  return placed.length === 0 ? [] : [`${capital(tubes)} fitted: ${placed.join(', ')}`]
}

function itemsReturned({ items }: Job, { collector, itemsNote }: Closing): { count: number; label: string }[] {
  return items.map(({ count, label, returned }) => {
    if (returned || collector === null) return { count, label }
    return { count, label: `${label}: NOT handed back${itemsNote === '' ? '' : `, ${itemsNote}`}` }
  })
}

function oldParts({ sheet, fittings }: SafetyState, job: Job): { bag: string; text: string }[] {
  const positions = new Map(sheet.sockets.map(({ id, position }) => [id, position]))
  return takenOut(fittings, job.id, job.receivedAt).map((fitting) => ({
    bag: positions.get(fitting.socketId) ?? '',
    text: `${fittedTubeText(fitting)}, as received`,
  }))
}

function moneyFacts({ account, payments }: JobAccount, { owesNote }: Closing, now: Date) {
  const lines = payments.map((payment) => ({
    text: paymentText(payment),
    paidAt: payment.at.toISOString(),
    amount: payment.amount,
  }))
  const owed = {
    text: `Nothing paid for the balance; agreed: ${owesNote}`,
    paidAt: now.toISOString(),
    amount: money(0),
  }
  return {
    total: account.total ?? money(0),
    payments: account.balance !== 0 && owesNote !== '' ? [...lines, owed] : lines,
    paid: account.paid,
    balance: account.balance,
  }
}

/** The sheet as it would be printed now, nothing kept. Null: no such job, or not released, so that nothing claims a repair. */
export async function pickupPreview(shop: Shop, jobNumber: string, now: Date): Promise<Paper | null> {
  const head = await findJobHead(jobNumber)
  if (!head || !nextStates(head.job.state).includes('collected')) return null
  const closing: Closing = { outcome: { kind: 'repaired' }, collector: null, itemsNote: '', owesNote: '' }
  return pickupPaper(await pickupFacts(db(), shop, head, now, closing))
}
