/** What is asked on this page, as its address says it. */
import type { AmpSocket } from '@/lib/domain/substitution/amp-socket'
import { ampSocket, type KnownAmp } from '@/lib/domain/substitution/socket-of-sheet'

export type Asked = {
  readonly socket: AmpSocket
  /** One type alone; empty: all. */
  readonly type: string
  readonly allowOver: boolean
  readonly onlyStock: boolean
}

/** An output group once, under all of its positions. */
export function askableSockets(known: KnownAmp): AmpSocket[] {
  const all = known.sheet.sockets.flatMap((socket) => ampSocket(socket, known) ?? [])
  return all.filter(({ position }, at) => all.findIndex((other) => other.position === position) === at)
}

type Query = Readonly<Record<string, string | string[] | undefined>>
const one = (value: string | string[] | undefined): string => (typeof value === 'string' ? value.trim() : '')

/** Output sockets first, as they are asked about most. Null: there is nothing to ask about. */
export function readAsked(query: Query, sockets: readonly AmpSocket[]): Asked | null {
  const wanted = one(query.socket)
  const socket =
    sockets.find(({ position }) => position === wanted) ??
    sockets.find(({ made }) => made.role === 'output') ??
    sockets[0]
  if (!socket) return null
  return {
    socket,
    type: one(query.type).slice(0, 40),
    allowOver: one(query.over) === 'on',
    onlyStock: one(query.stock) === 'on',
  }
}
