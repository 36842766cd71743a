import type { Actor, Role } from '@/lib/domain/person/role'
import { db, type Tx } from './database'

export type Person = Actor & { readonly signInName: string; readonly active: boolean }

const columns = { id: true, name: true, signInName: true, role: true, keepsShop: true, active: true } as const

type Row = { role: string } & Omit<Person, 'role'>

const person = (row: Row): Person => ({ ...row, role: row.role as Role })

export async function listPeople(): Promise<Person[]> {
  const rows = await db().person.findMany({ orderBy: { name: 'asc' }, select: columns })
  return rows.map(person)
}

export async function findPerson(id: string, tx: Tx = db()): Promise<Person | null> {
  const row = await tx.person.findUnique({ where: { id }, select: columns })
  return row && person(row)
}

/** People who can sign in and keep the shop. */
export async function countKeepers(tx: Tx): Promise<number> {
  return tx.person.count({ where: { active: true, keepsShop: true } })
}

export async function countPeople(tx: Tx = db()): Promise<number> {
  return tx.person.count()
}

/** With the hash, for the sign-in step alone. */
export async function findSignIn(signInName: string): Promise<{ person: Person; passwordHash: string } | null> {
  const row = await db().person.findUnique({ where: { signInName }, select: { ...columns, passwordHash: true } })
  if (!row) return null
  const { passwordHash, ...rest } = row
  return { person: person(rest), passwordHash }
}

export type NewPerson = {
  readonly name: string
  readonly signInName: string
  readonly role: Role
  readonly keepsShop: boolean
  readonly passwordHash: string
}

/** Null when the sign-in name is taken. */
export async function createPerson(tx: Tx, person: NewPerson): Promise<string | null> {
  const taken = await tx.person.findUnique({ where: { signInName: person.signInName }, select: { id: true } })
  if (taken) return null
  const row = await tx.person.create({ data: person, select: { id: true } })
  return row.id
}

export async function updatePerson(
  tx: Tx,
  id: string,
  data: { name?: string; role?: Role; keepsShop?: boolean; active?: boolean; passwordHash?: string },
): Promise<void> {
  await tx.person.update({ where: { id }, data })
}

export async function createSession(
  tx: Tx,
  session: { tokenHash: string; personId: string; expiresAt: Date },
): Promise<void> {
  await tx.signInSession.create({ data: session })
}

export async function findSession(tokenHash: string, now: Date): Promise<Person | null> {
  const where = { tokenHash, expiresAt: { gt: now }, person: { active: true } }
  const row = await db().signInSession.findFirst({ where, select: { person: { select: columns } } })
  return row && person(row.person)
}

export async function endSession(tx: Tx, tokenHash: string): Promise<void> {
  await tx.signInSession.deleteMany({ where: { tokenHash } })
}

export async function endSessionsOf(tx: Tx, personId: string): Promise<void> {
  await tx.signInSession.deleteMany({ where: { personId } })
}

export async function countFailures(tx: Tx, signInName: string, since: Date) {
  const at = { gt: since }
  const failuresByName = await tx.signInFailure.count({ where: { key: signInName, at } })
  const failuresInShop = await tx.signInFailure.count({ where: { at } })
  return { failuresByName, failuresInShop }
}

export async function noteFailure(tx: Tx, key: string, at: Date): Promise<void> {
  await tx.signInFailure.create({ data: { key, at } })
}

export async function clearFailures(tx: Tx, key: string, before: Date): Promise<void> {
  await tx.signInFailure.deleteMany({ where: { OR: [{ key }, { at: { lt: before } }] } })
  await tx.signInSession.deleteMany({ where: { expiresAt: { lt: before } } })
}
