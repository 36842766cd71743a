import type { Socket, SocketDetails } from './socket'

/** The sockets of another amplifier of the same model, without the marks of its tubes. */
export const copiedSockets = (sockets: readonly Socket[]): readonly SocketDetails[] =>
  sockets.map(({ id: _id, place: _place, ...details }) => ({ ...details, markFitted: '' }))
