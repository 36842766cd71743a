/**
 * The people of the shop. Whoever leaves, or gets a new pass phrase, is signed
 * out everywhere. Somebody who keeps the shop always stays.
 */
import { changesBetween, shown } from '@/lib/domain/history/changes'
import { type PersonDetails, personShown } from '@/lib/domain/person/person-shown'
import type { Result } from '@/lib/domain/result'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { countKeepers, createPerson, endSessionsOf, findPerson, updatePerson } from '@/lib/store/person'
import { allowed, refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { hashPassPhrase } from './pass-phrase'
import { foldSignInName } from './sign-in'

/** The pass phrase has passed checkPassPhrase. */
export type NewPersonInput = Omit<PersonDetails, 'active'> & {
  readonly signInName: string
  readonly passPhrase: string
}

export async function addPerson(step: Step, input: NewPersonInput): Promise<Result<string, StepFault>> {
  const may = allowed(step, 'keep-shop')
  if (!may.ok) return may
  const { name, role, keepsShop } = input
  const signInName = foldSignInName(input.signInName)
  const passwordHash = await hashPassPhrase(input.passPhrase)
  return refusing(() =>
    inTransaction(async (tx) => {
      const id = await createPerson(tx, { name, role, keepsShop, signInName, passwordHash })
      if (!id) return refuse({ code: 'sign-in-name-taken', signInName })
      const changes = changesBetween(shown([]), personShown({ name, role, keepsShop, active: true }))
      await note(tx, step, id, 'Added to the shop', changes)
      return id
    }),
  )
}

export type PersonInput = { readonly id: string; readonly details: PersonDetails }

export async function keepPerson(step: Step, { id, details: typed }: PersonInput): Promise<Result<null, StepFault>> {
  const may = allowed(step, 'keep-shop')
  if (!may.ok) return may
  return refusing(() =>
    inTransaction(async (tx) => {
      const before = await findPerson(id, tx)
      if (!before) return refuse({ code: 'not-found', what: 'This person' })
      const { name, role, keepsShop, active } = typed
      const details = { name, role, keepsShop, active }
      await updatePerson(tx, id, details)
      // Counted after the change: the transaction goes back when nobody is left.
      if ((await countKeepers(tx)) === 0) return refuse({ code: 'last-keeper', name: before.name })
      if (!details.active) await endSessionsOf(tx, id)
      const left = before.active && !details.active
      await note(
        tx,
        step,
        id,
        left ? 'Left the shop' : 'Changed',
        changesBetween(personShown(before), personShown(details)),
      )
      return null
    }),
  )
}

/** By whoever keeps the shop, for somebody who has forgotten theirs. */
export async function givePassPhrase(
  step: Step,
  input: { readonly id: string; readonly passPhrase: string },
): Promise<Result<null, StepFault>> {
  const may = allowed(step, 'keep-shop')
  if (!may.ok) return may
  const passwordHash = await hashPassPhrase(input.passPhrase)
  return refusing(() =>
    inTransaction(async (tx) => {
      if (!(await findPerson(input.id, tx))) return refuse({ code: 'not-found', what: 'This person' })
      await updatePerson(tx, input.id, { passwordHash })
      await endSessionsOf(tx, input.id)
      await note(tx, step, input.id, 'Given a new pass phrase')
      return null
    }),
  )
}

function note(tx: Tx, { actor, now }: Step, id: string, did: string, changes: ReturnType<typeof changesBetween> = []) {
  return writeHistory(tx, { at: now, person: actor.name, subject: 'person', subjectId: id, did, changes })
}
