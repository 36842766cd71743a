/** A model of the demo: what every amplifier of it has in common. */
import type { OutputClass, ProtectionClass } from '@/lib/domain/amp/amp'
import { plainSocket, type SocketDetails, type SocketRole } from '@/lib/domain/amp/socket'
import type { SupplyFacts } from '@/lib/domain/amp/supply-facts'

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
  /** What its list and the bench told of its supplies; left out: nothing was ever written down. */
  readonly supply?: Partial<SupplyFacts>
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
