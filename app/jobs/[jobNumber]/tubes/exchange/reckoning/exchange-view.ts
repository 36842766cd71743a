/** Everything the exchange of one tube rests on but the stock, read anew whenever it is asked for. */
import 'server-only'
import { demandFaultText } from '@/lib/domain/bench/demand-fault-text'
import { type PlaceDemand, placeDemand } from '@/lib/domain/bench/place-demand'
import { dayInZone } from '@/lib/domain/calendar'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { Job } from '@/lib/domain/job/job'
import { pickupFaultText } from '@/lib/domain/job/pickup-fault'
import type { MatchLimits } from '@/lib/domain/matching/candidate'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import type { MatchingFormat } from '@/lib/domain/matching/matching-text'
import { formatMoney } from '@/lib/domain/money'
import { type Quote, type QuoteLine, quoteTitle } from '@/lib/domain/quote/quote'
import { quoteFaultText } from '@/lib/domain/quote/quote-fault'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import type { CandidateView } from '@/lib/domain/stock/candidate-of'
import type { PlanBasis } from '@/lib/domain/stock/plan-basis'
import type { StockedTube } from '@/lib/domain/stock/tube'
import { type Words, wordsFor } from '@/lib/domain/words'
import { listDraftedTubes } from '@/lib/store/draft-tube'
import { findAcceptedQuote, findLatestQuote } from '@/lib/store/quote'
import { findTubeByMark, listTubesById } from '@/lib/store/tube'
import { planBasis } from '@/lib/workflow/tubes/plan-basis'
import { arrangementIn, groupCircuit } from '../../../bench/group-circuit'
import { type LatestBench, latestBench } from '../../../latest-bench'
import type { Limits } from '../../limits-form'
import type { ExchangeAsked } from '../exchange-address'

export type Seat = { readonly position: string; readonly stocked: StockedTube }

export type ExchangeView = {
  readonly asked: ExchangeAsked
  readonly job: Job
  readonly shop: Shop
  readonly words: Words
  readonly quote: Quote
  readonly line: QuoteLine
  readonly place: PlaceDemand
  readonly out: StockedTube
  /** The others of the set on this quote, in chassis order. */
  readonly beside: readonly Seat[]
  /** Of the mark typed; null: none is looked at. */
  readonly into: StockedTube | null
  readonly bench: LatestBench
  /** Or why tubes are compared at their test points: a whole sentence. */
  readonly circuit: Result<AmpCircuit, string>
  /** Nothing predicted is in them yet. */
  readonly limits: MatchLimits
  /** As they were typed. */
  readonly chosen: Limits
  readonly view: CandidateView
  readonly format: MatchingFormat
  /** Job that has it on its draft, by tube id: nothing holds it yet. */
  readonly drafted: ReadonlyMap<string, string>
  /** What the records were when this was begun. */
  readonly planBasis: PlanBasis
}

type Given = { readonly job: Job; readonly shop: Shop; readonly asked: ExchangeAsked; readonly limits: Limits }

/** A fault is a whole sentence. */
export async function exchangeView({ job, shop, asked, limits }: Given): Promise<Result<ExchangeView, string>> {
  const words = wordsFor(shop.words)
  // First of all: what changes while the rest is read is then noticed too.
  const seen = await planBasis(job, shop)
  const quoted = await quotedLine(job, asked, words)
  if (!quoted.ok) return quoted
  const bench = await latestBench(job, shop)
  const place = placeDemand(bench.sheet, asked.position, bench.result, shop)
  if (!place.ok) {
    const { fault } = place
    return fail(fault.code === 'socket-not-on-sheet' ? pickupFaultText(fault, words) : demandFaultText(fault, words))
  }
  const seats = await seatsOf(quoted.value.quote, place.value)
  const out = seats.find(({ position }) => position === asked.position)?.stocked
  if (!out) return fail(`The ${words.tube} quoted for ${asked.position} is not in the stock book any more.`)
  const into = await typedTube(asked.mark, words)
  if (!into.ok) return into
  const now = new Date()
  const circuit = place.value.group === null ? fail('') : await circuitOf(bench, place.value.group, shop, limits)
  const demand = { ...place.value.demand, arrangement: arrangementIn(circuit, place.value.demand) }
  return ok({
    ...{ asked, job, shop, words, ...quoted.value, out, bench, circuit, chosen: limits },
    place: { ...place.value, demand },
    beside: seats.filter(({ position }) => position !== asked.position),
    into: into.value,
    limits: {
      maximumTestAgeDays: limits.age,
      allowOverPrintedRating: limits.over,
      priceCap: null,
      oneDesignation: false,
      yardsticks: USUAL_YARDSTICKS,
      asOf: dayInZone(now, shop.timeZone),
    },
    view: { now, timeZone: shop.timeZone, jobInHand: job.id, catalogue: shop },
    format: { words, formatMoney: (amount) => formatMoney(amount, shop.currency, words.locale) },
    drafted: await draftedElsewhere(job),
    planBasis: seen,
  })
}

async function quotedLine(
  job: Job,
  { position, work }: ExchangeAsked,
  words: Words,
): Promise<Result<{ readonly quote: Quote; readonly line: QuoteLine }, string>> {
  const quote = work ? await findAcceptedQuote(job.id) : await findLatestQuote(job.id)
  if (!quote) return fail(work ? 'No quote of this job is accepted.' : 'This job has no quote yet.')
  const line = quote.lines.find(({ kind, socketPosition }) => kind === 'tube' && socketPosition === position)
  if (!line) return fail(quoteFaultText({ code: 'no-tube-quoted', quote: quoteTitle(quote), position }, words))
  return ok({ quote, line })
}

/** In chassis order; those of the group that the quote names. */
async function seatsOf({ lines }: Quote, { sockets }: PlaceDemand): Promise<Seat[]> {
  const named = sockets.flatMap(({ position }) => {
    const line = lines.find(({ kind, socketPosition }) => kind === 'tube' && socketPosition === position)
    return line?.tubeId ? [{ position, tubeId: line.tubeId }] : []
  })
  const stocked = await listTubesById(named.map(({ tubeId }) => tubeId))
  const byId = new Map(stocked.map((each) => [each.tube.id, each]))
  return named.flatMap(({ position, tubeId }) => {
    const there = byId.get(tubeId)
    return there ? [{ position, stocked: there }] : []
  })
}

async function typedTube(mark: string, words: Words): Promise<Result<StockedTube | null, string>> {
  if (mark === '') return ok(null)
  const tube = await findTubeByMark(mark)
  const [stocked] = tube ? await listTubesById([tube.id]) : []
  return stocked ? ok(stocked) : fail(`The stock book has no ${words.tube} marked ${mark}.`)
}

async function draftedElsewhere(job: Job): Promise<ReadonlyMap<string, string>> {
  const drafted = await listDraftedTubes()
  return new Map(drafted.flatMap(({ tubeId, jobId, jobNumber }) => (jobId === job.id ? [] : [[tubeId, jobNumber]])))
}

const circuitOf = (bench: LatestBench, group: string, shop: Shop, { at }: Limits) =>
  at === 'test-point' ? fail('You asked for the test point.') : groupCircuit(bench, group, shop)
