/** The line of one quote that names the tube: what it names then, what it costs, and what is claimed of the set. */
import { outputGroup } from '@/lib/domain/bench/bench-result'
import { type Change, changesBetween } from '@/lib/domain/history/changes'
import type { Job } from '@/lib/domain/job/job'
import type { MatchStatement } from '@/lib/domain/matching/proposal'
import {
  creditLine,
  type ExchangePrice,
  exchangePrice,
  isExchangeCredit,
  quotedText,
} from '@/lib/domain/quote/exchanged'
import { type Quote, type QuotedMatch, type QuoteLine, quoteTitle, standingMatches } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { findAmpSheet } from '@/lib/store/amp'
import type { Tx } from '@/lib/store/database'
import { type LineToKeep, saveQuote } from '@/lib/store/quote'
import { listTubesById } from '@/lib/store/tube'
import { moneyIn, noteQuote, quoteShown } from '@/lib/workflow/quote/quote-notes'
import { refuse, type Step, stale } from '@/lib/workflow/step/step'
import type { Exchange, TubeExchange } from './tube-exchange'

export type LineExchange = {
  readonly job: Job
  readonly quote: Quote
  readonly exchange: Exchange
  readonly input: Pick<TubeExchange, 'match' | 'beside'>
}

export async function exchangeLine(tx: Tx, step: Step, shop: Shop, asked: LineExchange): Promise<void> {
  const { quote, exchange } = asked
  const { out, into, position } = exchange
  const line = lineOf(quote, exchange)
  const taken = quote.lines.find(({ tubeId }) => tubeId === into.tube.id)
  if (taken) refuse({ code: 'exchange-taken', mark: into.tube.mark, on: taken.socketPosition ?? 'another socket' })
  const lines = exchangedLines(quote, line, exchange, priceOf(shop, quote, line, exchange))
  const matches = await matchesWith(tx, lines, asked)
  if (!(await saveQuote(tx, quote.id, quote.version, { matches }, lines)))
    refuse(await stale(tx, 'quote', quote.id, quote.version))
  const changes = changesOf(quote, lines, exchange, shop)
  const did = `${out.tube.mark} exchanged for ${into.tube.mark} in ${position}${asQuoted(quote, line, exchange)}`
  await noteQuote(tx, step, { quote, did, changes, version: quote.version + 1 })
}

const lineOf = (quote: Quote, { out, position }: Exchange): QuoteLine =>
  quote.lines.find(({ tubeId, socketPosition }) => tubeId === out.tube.id && socketPosition === position) ??
  refuse({ code: 'no-tube-quoted', quote: quoteTitle(quote), position })

function priceOf(shop: Shop, quote: Quote, line: QuoteLine, { out, into, position }: Exchange): ExchangePrice {
  const price = exchangePrice({ line, state: quote.state, out: out.tube, into: into.tube })
  if (price.ok) return price.value
  const [own, agreed] = [into.tube.price, price.fault.agreed].map((amount) => moneyIn(shop, amount)) as [string, string]
  const { mark } = into.tube
  return refuse({ code: 'exchange-dearer', mark, position, price: own, agreed, quote: quoteTitle(quote) })
}

function exchangedLines(
  { state, lines }: Quote,
  line: QuoteLine,
  { into: { tube }, position }: Exchange,
  { unitPrice, credit }: ExchangePrice,
): LineToKeep[] {
  const text = state === 'draft' ? quotedText(tube) : line.text
  const kept = lines
    .filter((each) => !(isExchangeCredit(each) && each.socketPosition === position))
    .map(
      ({ doneAt: _at, doneBy: _by, ...each }): LineToKeep =>
        each.id === line.id ? { ...each, text, unitPrice, tubeId: tube.id } : each,
    )
  return credit > 0 ? [...kept, creditLine({ line, into: tube, credit })] : kept
}

/** On a quote that is out what was claimed stays written down: exchanged back, it stands again. */
async function matchesWith(tx: Tx, lines: readonly LineToKeep[], { job, quote, exchange, input }: LineExchange) {
  const claim = input.match && (await claimOf(tx, job, lines, exchange, { ...input, match: input.match }))
  const kept = quote.matches.filter((match) => !claim || tubesOf(match.tubeIds) !== tubesOf(claim.tubeIds))
  const all = claim ? [...kept, claim] : kept
  return quote.state === 'draft' ? standingMatches(all, lines) : all
}

const tubesOf = (tubeIds: readonly string[]): string => [...tubeIds].sort().join(' ')

type Claimed = Pick<TubeExchange, 'beside'> & { readonly match: MatchStatement }

/** Only of the very set it was worked out for: a revision may name others beside it. A single tube matches nothing. */
async function claimOf(
  tx: Tx,
  job: Job,
  lines: readonly LineToKeep[],
  { into, position }: Exchange,
  { beside, match: statement }: Claimed,
): Promise<QuotedMatch | null> {
  const sheet = await findAmpSheet(job.ampId, tx)
  const group = sheet?.sockets.find((each) => each.position === position)?.matchGroup
  if (!sheet || group === undefined || beside.length === 0) return null
  const positions = new Set(outputGroup(sheet, group).map((each) => each.position))
  const ids = lines.flatMap(({ tubeId, socketPosition }) =>
    tubeId && positions.has(socketPosition ?? '') ? [tubeId] : [],
  )
  if (tubesOf(ids) !== tubesOf([into.tube.id, ...beside.map(({ tubeId }) => tubeId)])) return null
  const tubes = (await listTubesById(ids, tx)).map(({ tube }) => tube)
  const designation = [...new Set(tubes.map((tube) => tube.designation))].join(' / ')
  return { group, designation, tubeIds: ids, marks: tubes.map(({ mark }) => mark), statement }
}

function changesOf(
  quote: Quote,
  lines: readonly LineToKeep[],
  { out, into, position }: Exchange,
  shop: Shop,
): Change[] {
  const priced = changesBetween(quoteShown(quote, shop), quoteShown({ ...quote, lines }, shop))
  if (quote.state === 'draft') return priced
  return [{ label: position, from: quotedText(out.tube), to: quotedText(into.tube) }, ...priced]
}

/** The paper that went out is not drawn anew, so the history says what stands on it. */
function asQuoted({ state }: Quote, { text }: QuoteLine, { into: { tube } }: Exchange): string {
  if (state === 'draft') return ''
  if (text === quotedText(tube)) return ', as quoted'
  const other = text.startsWith(`${tube.designation},`) ? '' : ', another designation'
  return `; quoted was ${text}${other}`
}
