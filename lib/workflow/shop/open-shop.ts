/** First run: the shop and its first person, once. There is no other way to sign up. */

import type { Role } from '@/lib/domain/person/role'
import { fail, ok, type Result } from '@/lib/domain/result'
import type { ShopSettings } from '@/lib/domain/shop/shop'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { countPeople, createPerson } from '@/lib/store/person'
import { createShop, findShop } from '@/lib/store/shop'
import { hashPassPhrase } from './pass-phrase'
import { foldSignInName, type SignedIn, startSession } from './sign-in'
import { addUsualOperations } from './usual-operations'

export type FirstPerson = {
  readonly name: string
  readonly signInName: string
  readonly passPhrase: string
  readonly role: Role
}

export async function openShop(
  settings: ShopSettings,
  first: FirstPerson,
  now: Date,
  demo = false,
): Promise<Result<SignedIn, 'already-open'>> {
  const passwordHash = await hashPassPhrase(first.passPhrase)
  return inTransaction(async (tx) => {
    if ((await findShop(tx)) || (await countPeople(tx)) > 0) return fail('already-open')
    await createShop(tx, settings, demo)
    const { name, role } = first
    const personId = await createPerson(tx, {
      name,
      role,
      signInName: foldSignInName(first.signInName),
      keepsShop: true,
      passwordHash,
    })
    if (!personId) throw new Error('The first person could not be written to an empty shop')
    await addUsualOperations(tx, settings.words)
    await writeHistory(tx, { at: now, person: name, subject: 'shop', subjectId: '1', did: 'Shop opened', version: 1 })
    return ok(await startSession(tx, personId, now))
  })
}
