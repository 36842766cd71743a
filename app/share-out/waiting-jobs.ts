/** Every open job whose amplifier has output sockets and no set of its own yet, and what its groups ask for. */
import 'server-only'
import { type LatestBench, latestBench } from '@/app/jobs/[jobNumber]/latest-bench'
import { outputGroup, outputGroups } from '@/lib/domain/bench/bench-result'
import { demandFaultText } from '@/lib/domain/bench/demand-fault-text'
import { type GroupDemand, groupDemand } from '@/lib/domain/bench/group-demand'
import type { Job, JobLine } from '@/lib/domain/job/job'
import { type Quote, quoteStateWord, quoteTitle } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import type { PlanBasis } from '@/lib/domain/stock/plan-basis'
import { wordsFor } from '@/lib/domain/words'
import { findJob, listOpenJobs } from '@/lib/store/job'
import { findAcceptedQuote, findLatestQuote, listTubesFittedIn } from '@/lib/store/quote'
import { planBasis } from '@/lib/workflow/tubes/plan-basis'

export type WaitingJob = {
  readonly line: JobLine
  readonly bench: LatestBench
  readonly groups: readonly (GroupDemand & { readonly group: string })[]
  /** Looked at before the rest, so that what changed while it was read is noticed as well. */
  readonly basis: PlanBasis
  /** Why it cannot take part; null: it can. */
  readonly against: string | null
  /** A set stands on its draft already. */
  readonly onDraft: boolean
}

/** Past these the tubes of a job are settled, so it is not ticked unasked. */
const EARLY: readonly JobLine['state'][] = ['received', 'on-bench', 'waiting-for-answer', 'waiting-for-parts']

export const tickedUnasked = ({ against, onDraft, line }: WaitingJob): boolean =>
  against === null && !onDraft && EARLY.includes(line.state)

export async function listWaitingJobs(shop: Shop): Promise<WaitingJob[]> {
  const lines = await listOpenJobs()
  const all = await Promise.all(lines.map((line) => waitingJob(line, shop)))
  return all.flatMap((one) => one ?? [])
}

async function waitingJob(line: JobLine, shop: Shop): Promise<WaitingJob | null> {
  const job = await findJob(line.number)
  if (!job) return null
  const basis = await planBasis(job, shop)
  const bench = await latestBench(job, shop)
  const names = outputGroups(bench.sheet)
  if (names.length === 0) return null
  const positions = new Set(names.flatMap((name) => outputGroup(bench.sheet, name).map(({ position }) => position)))
  const [latest, accepted, fitted] = await quotesOf(job)
  if (fitted.length > 0 || hasSet(accepted, positions)) return null
  if (latest?.state === 'sent' && hasSet(latest, positions)) return null
  const asked = names.map((group) => ({ group, wanted: groupDemand(bench.sheet, group, bench.result, shop) }))
  const fault = asked.flatMap(({ wanted }) =>
    wanted.ok ? [] : [demandFaultText(wanted.fault, wordsFor(shop.words))],
  )[0]
  return {
    line,
    bench,
    groups: asked.flatMap(({ group, wanted }) => (wanted.ok ? [{ group, ...wanted.value }] : [])),
    basis,
    against: fault ?? quoteAgainst(latest),
    onDraft: latest?.state === 'draft' && hasSet(latest, positions),
  }
}

const quotesOf = (job: Job) =>
  Promise.all([findLatestQuote(job.id), findAcceptedQuote(job.id), listTubesFittedIn(job.id)])

const hasSet = (quote: Quote | null, positions: ReadonlySet<string>): boolean =>
  quote?.lines.some(({ kind, socketPosition }) => kind === 'tube' && positions.has(socketPosition ?? '')) ?? false

/** A set goes on a draft; one that is out of the shop's hands is revised first. */
function quoteAgainst(latest: Quote | null): string | null {
  if (!latest || latest.state === 'draft') return null
  return `Quote ${quoteTitle(latest)} is ${quoteStateWord(latest.state)}. Revise it first if the job is to have a set.`
}
