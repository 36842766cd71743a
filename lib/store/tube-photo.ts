/** Pictures of tubes: the row in the database, the picture itself beside it in the data folder. */
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { PhotoFormat, TubePhoto } from '@/lib/domain/stock/photo'
import { dataFolder, db, type Tx } from './database'

const columns = { id: true, tubeId: true, name: true, format: true, bytes: true, addedAt: true, addedBy: true } as const

type Row = Omit<TubePhoto, 'format'> & { format: string }

const photoOf = (row: Row): TubePhoto => ({ ...row, format: row.format as PhotoFormat })

/** Oldest first. */
export async function listPhotos(tubeId: string, tx: Tx = db()): Promise<TubePhoto[]> {
  const rows = await tx.tubePhoto.findMany({
    where: { tubeId },
    orderBy: [{ addedAt: 'asc' }, { id: 'asc' }],
    select: columns,
  })
  return rows.map(photoOf)
}

export async function findPhoto(id: string, tx: Tx = db()): Promise<TubePhoto | null> {
  const row = await tx.tubePhoto.findUnique({ where: { id }, select: columns })
  return row && photoOf(row)
}

export async function createPhoto(tx: Tx, photo: Omit<TubePhoto, 'id'>): Promise<TubePhoto> {
  return photoOf(await tx.tubePhoto.create({ data: photo, select: columns }))
}

/** False when it was gone already. */
export async function deletePhoto(tx: Tx, id: string): Promise<boolean> {
  return (await tx.tubePhoto.deleteMany({ where: { id } })).count === 1
}

const folder = () => join(/*turbopackIgnore: true*/ dataFolder(), 'photos')

/** Named by the id alone, so that nothing somebody typed is part of a path. */
const pathOf = ({ id, format }: Pick<TubePhoto, 'id' | 'format'>) =>
  join(/*turbopackIgnore: true*/ folder(), `${id}.${format}`)

export async function writePicture(photo: Pick<TubePhoto, 'id' | 'format'>, bytes: Uint8Array): Promise<void> {
  await mkdir(folder(), { recursive: true })
  await writeFile(pathOf(photo), bytes)
}

/** Null when the file is not there, as in a copy of the records without it. */
export async function readPicture(photo: Pick<TubePhoto, 'id' | 'format'>): Promise<Uint8Array | null> {
  try {
    return new Uint8Array(await readFile(pathOf(photo)))
  } catch (error) {
    if ((error as { code?: string }).code === 'ENOENT') return null
    throw error
  }
}

export const removePicture = (photo: Pick<TubePhoto, 'id' | 'format'>): Promise<void> =>
  rm(pathOf(photo), { force: true })
