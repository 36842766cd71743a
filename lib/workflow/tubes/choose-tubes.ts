/**
 * Puts the chosen tubes of a match group on the job's draft quote, or takes
 * them off it again. Nothing is held yet: a tube is held when the quote is sent.
 */
import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { Socket } from '@/lib/domain/amp/socket'
import { outputGroup } from '@/lib/domain/bench/bench-result'
import { changesBetween } from '@/lib/domain/history/changes'
import type { Job } from '@/lib/domain/job/job'
import type { MatchStatement } from '@/lib/domain/matching/proposal'
import {
  type NewQuoteLine,
  type Quote,
  type QuotedMatch,
  type QuoteLine,
  standingMatches,
} from '@/lib/domain/quote/quote'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import type { Tube } from '@/lib/domain/stock/tube'
import { capital, wordsFor } from '@/lib/domain/words'
import { findAmpSheet } from '@/lib/store/amp'
import { inTransaction, type Tx } from '@/lib/store/database'
import { findLatestQuote, type LineToKeep, listTubesFittedIn, releaseUnlisted, saveQuote } from '@/lib/store/quote'
import { listTubesById } from '@/lib/store/tube'
import { asDraft, draftOf, requireOpenJob } from '@/lib/workflow/quote/quote-draft'
import { noteQuote, quoteShown } from '@/lib/workflow/quote/quote-notes'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { choiceChanges, type SeenChoice } from './seen-choice'
import type { ChangeScene } from './tube-changes'
import { refuseTaken } from './tube-standing'

export type ChosenTube = { readonly tubeId: string; readonly socketPosition: string }

export type TubeChoice = {
  readonly jobNumber: string
  readonly group: string
  readonly tubes: readonly ChosenTube[]
  /** Null: nothing is claimed of how alike they are. */
  readonly match: MatchStatement | null
}

/** Gives the id of the quote. `seen`: what a page showed; left out where nobody looked. */
export function chooseTubes(
  step: Step,
  shop: Shop,
  choice: TubeChoice,
  seen?: SeenChoice,
): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      if (seen) await refuseChanged(tx, { step, shop, job: await requireOpenJob(tx, choice.jobNumber) }, seen)
      return choose(tx, step, shop, choice)
    }),
  )
}

async function refuseChanged(tx: Tx, scene: ChangeScene & { readonly job: Job }, seen: SeenChoice): Promise<void> {
  const changes = await choiceChanges(seen, scene, tx)
  if (changes.length > 0) refuse({ code: 'plan-stale', changes })
}

/** Within a step that puts several sets on at once. */
export async function choose(
  tx: Tx,
  step: Step,
  shop: Shop,
  { jobNumber, group, tubes, match }: TubeChoice,
): Promise<string> {
  const job = await requireOpenJob(tx, jobNumber)
  const quote = await draftOf(tx, step, shop, job)
  const chosen = await chosenTubes(tx, step, job, tubes)
  const taken = new Set(tubes.map(({ tubeId }) => tubeId))
  const sockets = new Set(tubes.map(({ socketPosition }) => socketPosition))
  const stays = (line: QuoteLine) =>
    !(line.kind === 'tube' && (sockets.has(line.socketPosition ?? '') || taken.has(line.tubeId ?? '')))
  const added = chosen.map(({ tube, socketPosition }) => tubeLine(quote, tube, socketPosition))
  const others = quote.matches.filter((each) => each.group !== group)
  // A single tube matches nothing.
  const claimed =
    match && chosen.length > 1
      ? [
          matchOf(
            group,
            chosen.map(({ tube }) => tube),
            match,
          ),
        ]
      : []
  const lines = [...quote.lines.filter(stays), ...added]
  const did = `${capital(wordsFor(shop.words).tubes)} chosen for ${group || 'the output'}: ${chosen.map(({ tube, socketPosition }) => `${tube.mark} in ${socketPosition}`).join(', ')}`
  return keepLines(tx, step, shop, { quote, lines, matches: [...others, ...claimed], did })
}

type StandingTube = { readonly tube: Tube; readonly socketPosition: string }

/** Each once, in stock, and free for this job. */
async function chosenTubes(tx: Tx, step: Step, job: Job, wanted: readonly ChosenTube[]): Promise<StandingTube[]> {
  const stocked = await listTubesById(
    wanted.map(({ tubeId }) => tubeId),
    tx,
  )
  const byId = new Map(stocked.map(({ tube }) => [tube.id, tube]))
  const chosen = wanted.map(({ tubeId, socketPosition }) => {
    const tube = byId.get(tubeId) ?? refuse({ code: 'not-found', what: `The tube for ${socketPosition}` })
    return { tube, socketPosition }
  })
  const twice = chosen.find(({ tube }, index) => chosen.findIndex((each) => each.tube.id === tube.id) !== index)
  if (twice) refuse({ code: 'tube-twice', mark: twice.tube.mark })
  const here = await listTubesFittedIn(job.id, tx)
  for (const { tube, socketPosition } of chosen)
    await refuseTaken(tx, step, { tube, socketPosition, jobId: job.id, here })
  return chosen
}

/** A price already agreed on this quote for the very tube stays. */
function tubeLine(quote: Quote, tube: Tube, socketPosition: string): LineToKeep {
  const before = quote.lines.find(({ tubeId }) => tubeId === tube.id)
  const line: NewQuoteLine = {
    kind: 'tube',
    text: `${tube.designation}, mark ${tube.mark}`,
    thousandths: 1000,
    unitPrice: before?.unitPrice ?? tube.price,
    unit: 'pc',
    taxable: before?.taxable ?? true,
    tubeId: tube.id,
    socketPosition,
    partId: null,
  }
  return line
}

const matchOf = (group: string, tubes: readonly Tube[], statement: MatchStatement): QuotedMatch => ({
  group,
  designation: [...new Set(tubes.map(({ designation }) => designation))].join(' / '),
  tubeIds: tubes.map(({ id }) => id),
  marks: tubes.map(({ mark }) => mark),
  statement,
})

type LinesToKeep = {
  readonly quote: Quote
  readonly lines: readonly LineToKeep[]
  readonly matches: readonly QuotedMatch[]
  readonly did: string
}

async function keepLines(tx: Tx, step: Step, shop: Shop, { quote, lines, matches, did }: LinesToKeep): Promise<string> {
  const change = { matches: standingMatches(matches, lines) }
  if (!(await saveQuote(tx, quote.id, quote.version, change, lines)))
    refuse(await stale(tx, 'quote', quote.id, quote.version))
  await releaseUnlisted(
    tx,
    quote.id,
    lines.flatMap(({ tubeId }) => tubeId ?? []),
  )
  const changes = changesBetween(quoteShown(quote, shop), quoteShown({ ...quote, lines }, shop))
  await noteQuote(tx, step, { quote, did, changes, version: quote.version + 1 })
  return quote.id
}

/** A socket that is in no output group goes by its own position. */
const socketsNamed = (sheet: AmpSheet, group: string): Socket[] => [
  ...outputGroup(sheet, group),
  ...sheet.sockets.filter(({ role, position }) => role !== 'output' && position === group),
]

/** Takes the group's tubes off the draft. Nothing there is no fault. */
export function dropTubes(
  step: Step,
  shop: Shop,
  jobNumber: string,
  group: string,
): Promise<Result<string | null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await requireOpenJob(tx, jobNumber)
      const latest = await findLatestQuote(job.id, tx)
      if (!latest) return null
      const quote = asDraft(latest)
      const sheet = await findAmpSheet(job.ampId, tx)
      const positions = new Set(sheet ? socketsNamed(sheet, group).map(({ position }) => position) : [])
      const together = new Set(quote.matches.filter((each) => each.group === group).flatMap(({ tubeIds }) => tubeIds))
      const dropped = quote.lines.filter(
        ({ kind, socketPosition, tubeId }) =>
          kind === 'tube' && (positions.has(socketPosition ?? '') || together.has(tubeId ?? '')),
      )
      if (dropped.length === 0) return quote.id
      const lines = quote.lines.filter((line) => !dropped.includes(line))
      const did = `${capital(wordsFor(shop.words).tubes)} for ${group || 'the output'} taken off the quote`
      return keepLines(tx, step, shop, { quote, lines, matches: quote.matches, did })
    }),
  )
}
