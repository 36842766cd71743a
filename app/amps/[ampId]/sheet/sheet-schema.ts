/** The sheet's form: its boxes, read into sockets, and a sheet written into its boxes. */
import * as z from 'zod/mini'
import { flatRows, type RowValues } from '@/app/_components/form/edit-rows'
import { after, choice, measure, optionalChoice, refuseAt, text, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { type AmpSheet, OUTPUT_CLASSES } from '@/lib/domain/amp/amp'
import { firstTwice } from '@/lib/domain/amp/settle-sheet'
import { BIAS_KINDS, SIDES, SOCKET_ROLES, type SocketDetails } from '@/lib/domain/amp/socket'
import { MOST_SOCKETS, SOCKET_BOUNDS, type SocketBound } from '@/lib/domain/amp/socket-bounds'

/** Sentences name the socket first, since the same box stands there once for every socket. */
function socketSchema(at: string) {
  const bounded = (bound: SocketBound) => measure({ ...bound, label: `${at} ${bound.label}` })
  const shared = (bound: SocketBound) => after(bounded(bound), (count) => count ?? 1)
  return z.object({
    id: after(text({ label: 'Socket' }), (id) => id || null),
    position: text({ label: `Position of ${at}`, required: true, max: 12 }),
    role: choice(`${at} role`, SOCKET_ROLES),
    typeFitted: text({ label: `${at} type`, max: 40 }),
    markFitted: text({ label: `${at} mark`, max: 40 }),
    matchGroup: text({ label: `${at} match group`, max: 30 }),
    biasKind: optionalChoice(`${at} bias`, BIAS_KINDS),
    side: optionalChoice(`${at} side`, SIDES),
    cathodeOhms: bounded(SOCKET_BOUNDS.cathodeOhms),
    cathodeSharedBy: shared(SOCKET_BOUNDS.cathodeSharedBy),
    senseOhms: bounded(SOCKET_BOUNDS.senseOhms),
    screenOhms: bounded(SOCKET_BOUNDS.screenOhms),
    halfPrimaryOhms: bounded(SOCKET_BOUNDS.halfPrimaryOhms),
    halfSharedBy: shared(SOCKET_BOUNDS.halfSharedBy),
    across: bounded(SOCKET_BOUNDS.across),
    depth: bounded(SOCKET_BOUNDS.depth),
  })
}

type SocketRow = z.output<ReturnType<typeof socketSchema>>

const looseRow = z.record(z.string(), z.optional(z.string()))

const sockets = after(z.optional(z.array(z.optional(looseRow))), (typed, context): SocketRow[] => {
  const refuse = (message: string, path: PropertyKey[]) => refuseAt(context, message, path)
  const read = (typed ?? []).flatMap((row, index) => {
    if (row === undefined) return []
    const parsed = socketSchema(row.position?.trim() || `socket ${index + 1}`).safeParse(row)
    if (parsed.success) return [{ ...parsed.data, index }]
    for (const { message, path } of parsed.error.issues) refuse(message, [index, ...path])
    return []
  })
  const twice = firstTwice(read.map(({ position }) => position))
  const again = read.findLastIndex(({ position }) => position === twice)
  if (twice !== null && again >= 0)
    refuse(`Position ${twice} stands twice on the sheet. Every socket needs a position of its own.`, [
      read[again]?.index ?? 0,
      'position',
    ])
  for (const { position, across, depth, index } of read)
    if ((across === null) !== (depth === null))
      refuse(`${position}: its place needs both numbers, across and deep, or neither.`, [
        index,
        across === null ? 'across' : 'depth',
      ])
  if (read.length > MOST_SOCKETS) refuse(`${read.length} sockets are too many; a sheet holds ${MOST_SOCKETS}.`, [])
  return read.map(({ index: _index, ...row }) => row)
})

export const sheetSchema = z.object({
  ampId: text({ label: 'Amplifier', required: true }),
  version: version(),
  outputClass: choice('Output stage', OUTPUT_CLASSES),
  sockets,
})

const typed = (value: number | null) => (value === null ? '' : String(value))

export const socketText = (socket: SocketDetails & { readonly id?: string }): RowValues => ({
  id: socket.id ?? '',
  position: socket.position,
  role: socket.role,
  typeFitted: socket.typeFitted,
  markFitted: socket.markFitted,
  matchGroup: socket.matchGroup,
  biasKind: socket.biasKind,
  side: socket.side,
  cathodeOhms: typed(socket.cathodeOhms),
  cathodeSharedBy: typed(socket.cathodeSharedBy),
  senseOhms: typed(socket.senseOhms),
  screenOhms: typed(socket.screenOhms),
  halfPrimaryOhms: typed(socket.halfPrimaryOhms),
  halfSharedBy: typed(socket.halfSharedBy),
  across: typed(socket.across),
  depth: typed(socket.depth),
})

export const sheetFormValues = ({ amp, sockets: rows }: AmpSheet): FormValues =>
  sheetValues({
    ampId: amp.id,
    version: String(amp.version),
    outputClass: amp.outputClass,
    ...flatRows('sockets', rows.map(socketText)),
  })
