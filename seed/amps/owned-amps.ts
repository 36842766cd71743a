/** The twenty amplifiers of the demo, and whose they are. */
import type { AmpDetails } from '@/lib/domain/amp/amp'
import type { CustomerKey } from '@/seed/shop/customers'
import { DEMO_MODELS, type ModelKey } from './models'

export type OwnedAmp = {
  readonly owner: CustomerKey
  readonly model: ModelKey
  readonly serial: string
  readonly note?: string
  /** Half primaries A and B as measured, ohms, where they are not those of the sheet it was copied from. */
  readonly halves?: readonly [number, number]
}

export const OWNED_AMPS = {
  pipitOdalys: { owner: 'odalys', model: 'pipit5', serial: 'P5-01834' },
  pipitMarisol: { owner: 'marisol', model: 'pipit5', serial: 'P5-00962', note: 'Two-wire cord when it first came.' },
  pipitYusuf: { owner: 'yusuf', model: 'pipit5', serial: 'P5-02217' },
  pipitMillrace: { owner: 'millrace', model: 'pipit5', serial: '', note: 'Serial plate missing.' },
  tansyKeziah: { owner: 'keziah', model: 'tansy18', serial: '18-4406' },
  tansyDev: { owner: 'dev', model: 'tansy18', serial: '18-5120' },
  tansyYusuf: { owner: 'yusuf', model: 'tansy18', serial: '18-5377' },
  foremanTomasz: { owner: 'tomasz', model: 'foreman40', serial: 'F 40721' },
  foremanRui: { owner: 'rui', model: 'foreman40', serial: 'F 41265', halves: [75.2, 80.9] },
  foremanDev: { owner: 'dev', model: 'foreman40', serial: 'F 40118', halves: [73.1, 83.4] },
  foremanTannery1: {
    owner: 'tannery',
    model: 'foreman40',
    serial: 'F 42083',
    note: 'Room 1. Stenciled LTR 1 on the rear.',
    halves: [76, 79.8],
  },
  foremanTannery2: {
    owner: 'tannery',
    model: 'foreman40',
    serial: 'F 42091',
    note: 'Room 2. Stenciled LTR 2 on the rear.',
    halves: [74.6, 82.2],
  },
  millstoneRui: { owner: 'rui', model: 'millstone100', serial: 'M1-7719' },
  millstoneCormac: { owner: 'cormac', model: 'millstone100', serial: 'M1-6604' },
  millstoneTannery: { owner: 'tannery', model: 'millstone100', serial: 'M1-8052', note: 'Room 3.' },
  type240Hollis: { owner: 'hollis', model: 'type240', serial: '240/318' },
  type240Ludmila: { owner: 'ludmila', model: 'type240', serial: '240/127' },
  droverOdalys: { owner: 'odalys', model: 'drover15', serial: 'D 11093' },
  droverAino: { owner: 'aino', model: 'drover15', serial: 'D 10554' },
  droverMillrace: { owner: 'millrace', model: 'drover15', serial: 'D 12240' },
} as const satisfies Record<string, OwnedAmp>

export type AmpKey = keyof typeof OWNED_AMPS

export function ampDetailsOf(key: AmpKey): AmpDetails {
  const owned: OwnedAmp = OWNED_AMPS[key]
  const { make, model, mainsVolts, protectionClass, fuse, outputClass, plateLoadOhms } = DEMO_MODELS[owned.model]
  return {
    make,
    model,
    serial: owned.serial,
    mainsVolts,
    protectionClass,
    fuse,
    outputClass,
    plateLoadOhms,
    note: owned.note ?? '',
  }
}
