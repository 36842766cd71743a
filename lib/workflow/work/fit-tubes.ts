/**
 * Puts a tube of the accepted quote into its socket, or takes it out again while
 * the job is open. The stock book, the socket's past and the sheet of the
 * amplifier change together.
 */
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { type Fitting, fittedBy, fittedTubeText } from '@/lib/domain/amp/fitting'
import type { Socket } from '@/lib/domain/amp/socket'
import type { Change } from '@/lib/domain/history/changes'
import type { Job } from '@/lib/domain/job/job'
import type { Quote, QuoteLine } from '@/lib/domain/quote/quote'
import type { Result } from '@/lib/domain/result'
import type { Tube } from '@/lib/domain/stock/tube'
import { findAmp, saveFittedTube } from '@/lib/store/amp'
import { inTransaction, type Tx } from '@/lib/store/database'
import { createReceivedFitting, markTakenOut, moveFittedTube, putBack } from '@/lib/store/fitting'
import { writeHistory } from '@/lib/store/history'
import { findAcceptedQuote, saveLineDone } from '@/lib/store/quote'
import { findTube, markFitted, setHold } from '@/lib/store/tube'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { refuseTaken } from '@/lib/workflow/tubes/tube-standing'
import { requireWork } from './do-work'
import { ampState } from './safety-state'

type Place = {
  readonly job: Job
  readonly sheet: AmpSheet
  readonly fittings: readonly Fitting[]
  readonly socket: Socket
  readonly quote: Quote | null
  readonly line: QuoteLine | null
}

async function placeOf(tx: Tx, step: Step, jobNumber: string, position: string): Promise<Place> {
  const job = await requireWork(tx, step, jobNumber)
  const { sheet, fittings } = await ampState(job, tx)
  const socket = sheet.sockets.find((each) => each.position === position)
  if (!socket) return refuse({ code: 'socket-not-on-sheet', position })
  const quote = await findAcceptedQuote(job.id, tx)
  const line = quote?.lines.find((each) => each.tubeId !== null && each.socketPosition === position) ?? null
  return { job, sheet, fittings, socket, quote, line }
}

export function fitTube(step: Step, jobNumber: string, position: string): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const place = await placeOf(tx, step, jobNumber, position)
      const tube = await orderedTube(tx, place)
      const before = place.fittings.find(
        ({ socketId, removedAt }) => socketId === place.socket.id && removedAt === null,
      )
      await assertFree(tx, step, place, tube, before)
      await makeRoom(tx, place, before)
      await putIn(tx, step, place, tube)
      return null
    }),
  )
}

async function orderedTube(tx: Tx, { line, socket }: Place): Promise<Tube> {
  const tube = line?.tubeId ? await findTube(line.tubeId, tx) : null
  return tube ?? refuse({ code: 'no-tube-ordered', position: socket.position })
}

async function assertFree(
  tx: Tx,
  step: Step,
  { job, socket }: Place,
  tube: Tube,
  before: Fitting | undefined,
): Promise<void> {
  const ownHere = before?.jobId === job.id && before.tubeId !== null
  if (ownHere && before.tubeId !== tube.id)
    refuse({ code: 'socket-holds', position: socket.position, mark: before.mark })
  // A tube this job has fitted already is refused like any other that sits in a socket.
  await refuseTaken(tx, step, { tube, socketPosition: socket.position, jobId: job.id, here: [] })
}

/** What comes out gets its place in the socket's past, and leaves the stock book if it was ever in it. */
async function makeRoom(tx: Tx, { job, socket }: Place, before: Fitting | undefined): Promise<void> {
  const tube = { type: socket.typeFitted, mark: socket.markFitted }
  if (before?.tubeId) await moveFittedTube(tx, before.tubeId, 'fitted', 'sold')
  else if (!before && fittedTubeText(tube) !== '')
    await createReceivedFitting(tx, { ...tube, socketId: socket.id, jobId: job.id, since: job.receivedAt })
}

async function putIn(tx: Tx, step: Step, { job, sheet, socket, line }: Place, tube: Tube): Promise<void> {
  const { actor, now } = step
  const after = { type: tube.designation, mark: tube.mark }
  const fitting = {
    tubeId: tube.id,
    socketId: socket.id,
    jobId: job.id,
    text: fittedTubeText(after),
    fittedAt: now,
    fittedBy: actor.name,
  }
  if (!(await markFitted(tx, fitting))) refuse({ code: 'not-found', what: `${tube.mark} in stock` })
  await saveFittedTube(tx, socket.id, { typeFitted: after.type, markFitted: after.mark })
  if (line) await saveLineDone(tx, line.id, { at: now, by: actor.name })
  const change = { label: socket.position, from: sheetText(socket), to: fittedTubeText(after) }
  await noteFitting(tx, step, { job, sheet, change, did: `${tube.mark} fitted in ${socket.position}` })
  await noteTube(
    tx,
    step,
    tube.id,
    `Fitted in ${socket.position} of ${sheet.amp.make} ${sheet.amp.model}, job ${job.number}`,
  )
}

const sheetText = ({ typeFitted, markFitted }: Socket): string => fittedTubeText({ type: typeFitted, mark: markFitted })

export function takeTubeOut(step: Step, jobNumber: string, position: string): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const place = await placeOf(tx, step, jobNumber, position)
      const { fittings, socket, job } = place
      const fitted = fittedBy(fittings, job.id).find(({ socketId }) => socketId === socket.id)
      if (!fitted?.tubeId) return refuse({ code: 'not-fitted-here', position })
      const before = fittings.find(
        ({ id, socketId, removedAt }) =>
          id !== fitted.id && socketId === socket.id && removedAt?.getTime() === fitted.fittedAt.getTime(),
      )
      await takeOut(tx, step, place, { id: fitted.id, tubeId: fitted.tubeId })
      if (before) await putBack(tx, before.id)
      if (before?.tubeId) await moveFittedTube(tx, before.tubeId, 'sold', 'fitted')
      const sits = { type: before?.type ?? '', mark: before?.mark ?? '' }
      await saveFittedTube(tx, socket.id, { typeFitted: sits.type, markFitted: sits.mark })
      const change = { label: position, from: sheetText(socket), to: fittedTubeText(sits) }
      await noteFitting(tx, step, { ...place, change, did: `${fitted.mark} taken out of ${position} again` })
      return null
    }),
  )
}

/** Back into stock, and reserved again for this job as long as its quote names it. */
async function takeOut(
  tx: Tx,
  step: Step,
  { job, quote, socket }: Place,
  fitted: { id: string; tubeId: string },
): Promise<void> {
  const { tubeId } = fitted
  if (!(await markTakenOut(tx, fitted.id, step.now))) refuse({ code: 'not-fitted-here', position: socket.position })
  if (!(await moveFittedTube(tx, tubeId, 'fitted', 'in-stock')))
    refuse({ code: 'not-fitted-here', position: socket.position })
  const line = quote?.lines.find((each) => each.tubeId === tubeId)
  if (quote && line) {
    await setHold(tx, [tubeId], { hold: 'reserved', jobId: job.id, quoteId: quote.id, until: null, now: step.now })
    await saveLineDone(tx, line.id, null)
  }
  await noteTube(tx, step, tubeId, `Taken out of ${socket.position} again, job ${job.number}`)
}

type FittingNote = { readonly job: Job; readonly sheet: AmpSheet; readonly change: Change; readonly did: string }

/** Under the version it made, so that a colleague with the sheet open is told. */
async function noteFitting(tx: Tx, { actor, now }: Step, { job, sheet, change, did }: FittingNote): Promise<void> {
  const amp = await findAmp(sheet.amp.id, tx)
  await writeHistory(tx, {
    at: now,
    person: actor.name,
    subject: 'amp',
    subjectId: sheet.amp.id,
    jobId: job.id,
    did,
    changes: [change],
    version: amp?.version,
  })
}

async function noteTube(tx: Tx, { actor, now }: Step, tubeId: string, did: string): Promise<void> {
  await writeHistory(tx, { at: now, person: actor.name, subject: 'tube', subjectId: tubeId, did })
}
