/**
 * What one socket asks of the tube that goes into it: an output socket asks as part of its
 * match group; any other asks for the type on the sheet alone, as its volts decide nothing there.
 */
import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { Socket } from '@/lib/domain/amp/socket'
import type { SocketDemand } from '@/lib/domain/matching/candidate'
import { fail, ok, type Result } from '@/lib/domain/result'
import { stockType } from '@/lib/domain/stock/stock-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { BenchResult } from './bench-result'
import { type DemandFault, groupDemand } from './group-demand'

export type PlaceDemand = {
  readonly socket: Socket
  /** Match group; null: the socket stands alone. */
  readonly group: string | null
  /** Of the group in chassis order, or the one. */
  readonly sockets: readonly Socket[]
  readonly demand: SocketDemand
}

export type PlaceFault = DemandFault | { readonly code: 'socket-not-on-sheet'; readonly position: string }

export function placeDemand(
  sheet: AmpSheet,
  position: string,
  result: BenchResult | null,
  catalogue: TubeCatalogue,
): Result<PlaceDemand, PlaceFault> {
  const socket = sheet.sockets.find((each) => each.position === position)
  if (!socket) return fail({ code: 'socket-not-on-sheet', position })
  if (socket.role !== 'output') return aloneDemand(socket, catalogue)
  const group = groupDemand(sheet, socket.matchGroup, result, catalogue)
  if (!group.ok) return group
  const { sockets, demand } = group.value
  return ok({ socket, group: socket.matchGroup, sockets, demand })
}

function aloneDemand(socket: Socket, catalogue: TubeCatalogue): Result<PlaceDemand, DemandFault> {
  if (socket.typeFitted.trim() === '') return fail({ code: 'no-type', sockets: [socket.position] })
  const type = stockType(socket.typeFitted, catalogue)
  return ok({ socket, group: null, sockets: [socket], demand: demandAlone(type) })
}

/** Of one tube whose volts nobody reads. */
export const demandAlone = ({ family, base }: Pick<SocketDemand, 'family' | 'base'>): SocketDemand => ({
  family,
  base,
  count: 1,
  pushPull: false,
  arrangement: 'single-ended',
  aim: null,
  plateToCathodeVoltage: null,
  screenVoltage: null,
  idlePlateDissipation: null,
})
