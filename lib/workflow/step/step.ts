/** What every step is given: who acts, and the instant it happens at. */
import { type Actor, type Duty, mayDo } from '@/lib/domain/person/role'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { Tx } from '@/lib/store/database'
import { type HistorySubject, listSavesAfter } from '@/lib/store/history'
import type { StepFault } from './step-fault'

export type Step = { readonly actor: Actor; readonly now: Date }

export function allowed({ actor }: Step, duty: Duty): Result<null, StepFault> {
  return mayDo(actor, duty) ? ok(null) : fail({ code: 'not-your-duty', duty })
}

/** The refusal when a sheet was saved by somebody else since the form was opened. */
export async function stale(tx: Tx, subject: HistorySubject, subjectId: string, version: number): Promise<StepFault> {
  const saves = await listSavesAfter(tx, subject, subjectId, version)
  const last = saves[saves.length - 1]
  return {
    code: 'stale',
    savedBy: [...new Set(saves.map((save) => save.person))].join(', ') || 'Somebody',
    savedAt: last?.at ?? null,
    changes: saves.flatMap((save) => save.changes),
  }
}

/** Leaves the transaction without saving anything; caught by `refusing`. */
export class Refusal extends Error {
  constructor(readonly fault: StepFault) {
    super(fault.code)
  }
}

/** Runs a transaction whose body may refuse midway: the refusal rolls back and comes out as a value. */
export async function refusing<T>(work: () => Promise<T>): Promise<Result<T, StepFault>> {
  try {
    return ok(await work())
  } catch (error) {
    if (error instanceof Refusal) return fail(error.fault)
    throw error
  }
}

export function refuse(fault: StepFault): never {
  throw new Refusal(fault)
}
