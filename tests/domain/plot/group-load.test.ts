import { describe, expect, it } from 'vitest'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { plainSocket } from '@/lib/domain/amp/socket'
import { groupLoad } from '@/lib/domain/plot/group-load'

const sheet = (outputs: number, outputClass: 'push-pull' | 'single-ended', plateLoadOhms: number | null): AmpSheet => ({
  amp: {
    ...{ id: 'a', customerId: 'c', make: 'M', model: 'N', serial: '', mainsVolts: 230, protectionClass: 'I', fuse: '' },
    ...{ outputClass, plateLoadOhms, note: '', version: 1 },
  },
  sockets: Array.from({ length: outputs }, (_, place) => ({
    ...plainSocket(`V${place + 1}`, 'output', 'EL34'),
    id: `s${place}`,
    place,
  })),
})

describe('the load a group works into', () => {
  it.each([
    [4, 'push-pull', 3400, { ohms: 3400, arrangement: 'push-pull', tubesPerSide: 2 }],
    [2, 'single-ended', 2500, { ohms: 2500, arrangement: 'single-ended', tubesPerSide: 2 }],
    [2, 'push-pull', null, null],
    [3, 'push-pull', 3400, null],
    [0, 'push-pull', 3400, null],
  ] as const)('%i tubes, %s, %s ohms', (outputs, arrangement, ohms, load) => {
    expect(groupLoad(sheet(outputs, arrangement, ohms), 'output')).toEqual(load)
  })
})
