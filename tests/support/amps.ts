/** An invented amplifier and its owner, on file; overrides where a test cares. */
import type { AmpDetails } from '@/lib/domain/amp/amp'
import { plainSocket, type SocketDetails } from '@/lib/domain/amp/socket'
import { createAmp } from '@/lib/store/amp'
import { createCustomer } from '@/lib/store/customer'
import { inTransaction } from '@/lib/store/database'

export const ampDetails = (over: Partial<AmpDetails> = {}): AmpDetails => ({
  make: 'Corvane',
  model: 'Tilt 20',
  serial: '0417',
  mainsVolts: 230,
  protectionClass: 'I',
  fuse: 'T 1 A',
  outputClass: 'push-pull',
  plateLoadOhms: null,
  note: '',
  ...over,
})

export const ownerOnFile = (name = 'Mirela Thorn'): Promise<string> =>
  inTransaction((tx) =>
    createCustomer(tx, { name, phone: '', email: '', address: '', preferredContact: 'phone', note: '' }),
  )

export async function ampOnFile(over: Partial<AmpDetails> = {}, ownerId?: string): Promise<string> {
  const customerId = ownerId ?? (await ownerOnFile())
  return inTransaction((tx) => createAmp(tx, customerId, ampDetails(over)))
}

export const outputSocket = (position: string, over: Partial<SocketDetails> = {}): SocketDetails => ({
  ...plainSocket(position, 'output', '6V6GT'),
  biasKind: 'cathode-resistor',
  ...over,
})

/** V1 preamp, V2 phase inverter, V3 and V4 sharing 250 Ω, V5 rectifier. */
export const cathodePair = (): SocketDetails[] => [
  plainSocket('V1', 'preamp', '12AX7'),
  plainSocket('V2', 'phase-inverter', '12AX7'),
  outputSocket('V3', { side: 'A', cathodeOhms: 250, cathodeSharedBy: 2, markFitted: 'T-101' }),
  outputSocket('V4', { side: 'B', cathodeOhms: 250, cathodeSharedBy: 2, markFitted: 'T-102' }),
  plainSocket('V5', 'rectifier', '5Y3GT'),
]
