/** Two output sockets on the amplifier of a job, straight into the records. */
import { db } from '@/lib/store/database'

/** Gives the ids of V1 and V2. */
export async function saveSheet(jobId: string): Promise<string[]> {
  const { ampId } = await db().job.findUniqueOrThrow({ where: { id: jobId }, select: { ampId: true } })
  const make = (position: string, place: number) =>
    db().socket.create({ data: { ampId, place, position, role: 'output' }, select: { id: true } })
  return [(await make('V1', 0)).id, (await make('V2', 1)).id]
}
