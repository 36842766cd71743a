/**
 * One's own pass phrase. The present one is asked again, and counted by the
 * same limit as a sign-in, so that a screen left open gives nobody the keys.
 */
import { limitWindowStart, signInBlocked } from '@/lib/domain/person/sign-in-limit'
import { fail, ok, type Result } from '@/lib/domain/result'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import {
  clearFailures,
  countFailures,
  endSessionsOf,
  findPerson,
  findSignIn,
  noteFailure,
  updatePerson,
} from '@/lib/store/person'
import type { Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { hashPassPhrase, passPhraseFits } from './pass-phrase'
import { type SignedIn, startSession } from './sign-in'

/** The next pass phrase has passed checkPassPhrase. */
export type PassPhraseInput = { readonly present: string; readonly next: string }

/** Signed out everywhere, and in again here. */
export async function changePassPhrase(
  step: Step,
  { present, next }: PassPhraseInput,
): Promise<Result<SignedIn, StepFault>> {
  const { actor, now } = step
  const person = await findPerson(actor.id)
  if (!person) return fail({ code: 'not-found', what: 'Your entry in the list of people' })
  if (await noteTry(person.signInName, now)) return fail({ code: 'too-many-tries' })
  const known = await findSignIn(person.signInName)
  if (!known || !(await passPhraseFits(present, known.passwordHash))) return fail({ code: 'pass-phrase-wrong' })
  const passwordHash = await hashPassPhrase(next)
  return inTransaction(async (tx) => {
    await clearFailures(tx, person.signInName, limitWindowStart(now))
    await updatePerson(tx, actor.id, { passwordHash })
    await endSessionsOf(tx, actor.id)
    const did = 'Changed the own pass phrase'
    await writeHistory(tx, { at: now, person: actor.name, subject: 'person', subjectId: actor.id, did })
    return ok(await startSession(tx, actor.id, now))
  })
}

/** True when there were too many already; else this try is noted until it turns out well. */
function noteTry(signInName: string, now: Date): Promise<boolean> {
  return inTransaction(async (tx) => {
    if (signInBlocked(await countFailures(tx, signInName, limitWindowStart(now)))) return true
    await noteFailure(tx, signInName, now)
    return false
  })
}
