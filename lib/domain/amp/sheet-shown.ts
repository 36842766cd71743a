/** The sheet as the history tells it: one line for every value, named by its socket. */
import { type Shown, shown } from '@/lib/domain/history/changes'
import type { OutputClass } from './amp'
import { biasKindWord, roleWord, type SocketDetails } from './socket'
import { SOCKET_BOUNDS } from './socket-bounds'

const ohmsShown = (value: number | null) => (value === null ? '' : `${value} Ω`)

/** One is the usual case and is not worth a line. */
const sharedShown = (count: number) => (count === 1 ? '' : String(count))

const placeShown = ({ across, depth }: SocketDetails) =>
  across === null || depth === null ? '' : `${across} across, ${depth} deep`

function socketShown(socket: SocketDetails): [string, string][] {
  const { position } = socket
  return [
    [`${position} role`, roleWord(socket.role)],
    [`${position} type`, socket.typeFitted],
    [`${position} mark`, socket.markFitted],
    [`${position} match group`, socket.matchGroup],
    [`${position} bias`, biasKindWord(socket.biasKind)],
    [`${position} side`, socket.side],
    [`${position} ${SOCKET_BOUNDS.cathodeOhms.label}`, ohmsShown(socket.cathodeOhms)],
    [`${position} ${SOCKET_BOUNDS.cathodeSharedBy.label}`, sharedShown(socket.cathodeSharedBy)],
    [`${position} ${SOCKET_BOUNDS.senseOhms.label}`, ohmsShown(socket.senseOhms)],
    [`${position} ${SOCKET_BOUNDS.screenOhms.label}`, ohmsShown(socket.screenOhms)],
    [`${position} ${SOCKET_BOUNDS.halfPrimaryOhms.label}`, ohmsShown(socket.halfPrimaryOhms)],
    [`${position} ${SOCKET_BOUNDS.halfSharedBy.label}`, sharedShown(socket.halfSharedBy)],
    [`${position} place`, placeShown(socket)],
  ]
}

export const sheetShown = (outputClass: OutputClass, sockets: readonly SocketDetails[]): Shown =>
  shown([
    ['Output stage', outputClass],
    ['Order of sockets', sockets.map(({ position }) => position).join(', ')],
    ...sockets.flatMap(socketShown),
  ])
