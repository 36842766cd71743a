/** A job whose quote names two 6V6GT for V3 and V4, and an exchange as its page would ask for it. */
import type { MatchStatement } from '@/lib/domain/matching/proposal'
import type { QuotedMatch } from '@/lib/domain/quote/quote'
import type { TestEntry } from '@/lib/domain/stock/test-entry'
import type { TubeDetails } from '@/lib/domain/stock/tube'
import { volts } from '@/lib/domain/units'
import { findAcceptedQuote, findLatestQuote } from '@/lib/store/quote'
import { listTubesById } from '@/lib/store/tube'
import type { Step } from '@/lib/workflow/step/step'
import { chooseTubes } from '@/lib/workflow/tubes/choose-tubes'
import { exchangeTube } from '@/lib/workflow/tubes/exchange-tube'
import { planBasis } from '@/lib/workflow/tubes/plan-basis'
import { seenOut, seenThere } from '@/lib/workflow/tubes/seen-tubes'
import type { TubeExchange } from '@/lib/workflow/tubes/tube-exchange'
import { answer, done, draftWith, jobOf, jobOnBench, send, shopOnFile } from './quoted-job'
import { section, tubeInStock } from './stocked-shop'
import { later } from './tested-job'

/** Read at 250 V, where a 6V6GT idles at about 45 mA. */
export const aTube = (details: Partial<TubeDetails> = {}, test: Partial<TestEntry> = {}): Promise<string> =>
  tubeInStock(
    { designation: '6V6GT', ...details },
    { gridVoltage: volts(-12.5), sections: [section(45, 4.1)], ...test },
  )

export type Paired = { readonly number: string; readonly ids: readonly [string, string] }

export async function draftPair(
  match: MatchStatement | null = null,
  details: Partial<TubeDetails> = {},
): Promise<Paired> {
  const number = await jobOnBench()
  const ids = [await aTube(details), await aTube(details)] as const
  await draftWith(number)
  const tubes = ids.map((tubeId, at) => ({ tubeId, socketPosition: ['V3', 'V4'][at] ?? '' }))
  done(await chooseTubes(later(0), await shopOnFile(), { jobNumber: number, group: groupOf, tubes, match }))
  return { number, ids }
}

const groupOf = 'output'

export async function sentPair(...given: Parameters<typeof draftPair>): Promise<Paired> {
  const pair = await draftPair(...given)
  done(await send(pair.number))
  return pair
}

export async function acceptedPair(...given: Parameters<typeof draftPair>): Promise<Paired> {
  const pair = await sentPair(...given)
  done(await answer(pair.number))
  return pair
}

/** The accepted quote, else the latest, as it stands. */
export async function asSeen(
  { number, ids }: Paired,
  intoId: string,
  { step = later(20), position = 'V3', latest = false } = {},
): Promise<TubeExchange> {
  const [shop, job] = [await shopOnFile(), await jobOf(number)]
  const quote = (latest ? null : await findAcceptedQuote(job.id)) ?? (await findLatestQuote(job.id))
  const outId = quote?.lines.find(({ socketPosition, kind }) => kind === 'tube' && socketPosition === position)?.tubeId
  const besideIds = [...(quote?.lines ?? [])].flatMap(({ tubeId }) => (tubeId && tubeId !== outId ? [tubeId] : []))
  const [into, out, ...beside] = await listTubesById([intoId, outId ?? ids[0], ...besideIds])
  if (!quote || !out || !into) throw new Error('Nothing to exchange')
  const view = { now: step.now, timeZone: shop.timeZone, jobInHand: job.id, catalogue: shop }
  return {
    jobNumber: number,
    quoteId: quote.id,
    version: quote.version,
    position,
    out: seenOut(out, view),
    into: seenThere(into, view),
    beside: beside.map((each) => seenThere(each, view)),
    basis: await planBasis(job, shop),
    limits: { maximumTestAgeDays: 365, allowOverPrintedRating: false },
    match: null,
  }
}

export const exchange = async (asked: TubeExchange, step: Step = later(21)) =>
  exchangeTube(step, await shopOnFile(), asked)

export const marksOf = (matches: readonly QuotedMatch[]) => matches.map(({ marks }) => marks)
