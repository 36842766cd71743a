/** What the paper and the mail of a quote say, from the shop's records. */
import type { MatchFacts, TubeTestFacts } from '@/lib/documents/facts'
import type { QuotedLine, QuotedTube, QuoteFacts } from '@/lib/documents/quote-paper'
import { dayInZone, formatDay } from '@/lib/domain/calendar'
import type { CarriedMatch } from '@/lib/domain/matching/proposal'
import {
  amountOf,
  type Quote,
  type QuotedMatch,
  type QuoteLine,
  quoteTitle,
  standingMatches,
  totalsOf,
  tubeIdsOf,
} from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { conditionWord, type StockedTube, type TubeCondition } from '@/lib/domain/stock/tube'
import { ratio } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import type { Tx } from '@/lib/store/database'
import type { JobHead } from '@/lib/store/job-head'
import { listTubesById } from '@/lib/store/tube'
import { ampFacts, customerFacts, paperSettings } from '@/lib/workflow/counter/paper-facts'

const USED: readonly TubeCondition[] = ['used-tested', 'pull', 'as-found']
const UNTAXED = 'not taxed'

const paragraphs = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean)

export async function quoteFacts(tx: Tx, shop: Shop, head: JobHead, quote: Quote, issuedAt: Date): Promise<QuoteFacts> {
  const { job, customer, amp } = head
  const totals = totalsOf(quote)
  const ids = quote.lines.flatMap(({ tubeId }) => tubeId ?? [])
  const tubes = new Map((await listTubesById(ids, tx)).map((stocked) => [stocked.tube.id, stocked]))
  const linesOf = (...kinds: QuoteLine['kind'][]) => quote.lines.filter(({ kind }) => kinds.includes(kind))
  return {
    settings: paperSettings(shop, issuedAt),
    number: quote.number,
    revision: quote.revision,
    jobNumber: job.number,
    validUntil: quote.validUntil,
    customer: customerFacts(customer),
    amp: ampFacts(amp),
    findings: paragraphs(job.findings),
    note: paragraphs(quote.note),
    labour: linesOf('labour').map(quotedLine),
    parts: linesOf('part').map(quotedLine),
    fees: linesOf('fee').map(quotedLine),
    tubes: linesOf('tube').map((line) => quotedTube(line, tubes.get(line.tubeId ?? ''), shop)),
    matches: standingMatches(quote.matches, quote.lines).flatMap(matchFacts),
    subtotal: totals.subtotal,
    tax: { name: quote.taxName, milliPercent: quote.taxMilliPercent, amount: totals.tax },
    total: totals.total,
    depositDue: totals.deposit > 0 ? totals.deposit : null,
    optional: [],
    declined: paragraphs(job.declinedWork).map((text) => ({ text, amount: null })),
    warranty: warrantyText(shop),
    howToAnswer: howToAnswer(shop, quote),
  }
}

function quotedLine(line: QuoteLine): QuotedLine {
  const { text, thousandths, unit, unitPrice, taxable } = line
  return {
    text,
    detail: taxable ? '' : 'Not taxed.',
    thousandths,
    unit,
    unitPrice,
    amount: amountOf(line),
    used: false,
  }
}

function quotedTube(line: QuoteLine, stocked: StockedTube | undefined, shop: Shop): QuotedTube {
  const position = line.socketPosition ?? ''
  const price = amountOf(line)
  if (!stocked) throw new Error(`Tube ${line.tubeId} of quote line ${line.id} is not in the stock book`)
  const { tube, test } = stocked
  const condition = [conditionWord(tube.condition), ...(line.taxable ? [] : [UNTAXED])].join(', ')
  const used = USED.includes(tube.condition)
  return { mark: tube.mark, type: tube.designation, position, condition, used, test: testFacts(test, shop), price }
}

/** A record without plate and grid volts and a current at them says nothing on paper. */
function testFacts(test: StockedTube['test'], { timeZone }: Shop): TubeTestFacts | null {
  if (!test || test.plateVoltage === null || test.gridVoltage === null) return null
  const { plateVoltage, screenVoltage, gridVoltage } = test
  const sections = test.sections.flatMap(({ plateCurrent, transconductance }) =>
    plateCurrent === null ? [] : [{ plateCurrent, transconductance }],
  )
  const testPoint = { plateVoltage, screenVoltage, gridVoltage }
  return { testedOn: dayInZone(test.testedAt, timeZone), instrument: test.instrumentName, testPoint, sections }
}

/** Tubes outside the yardsticks, or not surely within, are quoted, but never as a match. */
function matchFacts({ designation, marks, statement }: QuotedMatch): MatchFacts[] {
  if (statement.match === 'outside' || statement.match === 'uncertain') return []
  const { firstTested, lastTested, instrument, testPoint, spreads, yardsticks, predicted, carried, apart } = statement
  return [
    {
      marks,
      type: designation,
      testedFrom: firstTested.slice(0, 10),
      testedTo: lastTested.slice(0, 10),
      instrument: predicted ? predicted.instruments.join(' and ') : instrument,
      testPoint,
      ...(predicted ? { predicted } : {}),
      ...(carried ? { carried: carried.map((each) => carriedFacts(each, instrument)) } : {}),
      ...(apart ? { apartPlusMinus: apart.plateCurrent } : {}),
      plateCurrentSpread: spreads.plateCurrent,
      plateCurrentTolerance: yardsticks.plateCurrent,
      transconductanceSpread: spreads.transconductance,
      transconductanceTolerance: spreads.transconductance === null ? null : yardsticks.transconductance,
    },
  ]
}

const carriedFacts = ({ marks, from, current }: CarriedMatch, to: string) => ({
  ...{ marks, from, to },
  share: ratio(current.share),
})

const counted = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'}`

function warrantyText({ warrantyTerms, warrantyDays, words }: Shop): string {
  const { tubes } = wordsFor(words)
  const days =
    warrantyDays === 0
      ? 'The shop gives no warranty of its own on this quote. Your rights under local law stand.'
      : `Work, parts and ${tubes} of this quote: ${counted(warrantyDays)} from the day the amplifier is handed back.`
  return warrantyTerms.trim() === '' ? days : `${days} ${warrantyTerms.trim()}`
}

function howToAnswer({ phone, email, words }: Shop, quote: Quote): string {
  const ways = [phone && `by phone, ${phone}`, email && `by e-mail, ${email}`, 'at the counter'].filter(Boolean)
  const until = formatDay(quote.validUntil, wordsFor(words).locale)
  const { tubes } = wordsFor(words)
  const kept =
    tubeIdsOf(quote).length === 0 ? '' : ` The ${tubes} named here are kept for you until the end of ${until}.`
  return `Say yes or no to ${quoteTitle(quote)}: ${ways.join('; ')}. Your answer is written down with your name.${kept}`
}
