/** Which tube sat in which socket, for ever. Putting one in is `markFitted` of lib/store/tube. */
import type { Prisma } from '@/generated/sqlite/client'
import { type FittedTube, type Fitting, fittedTubeText, readFittedTube } from '@/lib/domain/amp/fitting'
import { db, type Tx } from './database'

const columns = {
  id: true,
  socketId: true,
  tubeId: true,
  jobId: true,
  text: true,
  fittedAt: true,
  fittedBy: true,
  removedAt: true,
} satisfies Prisma.FittingSelect

type Row = Prisma.FittingGetPayload<{ select: typeof columns }>

const fitting = ({ text, ...row }: Row): Fitting => ({ ...row, ...readFittedTube(text) })

/** Every tube that ever sat in this amplifier as far as it is written down, oldest first. */
export async function listFittingsOfAmp(ampId: string, tx: Tx = db()): Promise<Fitting[]> {
  const orderBy = [{ fittedAt: 'asc' }, { id: 'asc' }] satisfies Prisma.FittingOrderByWithRelationInput[]
  const rows = await tx.fitting.findMany({ where: { socket: { ampId } }, orderBy, select: columns })
  return rows.map(fitting)
}

export type ReceivedFitting = FittedTube & { readonly socketId: string; readonly jobId: string; readonly since: Date }

/** A tube that came in with the amplifier, written down when something is done to it. */
export async function createReceivedFitting(
  tx: Tx,
  { socketId, jobId, since, ...tube }: ReceivedFitting,
): Promise<void> {
  const data = { socketId, jobId, text: fittedTubeText(tube), fittedAt: since, fittedBy: 'as received' }
  await tx.fitting.create({ data })
}

/** False when it was taken out already. */
export async function markTakenOut(tx: Tx, id: string, removedAt: Date): Promise<boolean> {
  const { count } = await tx.fitting.updateMany({ where: { id, removedAt: null }, data: { removedAt } })
  return count === 1
}

/** The tube sits in its socket again, as if it had never been out. */
export async function putBack(tx: Tx, id: string): Promise<void> {
  await tx.fitting.update({ where: { id }, data: { removedAt: null } })
}

/** Where the stock book has a tube that a job moves. False when it was elsewhere. */
export async function moveFittedTube(
  tx: Tx,
  tubeId: string,
  from: 'fitted' | 'sold',
  to: 'in-stock' | 'fitted' | 'sold',
): Promise<boolean> {
  const { count } = await tx.tube.updateMany({ where: { id: tubeId, whereabouts: from }, data: { whereabouts: to } })
  return count === 1
}

/** Null: not known. */
export async function saveFittingHours(tx: Tx, id: string, hours: number | null): Promise<void> {
  await tx.fitting.update({ where: { id }, data: { hours } })
}
