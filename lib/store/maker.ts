import { fold } from '@/lib/domain/fold'
import type { Maker, MakerDetails } from '@/lib/domain/stock/maker'
import { db, type Tx } from './database'

const columns = {
  id: true,
  name: true,
  sourceCodes: true,
  janLetters: true,
  factoryMarks: true,
  note: true,
  version: true,
} as const

type Marks = 'sourceCodes' | 'janLetters' | 'factoryMarks'
type Row = Omit<Maker, Marks> & Readonly<Record<Marks, string>>

const listed = (text: string): readonly string[] => text.split(' ').filter(Boolean)

const maker = ({ sourceCodes, janLetters, factoryMarks, ...row }: Row): Maker => ({
  ...row,
  sourceCodes: listed(sourceCodes),
  janLetters: listed(janLetters),
  factoryMarks: listed(factoryMarks),
})

const written = ({ sourceCodes, janLetters, factoryMarks, ...rest }: MakerDetails) => ({
  ...rest,
  key: fold(rest.name),
  sourceCodes: sourceCodes.join(' '),
  janLetters: janLetters.join(' '),
  factoryMarks: factoryMarks.join(' '),
})

export async function listMakers(): Promise<Maker[]> {
  const rows = await db().maker.findMany({ orderBy: { name: 'asc' }, select: columns })
  return rows.map(maker)
}

export async function findMaker(id: string, tx: Tx = db()): Promise<Maker | null> {
  const row = await tx.maker.findUnique({ where: { id }, select: columns })
  return row && maker(row)
}

/** However it is written. */
export async function findMakerByName(tx: Tx, name: string): Promise<Maker | null> {
  const row = await tx.maker.findUnique({ where: { key: fold(name) }, select: columns })
  return row && maker(row)
}

export async function createMaker(tx: Tx, details: MakerDetails): Promise<string> {
  const row = await tx.maker.create({ data: written(details), select: { id: true } })
  return row.id
}

/** False when somebody saved since `version`. */
export async function saveMaker(tx: Tx, id: string, version: number, details: MakerDetails): Promise<boolean> {
  const data = { ...written(details), version: version + 1 }
  const { count } = await tx.maker.updateMany({ where: { id, version }, data })
  return count === 1
}
