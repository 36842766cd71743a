import type { Prisma } from '@/generated/sqlite/client'
import { foldedDesignation } from '@/lib/domain/tube/folded-designation'
import { ownTubeTypeOf } from '@/lib/domain/tube/own/own-tube-type'
import type { OwnTypeEntry } from '@/lib/domain/tube/own/own-type-entry'
import type { OwnTubeType } from '@/lib/domain/tube/tube-catalogue'
import { db, type Tx } from './database'

export type KeptOwnType = {
  readonly id: string
  readonly entry: OwnTypeEntry
  /** False once it is withdrawn. */
  readonly active: boolean
  readonly version: number
}

const columns = { id: true, facts: true, active: true, version: true } as const
type Row = { id: string; facts: unknown; active: boolean; version: number }

// The column is Json; only `written` writes it, with this very shape.
const kept = ({ facts, ...row }: Row): KeptOwnType => ({ ...row, entry: facts as OwnTypeEntry })

const written = (entry: OwnTypeEntry) => ({
  key: foldedDesignation(entry.designation),
  designation: entry.designation,
  facts: entry as unknown as Prisma.InputJsonObject,
})

/** Withdrawn ones last; by designation. */
export async function listOwnTypes(tx: Tx = db()): Promise<KeptOwnType[]> {
  const rows = await tx.ownType.findMany({ orderBy: [{ active: 'desc' }, { designation: 'asc' }], select: columns })
  return rows.map(kept)
}

/** Those that are looked up, as the catalogue takes them. */
export async function listOwnTubeTypes(tx: Tx = db()): Promise<OwnTubeType[]> {
  const all = await listOwnTypes(tx)
  return all.filter(({ active }) => active).map(({ id, entry }) => ownTubeTypeOf(id, entry))
}

export async function findOwnType(id: string, tx: Tx = db()): Promise<KeptOwnType | null> {
  const row = await tx.ownType.findUnique({ where: { id }, select: columns })
  return row && kept(row)
}

/** The type of this designation, withdrawn ones too. */
export async function findOwnTypeByName(tx: Tx, designation: string): Promise<KeptOwnType | null> {
  const row = await tx.ownType.findUnique({ where: { key: foldedDesignation(designation) }, select: columns })
  return row && kept(row)
}

export async function createOwnType(tx: Tx, entry: OwnTypeEntry): Promise<string> {
  const row = await tx.ownType.create({ data: written(entry), select: { id: true } })
  return row.id
}

/** False when somebody saved since `version`. */
export async function saveOwnType(tx: Tx, { id, entry, active, version }: KeptOwnType): Promise<boolean> {
  const data = { ...written(entry), active, version: version + 1 }
  const { count } = await tx.ownType.updateMany({ where: { id, version }, data })
  return count === 1
}
