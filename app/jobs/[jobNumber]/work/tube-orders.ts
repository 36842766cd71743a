import 'server-only'
import type { AmpSheet } from '@/lib/domain/amp/amp'
/** Per socket: the tube of the accepted quote, and whether it is in. */
import { type Fitting, fittedBy } from '@/lib/domain/amp/fitting'
import type { Job } from '@/lib/domain/job/job'
import { type Exchanged, exchangesOn } from '@/lib/domain/quote/exchanged'
import type { Quote } from '@/lib/domain/quote/quote'
import { conditionWord } from '@/lib/domain/stock/tube'
import { listTubesById } from '@/lib/store/tube'

export type TubeOrder = {
  readonly position: string
  readonly mark: string
  readonly type: string
  readonly condition: string
  readonly location: string
  /** What sits there now; empty when nothing is noted. */
  readonly now: string
  /** What was quoted, where this one stands for it; null: it is the one that was quoted. */
  readonly instead: Exchanged | null
  readonly fitted: { readonly at: Date; readonly by: string } | null
  /** The socket is not on the sheet any more. */
  readonly lost: boolean
}

type AmpState = { readonly sheet: AmpSheet; readonly fittings: readonly Fitting[] }

export async function tubeOrders(quote: Quote | null, { sheet, fittings }: AmpState, job: Job): Promise<TubeOrder[]> {
  const lines = quote?.lines.filter(({ tubeId, socketPosition }) => tubeId !== null && socketPosition !== null) ?? []
  const stocked = await listTubesById(lines.flatMap(({ tubeId }) => tubeId ?? []))
  const tubes = new Map(stocked.map(({ tube }) => [tube.id, tube]))
  const here = fittedBy(fittings, job.id)
  const orders = lines.flatMap((line): TubeOrder[] => {
    const { tubeId, socketPosition } = line
    const tube = tubes.get(tubeId ?? '')
    if (!tube) return []
    const socket = sheet.sockets.find(({ position }) => position === socketPosition)
    const fitting = here.find((each) => each.tubeId === tube.id && each.socketId === socket?.id)
    return [
      {
        position: socketPosition ?? '',
        mark: tube.mark,
        type: tube.designation,
        condition: conditionWord(tube.condition),
        location: tube.location,
        now: [socket?.typeFitted, socket?.markFitted && `mark ${socket.markFitted}`].filter(Boolean).join(', '),
        instead: exchangesOn({ lines: [line] }, [tube])[0] ?? null,
        fitted: fitting ? { at: fitting.fittedAt, by: fitting.fittedBy } : null,
        lost: !socket,
      },
    ]
  })
  const place = (order: TubeOrder) => sheet.sockets.findIndex(({ position }) => position === order.position)
  return orders.sort((a, b) => place(a) - place(b))
}
