/** Named sets of tubes that are kept together. A set is there as long as a tube is in it. */
import { fold } from '@/lib/domain/fold'
import { db, type Tx } from './database'

/** Of the set of that name, made when there is none. Null for an empty name. */
export async function setIdOf(tx: Tx, name: string): Promise<string | null> {
  const key = fold(name)
  if (key === '') return null
  const set = await tx.tubeSet.upsert({ where: { key }, create: { key, name: name.trim() }, update: {} })
  return set.id
}

/** Names of the sets that have a tube in stock. */
export async function listSetNames(): Promise<string[]> {
  const where = { tubes: { some: { whereabouts: 'in-stock' } } }
  const rows = await db().tubeSet.findMany({ where, orderBy: { name: 'asc' }, select: { name: true } })
  return rows.map(({ name }) => name)
}

export type SetMember = { readonly id: string; readonly mark: string; readonly whereabouts: string }

/** By mark. */
export async function listSetMembers(name: string): Promise<SetMember[]> {
  if (name === '') return []
  return db().tube.findMany({
    where: { set: { key: fold(name) } },
    orderBy: { mark: 'asc' },
    select: { id: true, mark: true, whereabouts: true },
  })
}
