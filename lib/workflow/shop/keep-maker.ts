/** Writes a maker down with the marks that lead to it, or corrects it. */
import { changesBetween, shown } from '@/lib/domain/history/changes'
import type { Result } from '@/lib/domain/result'
import { type MakerDetails, makerShown } from '@/lib/domain/stock/maker'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { createMaker, findMaker, findMakerByName, saveMaker } from '@/lib/store/maker'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type MakerInput = {
  /** Null for a new one. */
  readonly id: string | null
  readonly version: number
  readonly details: MakerDetails
}

export function keepMaker(step: Step, { id, version, details }: MakerInput): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const same = await findMakerByName(tx, details.name)
      if (same && same.id !== id) return refuse({ code: 'maker-there', name: same.name })
      return id === null ? add(tx, step, details) : correct(tx, step, id, version, details)
    }),
  )
}

async function add(tx: Tx, { actor, now }: Step, details: MakerDetails): Promise<string> {
  const id = await createMaker(tx, details)
  const changes = changesBetween(shown([]), makerShown(details))
  const note = { at: now, person: actor.name, subject: 'maker', subjectId: id, did: 'Maker written down' } as const
  await writeHistory(tx, { ...note, changes, version: 1 })
  return id
}

async function correct(
  tx: Tx,
  { actor, now }: Step,
  id: string,
  version: number,
  details: MakerDetails,
): Promise<string> {
  const before = await findMaker(id, tx)
  if (!before) return refuse({ code: 'not-found', what: 'This maker' })
  if (!(await saveMaker(tx, id, version, details))) return refuse(await stale(tx, 'maker', id, version))
  const changes = changesBetween(makerShown(before), makerShown(details))
  const note = { at: now, person: actor.name, subject: 'maker', subjectId: id, did: 'Maker corrected' } as const
  await writeHistory(tx, { ...note, changes, version: version + 1 })
  return id
}
