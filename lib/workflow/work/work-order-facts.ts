/** What the work order says, from the shop's records. */
import type { ChassisLandmark } from '@/lib/documents/paper'
import type {
  ConsentFacts,
  IdleTargetFacts,
  OperationFacts,
  PartFacts,
  WorkOrderFacts,
  WorkSocketFacts,
} from '@/lib/documents/work-order'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { pointAt, wholePlaceAt } from '@/lib/domain/amp/chassis-frame'
import { type ChassisLayout, type Landmark, layoutChassis } from '@/lib/domain/amp/chassis-layout'
import { fittedBy } from '@/lib/domain/amp/fitting'
import { biasKindWord, roleWord, type Socket } from '@/lib/domain/amp/socket'
import { socketBaseOf } from '@/lib/domain/amp/socket-base'
import { idleWindows } from '@/lib/domain/bench/bench-result'
import { currentAtShare } from '@/lib/domain/bias/idle-target'
import { idleWindow } from '@/lib/domain/bias/idle-verdict'
import { asAgreed, exchangedText, exchangesOn } from '@/lib/domain/quote/exchanged'
import { type Quote, quoteStateWord, quoteTitle, stateNow, totalsOf, tubeIdsOf } from '@/lib/domain/quote/quote'
import type { Shop } from '@/lib/domain/shop/shop'
import { partStandings } from '@/lib/domain/stock/part-standing'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { type Volts, volts, watts } from '@/lib/domain/units'
import { type Words, wordsFor } from '@/lib/domain/words'
import type { Tx } from '@/lib/store/database'
import type { JobHead } from '@/lib/store/job-head'
import { listDrawnBy, listStockedParts } from '@/lib/store/part-draw'
import { listQuotes } from '@/lib/store/quote'
import { listReadingSets } from '@/lib/store/reading-set'
import { listTubesById } from '@/lib/store/tube'
import { ampFacts, paperSettings } from '@/lib/workflow/counter/paper-facts'
import { type SafetyState, safetyState, workedRound } from './safety-state'
import { signOffFacts } from './sign-off-facts'

type Ordered = ReadonlyMap<string, { readonly mark: string; readonly type: string }>

export type WorkOrderAt = { readonly now: Date; readonly address: string }

export async function workOrderFacts(
  tx: Tx,
  shop: Shop,
  head: JobHead,
  { now, address }: WorkOrderAt,
): Promise<WorkOrderFacts> {
  const { job, customer, amp } = head
  const state = await safetyState(job, shop, tx)
  const quotes = await listQuotes(job.id, tx)
  const accepted = quotes.find((quote) => quote.state === 'accepted') ?? null
  const ordered = await orderedTubes(tx, accepted, state, job.id)
  const drawing = chassisOf(state.sheet, shop)
  const lines = accepted?.lines ?? []
  return {
    settings: paperSettings(shop, now),
    jobNumber: job.number,
    jobUrl: `${address}/jobs/${job.number}`,
    promisedOn: job.promisedOn,
    customerName: customer.name,
    customerPhone: customer.phone,
    amp: ampFacts(amp),
    fault: job.faultSettings === '' ? job.fault : `${job.fault}\nShows at: ${job.faultSettings}`,
    spendingLimit: job.spendingLimit,
    consents: quotes.flatMap(consentOf).reverse(),
    sockets: state.sheet.sockets.map((socket, index) => socketFacts(socket, ordered, drawing, index)),
    landmarks: drawing.landmarks.flatMap((landmark) => landmarkOf(landmark, drawing, wordsFor(shop.words))),
    operations: [...standingOf(quotes, shop, now), ...operationsOf(accepted)],
    parts: await partFacts(tx, lines, job.id),
    exchanged: accepted ? await exchangedTexts(tx, accepted, state, job.id) : [],
    idleTargets: idleTargets(state, ordered, shop, await lastPlateVolts(tx, state, job, shop)),
    signOff: signOffFacts(state.lines),
  }
}

function consentOf(quote: Quote): ConsentFacts[] {
  if (quote.answer !== 'accepted' || quote.answeredAt === null) return []
  const { answerBy, answeredAt, answerHow, answerTakenBy } = quote
  const how = `${answerHow || 'way not noted'}, to quote ${quoteTitle(quote)}`
  return [
    {
      by: answerBy,
      at: answeredAt.toISOString(),
      how,
      amount: totalsOf(asAgreed(quote)).total,
      takenBy: answerTakenBy,
    },
  ]
}

/** Without an accepted quote the order is one for finding the fault, and says so first. */
function standingOf(quotes: readonly Quote[], shop: Shop, now: Date): OperationFacts[] {
  if (quotes.some(({ state }) => state === 'accepted')) return []
  const [latest] = quotes
  const detail = latest
    ? `Quote ${quoteTitle(latest)} is ${quoteStateWord(stateNow(latest, now, shop.timeZone))}. Nothing of it is ordered.`
    : 'There is no quote yet.'
  return [{ text: 'Find the fault only: no quote is accepted.', detail, done: false }]
}

/** A fee or a credit is money and no work: there is nothing to tick. */
function operationsOf(accepted: Quote | null): OperationFacts[] {
  const lines = accepted?.lines.filter(({ kind }) => kind === 'labour') ?? []
  return lines.map(({ text, thousandths, unit, doneAt, doneBy }) => ({
    text,
    detail: [unit === 'flat' ? '' : `${thousandths / 1000} ${unit}`, doneAt ? `done by ${doneBy}` : '']
      .filter(Boolean)
      .join(', '),
    done: doneAt !== null,
  }))
}

async function partFacts(tx: Tx, lines: Quote['lines'], jobId: string): Promise<PartFacts[]> {
  const drawn = await listDrawnBy(jobId, tx)
  const standings = partStandings(lines, await listStockedParts('', tx), { jobId, drawn })
  return lines.flatMap(({ kind, thousandths, text, partId, doneAt }) => {
    if (kind !== 'part') return []
    const standing = standings.get(partId ?? '')
    const note = doneAt === null ? standing?.short || standing?.location : 'taken from the drawer'
    return [{ thousandths, text, used: false, note: partId === null ? '' : (note ?? '') }]
  })
}

/** By socket position; what this job has fitted already is no longer to fit. */
async function orderedTubes(tx: Tx, quote: Quote | null, { fittings }: SafetyState, jobId: string): Promise<Ordered> {
  const lines = quote?.lines.filter(({ tubeId, socketPosition }) => tubeId !== null && socketPosition !== null) ?? []
  const fitted = new Set(fittedBy(fittings, jobId).map(({ tubeId }) => tubeId))
  const stocked = await listTubesById(
    lines.flatMap(({ tubeId }) => tubeId ?? []),
    tx,
  )
  const tubes = new Map(stocked.map(({ tube }) => [tube.id, tube]))
  return new Map(
    lines.flatMap(({ tubeId, socketPosition }) => {
      const tube = tubes.get(tubeId ?? '')
      return tube && !fitted.has(tube.id)
        ? [[socketPosition ?? '', { mark: tube.mark, type: tube.designation }] as const]
        : []
    }),
  )
}

/** What was quoted, where another tube stands for it now. */
async function exchangedTexts(tx: Tx, quote: Quote, { fittings }: SafetyState, jobId: string): Promise<string[]> {
  const tubes = (await listTubesById(tubeIdsOf(quote), tx)).map(({ tube }) => tube)
  const fitted = new Set(fittedBy(fittings, jobId).map(({ mark }) => mark))
  return exchangesOn(quote, tubes).map((each) => exchangedText(each, fitted.has(each.tube.mark) ? 'fitted' : 'to fit'))
}

function chassisOf({ sockets }: AmpSheet, catalogue: TubeCatalogue): ChassisLayout {
  return layoutChassis(
    sockets.map(({ id, position, role, typeFitted, across, depth }) => ({
      id,
      position,
      role,
      base: socketBaseOf(typeFitted, catalogue),
      across,
      depth,
    })),
  )
}

function socketFacts(socket: Socket, ordered: Ordered, drawing: ChassisLayout, index: number): WorkSocketFacts {
  const { position, role, typeFitted, markFitted, biasKind } = socket
  const place = drawing.places[index]
  return {
    position,
    role: roleWord(role),
    type: typeFitted,
    biasKind: biasKindWord(biasKind),
    tubeNow:
      typeFitted === '' && markFitted === ''
        ? ''
        : `${typeFitted}, ${markFitted === '' ? 'no mark' : `mark ${markFitted}`}`,
    tubeToFit: ordered.get(position) ?? null,
    // The sheet counts depth from the controls, the paper from the rear.
    place: place ? { across: place.across, depth: 100 - place.depth } : null,
  }
}

/** The two transformers, which tell left from right. The small parts find no room on paper. */
function landmarkOf(
  { kind, x, y, width, height }: Landmark,
  { outline }: ChassisLayout,
  words: Words,
): ChassisLandmark[] {
  if (kind !== 'mains-transformer' && kind !== 'output-transformer') return []
  const mains = words.locale === 'en-US' ? 'power transformer' : 'mains transformer'
  const [rearLeft, frontRight] = [pointAt(outline, 0, 100), pointAt(outline, 100, 0)]
  const middle = wholePlaceAt(outline, { x: x + width / 2, y: y + height / 2 })
  return [
    {
      label: kind === 'mains-transformer' ? mains : 'output transformer',
      across: middle.across,
      depth: 100 - middle.depth,
      width: (100 * width) / (frontRight.x - rearLeft.x),
      height: (100 * height) / (frontRight.y - rearLeft.y),
    },
  ]
}

/** Plate to cathode by socket id, of the last round of either phase. */
async function lastPlateVolts(
  tx: Tx,
  state: SafetyState,
  job: JobHead['job'],
  shop: Shop,
): Promise<ReadonlyMap<string, Volts>> {
  const [set] = await listReadingSets(job.id, tx)
  const read = set ? workedRound(state, set, shop).result.sockets : []
  return new Map(
    read.flatMap(({ socket, outcome }) => {
      const value = outcome.kind === 'idle' ? outcome.idle.plateToCathodeVolts.value : 0
      return value > 0 ? [[socket.id, volts(value)] as const] : []
    }),
  )
}

/** No target where rating or kind of bias is not known: a guess would be taken for one. */
function idleTargets(
  { sheet }: SafetyState,
  ordered: Ordered,
  shop: Shop,
  read: ReadonlyMap<string, Volts>,
): IdleTargetFacts[] {
  return sheet.sockets.flatMap((socket) => {
    const { id, position, role, biasKind } = socket
    const variant = findTubeType(ordered.get(position)?.type ?? socket.typeFitted, shop)
    const rating = variant?.ratings?.plateWatts?.value ?? null
    if (role !== 'output' || biasKind === '' || !variant || rating === null) return []
    const service = sheet.amp.outputClass === 'single-ended' ? 'single-ended-class-a' : 'push-pull-class-ab'
    const { low, high } = idleWindow({ bias: biasKind, service, windows: idleWindows(shop) })
    const plateVoltage = read.get(id) ?? null
    const currentAt = (share: typeof low) =>
      plateVoltage === null ? null : currentAtShare(share, watts(rating), plateVoltage)
    const kind = service === 'single-ended-class-a' ? 'single-ended' : biasKindWord(biasKind)
    return [
      {
        position,
        type: variant.designation,
        rating: watts(rating),
        lowestShare: low,
        highestShare: high,
        plateVoltage,
        lowestCurrent: currentAt(low),
        highestCurrent: currentAt(high),
        basis: `shop’s window, ${kind}; common practice`,
      },
    ]
  })
}
