/** A model of the demo: what every amplifier of it has in common. */
import type { OutputClass, ProtectionClass } from '@/lib/domain/amp/amp'
import { plainSocket, type SocketDetails, type SocketRole } from '@/lib/domain/amp/socket'

export type DemoModel = {
  readonly make: string
  readonly model: string
  readonly outputClass: OutputClass
  readonly plateLoadOhms: number
  readonly mainsVolts: number
  readonly protectionClass: ProtectionClass
  readonly fuse: string
  /** In chassis order. */
  readonly sockets: readonly SocketDetails[]
}

export type Place = readonly [across: number, depth: number]

export const smallSocket = (
  position: string,
  role: SocketRole,
  type: string,
  [across, depth]: Place,
): SocketDetails => ({
  ...plainSocket(position, role, type),
  across,
  depth,
})

export const outputSocket = (
  position: string,
  type: string,
  [across, depth]: Place,
  values: Partial<SocketDetails>,
): SocketDetails => ({ ...plainSocket(position, 'output', type), across, depth, ...values })
