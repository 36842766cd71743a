/** Writes a round of readings down, corrects it, or strikes it out. */
import type { Socket } from '@/lib/domain/amp/socket'
import {
  isBlank,
  methodWord,
  type ReadingConditions,
  type ReadingSet,
  type SocketEntry,
} from '@/lib/domain/bench/reading-set'
import { type Change, changesBetween, type Shown, shown } from '@/lib/domain/history/changes'
import type { Job } from '@/lib/domain/job/job'
import { isClosed } from '@/lib/domain/job/job-state'
import type { Result } from '@/lib/domain/result'
import { wordsFor } from '@/lib/domain/words'
import { findAmpSheet } from '@/lib/store/amp'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { createReadingSet, findReadingSet, removeReadingSet, saveReadingSet } from '@/lib/store/reading-set'
import { findShop } from '@/lib/store/shop'
import { moveJobInside, requireJob } from '@/lib/workflow/counter/keep-job'
import { allowed, refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type ReadingsInput = {
  readonly jobNumber: string
  /** Null: a new round. */
  readonly setId: string | null
  readonly version: number
  readonly conditions: ReadingConditions
  readonly entries: readonly SocketEntry[]
}

const inVolts = (value: number | null, scale = 1, unit = 'V') =>
  value === null ? '' : `${Number((value / scale).toPrecision(6))} ${unit}`

function entryShown(position: string, entry: SocketEntry, plate: string): [string, string][] {
  return [
    [`${position} method`, methodWord(entry.method)],
    [`${position} ${plate}`, inVolts(entry.plateVolts)],
    [`${position} cathode`, inVolts(entry.cathodeVolts)],
    [`${position} screen`, inVolts(entry.screenVolts)],
    [`${position} grid`, inVolts(entry.gridVolts)],
    [`${position} sense drop`, inVolts(entry.senseDropVolts, 0.001, 'mV')],
    [`${position} half-primary drop`, inVolts(entry.halfDropVolts)],
    [`${position} screen-resistor drop`, inVolts(entry.screenDropVolts)],
  ]
}

type ShownSet = Omit<ReadingConditions, 'phase'> & { readonly entries: readonly SocketEntry[] }

/** What the readings are told by: the sockets, and the shop's word for the plate. */
type Naming = { readonly sockets: readonly Socket[]; readonly plate: string }

function setShown(set: ShownSet, { sockets, plate }: Naming): Shown {
  const positions = new Map(sockets.map(({ id, position }) => [id, position]))
  return shown([
    ['Wall', `${set.wallVolts} V`],
    ['Warm-up', `${set.warmupMinutes} min`],
    ['Signal', set.signalState],
    ['Resistor tolerance', `${set.resistorTolerancePercent} %`],
    ['Copper warming', `${set.copperWarmingCelsius} °C`],
    ['Note', set.note],
    ...set.entries.flatMap((entry) => entryShown(positions.get(entry.socketId) ?? '?', entry, plate)),
  ])
}

export function keepReadings(step: Step, input: ReadingsInput): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await openJobForBench(tx, step, input.jobNumber)
      const naming = await namingOf(tx, job)
      const ids = new Set(naming.sockets.map(({ id }) => id))
      const entries = input.entries.filter((entry) => ids.has(entry.socketId) && !isBlank(entry))
      if (entries.length === 0) return refuse({ code: 'nothing-read' })
      const written = { ...input, entries }
      return input.setId === null
        ? writeDown(tx, step, job, written, naming)
        : correct(tx, step, job, input.setId, written, naming)
    }),
  )
}

async function namingOf(tx: Tx, job: Job): Promise<Naming> {
  const [sheet, shop] = [await findAmpSheet(job.ampId, tx), await findShop(tx)]
  return { sockets: sheet?.sockets ?? [], plate: wordsFor(shop?.words ?? 'US').plate }
}

async function openJobForBench(tx: Tx, step: Step, number: string): Promise<Job> {
  const may = allowed(step, 'bench-work')
  if (!may.ok) refuse(may.fault)
  const job = await requireJob(tx, number)
  return isClosed(job.state) ? refuse({ code: 'job-closed', state: job.state }) : job
}

const phaseWord = (phase: ReadingConditions['phase']) => (phase === 'before' ? 'before the work' : 'after the work')

async function writeDown(tx: Tx, step: Step, job: Job, input: ReadingsInput, naming: Naming): Promise<string> {
  const { conditions, entries } = input
  const id = await createReadingSet(tx, {
    ...conditions,
    jobId: job.id,
    takenAt: step.now,
    takenBy: step.actor.name,
    entries,
  })
  const changes = changesBetween(shown([]), setShown({ ...conditions, entries }, naming))
  await note(tx, step, job, id, 1, `Readings ${phaseWord(conditions.phase)} taken`, changes)
  if (job.state === 'received')
    await moveJobInside(tx, step, job, 'on-bench', 'First readings: the amplifier is on the bench')
  return id
}

async function correct(
  tx: Tx,
  step: Step,
  job: Job,
  id: string,
  input: ReadingsInput,
  naming: Naming,
): Promise<string> {
  const before = await requireSet(tx, id, job)
  const { phase: _phase, ...conditions } = input.conditions
  if (!(await saveReadingSet(tx, id, input.version, conditions, input.entries)))
    refuse(await stale(tx, 'readings', id, input.version))
  const changes = changesBetween(setShown(before, naming), setShown({ ...conditions, entries: input.entries }, naming))
  await note(tx, step, job, id, input.version + 1, `Readings ${phaseWord(before.phase)} corrected`, changes)
  return id
}

async function requireSet(tx: Tx, id: string, job: Job): Promise<ReadingSet> {
  const set = await findReadingSet(id, tx)
  return set && set.jobId === job.id ? set : refuse({ code: 'not-found', what: 'This round of readings' })
}

function note(
  tx: Tx,
  { actor, now }: Step,
  job: Job,
  id: string,
  version: number,
  did: string,
  changes: readonly Change[],
) {
  return writeHistory(tx, {
    at: now,
    person: actor.name,
    subject: 'readings',
    subjectId: id,
    jobId: job.id,
    did,
    changes,
    version,
  })
}

/** The figures stay in the history, so that a round struck out by mistake can be written down again. */
export function strikeReadings(step: Step, jobNumber: string, id: string): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const job = await openJobForBench(tx, step, jobNumber)
      const before = await requireSet(tx, id, job)
      const naming = await namingOf(tx, job)
      await removeReadingSet(tx, id)
      const changes = changesBetween(setShown(before, naming), shown([]))
      await note(tx, step, job, id, before.version + 1, `Readings ${phaseWord(before.phase)} struck out`, changes)
      return null
    }),
  )
}
