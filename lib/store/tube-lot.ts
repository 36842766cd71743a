import type { Prisma } from '@/generated/sqlite/client'
import { fold } from '@/lib/domain/fold'
import { money } from '@/lib/domain/money'
import { conditionWord, type TubeCondition } from '@/lib/domain/stock/tube'
import type { TubeLot, TubeLotDetails } from '@/lib/domain/stock/tube-lot'
import { db, type Tx } from './database'

const columns = {
  id: true,
  designation: true,
  condition: true,
  count: true,
  cost: true,
  price: true,
  location: true,
  note: true,
  version: true,
} satisfies Prisma.TubeLotSelect

type Row = Prisma.TubeLotGetPayload<{ select: typeof columns }>

const lotOf = (row: Row): TubeLot => ({
  ...row,
  condition: row.condition as TubeCondition,
  cost: row.cost === null ? null : money(row.cost),
  price: money(row.price),
})

const written = (lot: TubeLotDetails) => ({
  ...lot,
  search: fold(lot.designation, conditionWord(lot.condition), lot.location, lot.note),
})

/** By type. */
export async function listLots(search = '', tx: Tx = db()): Promise<TubeLot[]> {
  const AND = fold(search)
    .split(' ')
    .filter(Boolean)
    .map((word) => ({ search: { contains: word } }))
  const rows = await tx.tubeLot.findMany({
    where: { AND },
    orderBy: [{ designation: 'asc' }, { id: 'asc' }],
    select: columns,
  })
  return rows.map(lotOf)
}

export async function findLot(id: string, tx: Tx = db()): Promise<TubeLot | null> {
  const row = await tx.tubeLot.findUnique({ where: { id }, select: columns })
  return row && lotOf(row)
}

export async function createLot(tx: Tx, details: TubeLotDetails): Promise<string> {
  return (await tx.tubeLot.create({ data: written(details), select: { id: true } })).id
}

/** False when somebody saved since `version`. */
export async function saveLot(tx: Tx, id: string, version: number, details: TubeLotDetails): Promise<boolean> {
  const data = { ...written(details), version: version + 1 }
  const { count } = await tx.tubeLot.updateMany({ where: { id, version }, data })
  return count === 1
}
