/** Takes the tubes of an import out again, all but those that something was done with since. */
import { fail, ok, type Result } from '@/lib/domain/result'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { deleteTubes, findImport, importRest, listUndoable, moveImport } from '@/lib/store/import'
import type { Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { breathe, endProgress, importProgress, noteProgress } from './import-progress'

const TUBES_A_TURN = 2000

/** Gives how many went. Inside the import too, when it is cancelled midway. */
export async function takeBackAll(id: string): Promise<number> {
  let gone = 0
  let after = ''
  for (;;) {
    const ids = await inTransaction(async (tx) => {
      const some = await listUndoable(tx, id, TUBES_A_TURN, after)
      gone += await deleteTubes(tx, some.undoable)
      return some.last
    })
    if (ids === null) return gone
    after = ids
    noteProgress(id, { phase: 'taking back', done: gone, total: gone + TUBES_A_TURN })
    await breathe()
  }
}

export type Undone = { readonly gone: number; readonly kept: number; readonly marks: readonly string[] }

/**
 * Tubes that were corrected, tested, moved, quoted, fitted or pictured since stay, and are named. Stopped in the
 * middle, it says “undoing” and can be asked for again.
 */
export async function undoImport(step: Step, id: string): Promise<Result<Undone, StepFault>> {
  const found = await findImport(id)
  if (!found) return fail({ code: 'not-found', what: 'This import' })
  if (found.state === 'undone') return fail({ code: 'import-undone-already', fileName: found.fileName })
  if (importProgress(id)) return fail({ code: 'import-under-way', fileName: found.fileName })
  noteProgress(id, { phase: 'taking back', done: 0, total: found.rows })
  try {
    return await takeOut(step, id)
  } finally {
    endProgress(id)
  }
}

const UNDOABLE = ['done', 'running', 'cancelled', 'failed', 'undoing'] as const

async function takeOut(step: Step, id: string): Promise<Result<Undone, StepFault>> {
  const isBegun = await inTransaction((tx) => moveImport(tx, id, UNDOABLE, { state: 'undoing' }))
  if (!isBegun) return fail({ code: 'not-found', what: 'An import that could be undone' })
  const gone = await takeBackAll(id)
  const rest = await inTransaction(async (tx) => {
    const left = await importRest(tx, id)
    await moveImport(tx, id, UNDOABLE, { state: 'undone', undoneAt: step.now, taken: left.count })
    const changes = [{ label: 'Taken back', from: '', to: String(gone) }]
    const note = { at: step.now, person: step.actor.name, subject: 'import', subjectId: id } as const
    await writeHistory(tx, { ...note, did: 'Import undone', changes })
    return left
  })
  return ok({ gone, kept: rest.count, marks: rest.marks })
}
