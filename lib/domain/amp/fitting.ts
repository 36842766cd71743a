/**
 * Which tube sat in which socket, from when to when: a row for every tube that
 * went in, kept for ever. The tube that was there when an amplifier came in gets
 * its row when it is taken out.
 */
import type { AmpSheet } from './amp'
import type { Socket } from './socket'

export type FittedTube = { readonly type: string; readonly mark: string }

export type Fitting = FittedTube & {
  readonly id: string
  readonly socketId: string
  /** Null: not from the stock book, as received. */
  readonly tubeId: string | null
  /** The job that put it in; for a tube as received, the job that took it out. */
  readonly jobId: string
  readonly fittedAt: Date
  readonly fittedBy: string
  /** Null: it sits there. */
  readonly removedAt: Date | null
}

const MARK = ', mark '

/** As it is told for ever: "6L6GC, mark T-0147". Read back by readFittedTube. */
export const fittedTubeText = ({ type, mark }: FittedTube): string => (mark === '' ? type : `${type}${MARK}${mark}`)

export function readFittedTube(text: string): FittedTube {
  const at = text.indexOf(MARK)
  return at < 0 ? { type: text, mark: '' } : { type: text.slice(0, at), mark: text.slice(at + MARK.length) }
}

/** In the socket at that instant, as far as a row tells. */
const satAt = ({ fittedAt, removedAt }: Fitting, at: Date): boolean =>
  fittedAt.getTime() <= at.getTime() && (removedAt === null || removedAt.getTime() > at.getTime())

function tubeAt(socket: Socket, fittings: readonly Fitting[], at: Date): FittedTube {
  const own = fittings.filter(({ socketId }) => socketId === socket.id)
  const there = own.find((fitting) => satAt(fitting, at))
  // What sits there now is told by the sheet, where it may have been corrected.
  if (there?.removedAt === null) return { type: socket.typeFitted, mark: socket.markFitted }
  if (there) return { type: there.type, mark: there.mark }
  // Changed after that instant, and nothing tells what was there before.
  const later = own.some(({ fittedAt }) => fittedAt.getTime() > at.getTime())
  return later ? { type: '', mark: '' } : { type: socket.typeFitted, mark: socket.markFitted }
}

/**
 * The sheet with the tubes that sat in it at that instant: a reading belongs to
 * the tube it was taken on, and so to that tube's rating.
 */
export function sheetAsOf(sheet: AmpSheet, fittings: readonly Fitting[], at: Date): AmpSheet {
  const sockets = sheet.sockets.map((socket) => {
    const { type, mark } = tubeAt(socket, fittings, at)
    return { ...socket, typeFitted: type, markFitted: mark }
  })
  return { ...sheet, sockets }
}

/** Fitted now by this job. */
export const fittedBy = (fittings: readonly Fitting[], jobId: string): Fitting[] =>
  fittings.filter((fitting) => fitting.jobId === jobId && fitting.tubeId !== null && fitting.removedAt === null)

/**
 * Taken out while the amplifier was here, and the customer's own: what this job
 * itself put in and took out again is the shop's.
 */
export const takenOut = (fittings: readonly Fitting[], jobId: string, since: Date): Fitting[] =>
  fittings.filter(
    (fitting) =>
      fitting.removedAt !== null && fitting.removedAt >= since && !(fitting.jobId === jobId && fitting.tubeId !== null),
  )

/** When a tube last went in or came out on this job; null: never. */
export function tubesChangedAt(fittings: readonly Fitting[], jobId: string, since: Date): Date | null {
  const times = fittings.flatMap(({ jobId: by, tubeId, fittedAt, removedAt }) => [
    ...(by === jobId && tubeId !== null ? [fittedAt.getTime()] : []),
    ...(removedAt !== null && removedAt >= since ? [removedAt.getTime()] : []),
  ])
  return times.length === 0 ? null : new Date(Math.max(...times))
}

/** Of the stock book, in the sockets at that instant: tube id by socket id. */
export const stockedTubesAt = (fittings: readonly Fitting[], at: Date): ReadonlyMap<string, string> =>
  new Map(
    fittings.flatMap((fitting): [string, string][] =>
      fitting.tubeId !== null && satAt(fitting, at) ? [[fitting.socketId, fitting.tubeId]] : [],
    ),
  )
