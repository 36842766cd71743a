import type { Prisma } from '@/generated/sqlite/client'
import { fold } from '@/lib/domain/fold'
import { money } from '@/lib/domain/money'
import type { Part, PartDetails, PartKind } from '@/lib/domain/stock/part'
import { db, type Tx } from './database'

const columns = {
  id: true,
  name: true,
  kind: true,
  value: true,
  count: true,
  cost: true,
  price: true,
  reorderLevel: true,
  location: true,
  version: true,
} satisfies Prisma.PartSelect

type Row = Prisma.PartGetPayload<{ select: typeof columns }>

const partOf = (row: Row): Part => ({
  ...row,
  kind: row.kind as PartKind,
  cost: row.cost === null ? null : money(row.cost),
  price: money(row.price),
})

const written = (part: PartDetails) => ({ ...part, search: fold(part.name, part.kind, part.value, part.location) })

/** By kind, then name. */
export async function listParts(search = '', tx: Tx = db()): Promise<Part[]> {
  const AND = fold(search)
    .split(' ')
    .filter(Boolean)
    .map((word) => ({ search: { contains: word } }))
  const orderBy = [{ kind: 'asc' }, { name: 'asc' }, { id: 'asc' }] satisfies Prisma.PartOrderByWithRelationInput[]
  return (await tx.part.findMany({ where: { AND }, orderBy, select: columns })).map(partOf)
}

export async function findPart(id: string, tx: Tx = db()): Promise<Part | null> {
  const row = await tx.part.findUnique({ where: { id }, select: columns })
  return row && partOf(row)
}

export async function createPart(tx: Tx, details: PartDetails): Promise<string> {
  return (await tx.part.create({ data: written(details), select: { id: true } })).id
}

/** False when somebody saved since `version`. */
export async function savePart(tx: Tx, id: string, version: number, details: PartDetails): Promise<boolean> {
  const data = { ...written(details), version: version + 1 }
  const { count } = await tx.part.updateMany({ where: { id, version }, data })
  return count === 1
}
