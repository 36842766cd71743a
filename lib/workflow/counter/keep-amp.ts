/** Writes an amplifier down, or corrects what is known of it. Its sheet is kept by keep-amp-sheet. */
import type { AmpDetails } from '@/lib/domain/amp/amp'
import { ampShown } from '@/lib/domain/amp/amp-shown'
import { changesBetween, shown } from '@/lib/domain/history/changes'
import type { Result } from '@/lib/domain/result'
import { createAmp, findAmp, saveAmp } from '@/lib/store/amp'
import { findCustomer } from '@/lib/store/customer'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

/** Inside a larger step, such as taking in a job with an amplifier not seen before. */
export async function addAmp(tx: Tx, { actor, now }: Step, customerId: string, details: AmpDetails): Promise<string> {
  if (!(await findCustomer(customerId, tx))) return refuse({ code: 'not-found', what: 'The owner' })
  const id = await createAmp(tx, customerId, details)
  const changes = changesBetween(shown([]), ampShown(details))
  const note = { at: now, person: actor.name, subject: 'amp', subjectId: id, version: 1 } as const
  await writeHistory(tx, { ...note, did: 'Amplifier written down', changes })
  return id
}

export type AmpToKeep =
  | { readonly id: null; readonly customerId: string; readonly details: AmpDetails }
  | { readonly id: string; readonly version: number; readonly details: AmpDetails }

export function keepAmp(step: Step, input: AmpToKeep): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction((tx) =>
      input.id === null
        ? addAmp(tx, step, input.customerId, input.details)
        : correct(tx, step, input.id, input.version, input.details),
    ),
  )
}

async function correct(
  tx: Tx,
  { actor, now }: Step,
  id: string,
  version: number,
  details: AmpDetails,
): Promise<string> {
  const before = await findAmp(id, tx)
  if (!before) return refuse({ code: 'not-found', what: 'This amplifier' })
  if (!(await saveAmp(tx, id, version, details))) return refuse(await stale(tx, 'amp', id, version))
  const changes = changesBetween(ampShown(before), ampShown(details))
  const note = { at: now, person: actor.name, subject: 'amp', subjectId: id, version: version + 1 } as const
  await writeHistory(tx, { ...note, did: 'Amplifier corrected', changes })
  return id
}
