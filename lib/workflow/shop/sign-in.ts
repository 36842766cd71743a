/** Signing in and out: a random token in a cookie, its hash in the database. */
import { createHash, randomBytes } from 'node:crypto'
import { limitWindowStart, signInBlocked } from '@/lib/domain/person/sign-in-limit'
import { fail, ok, type Result } from '@/lib/domain/result'
import { inTransaction } from '@/lib/store/database'
import {
  clearFailures,
  countFailures,
  createSession,
  endSession,
  findSession,
  findSignIn,
  noteFailure,
  type Person,
} from '@/lib/store/person'
import { hashPassPhrase, passPhraseFits } from './pass-phrase'

export const SESSION_DAYS = 14

export type SignInFault = 'wrong' | 'too-many'

export type SignedIn = { readonly token: string; readonly expiresAt: Date }

export const foldSignInName = (typed: string): string => typed.trim().toLowerCase()

const hashOf = (token: string) => createHash('sha256').update(token).digest('hex')

// A name that is not there must cost as much as a wrong phrase, or names could be told by time.
let nobody: Promise<string> | undefined
const hashOfNobody = () => (nobody ??= hashPassPhrase(randomBytes(16).toString('hex')))

export async function signIn(
  input: { readonly signInName: string; readonly passPhrase: string },
  now: Date,
): Promise<Result<SignedIn, SignInFault>> {
  const name = foldSignInName(input.signInName)
  const since = limitWindowStart(now)
  if (await blocked(name, since, now)) return fail('too-many')
  const known = await findSignIn(name)
  const fits = await passPhraseFits(input.passPhrase, known?.passwordHash ?? (await hashOfNobody()))
  if (!known || !fits || !known.person.active) return fail('wrong')
  const signedIn = await inTransaction(async (tx) => {
    await clearFailures(tx, name, since)
    return startSession(tx, known.person.id, now)
  })
  return ok(signedIn)
}

/**
 * Every try is noted as a failure before the phrase is looked at and cleared on
 * success: of many tries at once, no more than the limit get through.
 */
function blocked(name: string, since: Date, now: Date): Promise<boolean> {
  return inTransaction(async (tx) => {
    if (signInBlocked(await countFailures(tx, name, since))) return true
    await noteFailure(tx, name, now)
    return false
  })
}

export async function startSession(
  tx: Parameters<typeof createSession>[0],
  personId: string,
  now: Date,
): Promise<SignedIn> {
  const token = randomBytes(32).toString('base64url')
  const expiresAt = new Date(now.getTime() + SESSION_DAYS * 86_400_000)
  await createSession(tx, { tokenHash: hashOf(token), personId, expiresAt })
  return { token, expiresAt }
}

export const personOfToken = (token: string, now: Date): Promise<Person | null> => findSession(hashOf(token), now)

export const signOut = (token: string): Promise<void> => inTransaction((tx) => endSession(tx, hashOf(token)))
