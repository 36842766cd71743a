/** A technician signs one safety line. Signing again replaces it; the history keeps what stood there. */
import { changesBetween, type Shown, shown } from '@/lib/domain/history/changes'
import type { Job } from '@/lib/domain/job/job'
import { isClosed } from '@/lib/domain/job/job-state'
import type { Result } from '@/lib/domain/result'
import { type Check, type CheckId, outcomeWord } from '@/lib/domain/safety/check'
import type { SafetyLine, SettledLine } from '@/lib/domain/safety/safety-line'
import { type LineEntry, settleLine, type UsedInstrument } from '@/lib/domain/safety/settle-line'
import type { Shop } from '@/lib/domain/shop/shop'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { findInstrument } from '@/lib/store/instrument'
import { saveSafetyLine } from '@/lib/store/safety'
import { moveJobInside, requireJob } from '@/lib/workflow/counter/keep-job'
import { allowed, refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { safetyState } from './safety-state'

export type SignedEntry = Omit<LineEntry, 'instrument'> & { readonly instrumentId: string }

export type SignLine = {
  readonly jobNumber: string
  readonly check: CheckId
  /** Of the line the form was opened on; 0: nobody had signed it. */
  readonly version: number
  readonly entry: SignedEntry
}

export function signSafetyLine(step: Step, shop: Shop, input: SignLine): Promise<Result<null, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const may = allowed(step, 'sign-off')
      if (!may.ok) refuse(may.fault)
      const job = await requireJob(tx, input.jobNumber)
      if (isClosed(job.state)) refuse({ code: 'job-closed', state: job.state })
      const { lines, context } = await safetyState(job, shop, tx)
      const asked = lines.find(({ check }) => check.id === input.check)
      if (!asked) return refuse({ code: 'not-found', what: 'This safety line' })
      const { instrumentId, ...entry } = input.entry
      const instrument = await usedInstrument(tx, instrumentId)
      const settled = settleLine(asked.check, { ...entry, instrument }, context)
      if (!settled.ok) return refuse(settled.fault)
      await sign(tx, step, job, { check: asked.check, before: asked.line, version: input.version, line: settled.value })
      return null
    }),
  )
}

async function usedInstrument(tx: Tx, id: string): Promise<UsedInstrument | null> {
  if (id === '') return null
  const found = await findInstrument(id, tx)
  return found
    ? { name: found.name, calibratedOn: found.calibratedOn }
    : refuse({ code: 'not-found', what: 'This instrument' })
}

type Signing = {
  readonly check: Check
  readonly before: SafetyLine | null
  readonly version: number
  readonly line: SettledLine
}

async function sign(tx: Tx, step: Step, job: Job, { check, before, version, line }: Signing): Promise<void> {
  const { actor, now } = step
  const key = { jobId: job.id, check: check.id, version }
  const id = await saveSafetyLine(tx, key, { ...line, signedBy: actor.name, signedAt: now })
  if (id === null) refuse(signedMeanwhile(before, line))
  await writeHistory(tx, {
    at: now,
    person: actor.name,
    subject: 'safety',
    subjectId: id ?? '',
    jobId: job.id,
    did: `${check.name} ${before ? 'signed again' : 'signed'}: ${outcomeWord(line.outcome)}`,
    changes: changesBetween(before ? lineShown(before) : shown([]), lineShown(line)),
    version: version + 1,
  })
  // What fails cannot stay released.
  if (line.outcome === 'fail' && job.state === 'ready')
    await moveJobInside(tx, step, job, 'testing', `Back to testing: ${check.name} failed`)
}

function signedMeanwhile(there: SafetyLine | null, line: SettledLine): StepFault {
  const changes = there ? changesBetween(lineShown(line), lineShown(there)) : []
  return { code: 'stale', savedBy: there?.signedBy ?? 'Somebody', savedAt: there?.signedAt ?? null, changes }
}

function lineShown({ outcome, valueText, limitText, instrument, reason }: SettledLine): Shown {
  return shown([
    ['Outcome', outcomeWord(outcome)],
    ['Value', valueText],
    ['Limit', limitText],
    ['Instrument', instrument],
    ['Reason', reason],
  ])
}
