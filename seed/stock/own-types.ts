/** A tube type the demo shop wrote down itself. It is invented, figures and all: no such tube is made. */
import type { OwnTypeEntry } from '@/lib/domain/tube/own/own-type-entry'
import { keepOwnType } from '@/lib/workflow/shop/keep-own-type'
import { settled } from '@/seed/settled'
import { type DemoWorld, type Happening, stepOf } from '@/seed/world'

export const OWN_TYPE: OwnTypeEntry = {
  designation: '6L6-QH25',
  otherNumbers: ['QH25'],
  // Not matched with the 6L6s in the drawers: it idles elsewhere on the same grid volts.
  family: '',
  tubeClass: 'beam-tetrode',
  base: 'octal',
  basing: '7AC',
  pins: { 1: 'nc', 2: 'h', 3: 'a', 4: 'g2', 5: 'g1', 6: 'nc', 7: 'h', 8: 'k + beam plates' },
  heaterVolts: 6.3,
  heaterAmps: 0.9,
  system: 'design-maximum',
  limits: {
    plateVolts: 450,
    screenVolts: 400,
    plateWatts: 25,
    screenWatts: 4,
    heaterCathodeVolts: 180,
    gridLeakGridSuppliedMegohms: 0.1,
    gridLeakCathodeBiasMegohms: 0.5,
  },
  rows: [
    {
      ...{ plateVolts: 350, screenVolts: 250, gridVolts: -17, plateMilliamps: 60, screenMilliamps: 3.2 },
      ...{ gmMilliampsPerVolt: 5.4, plateResistanceKilohms: 30, mu: null },
    },
  ],
  drop: null,
  curves: { typeId: '6L6', degree: 'similar' },
  sourceText: 'invented for the demo shop',
  note: 'No such tube is made: it shows how a type the handbook does not know is written down.',
}

const WRITTEN = { workingDaysAgo: 4, clock: '9:50' } as const

export function ownTypeHappenings(world: DemoWorld): Happening[] {
  const at = world.calendar.at(WRITTEN.workingDaysAgo, WRITTEN.clock)
  const input = { id: null, version: 0, entry: OWN_TYPE, active: true }
  const write = () => settled(world.shop, OWN_TYPE.designation, keepOwnType(stepOf(world, 'tess', at), input))
  return [{ at, run: async () => void (await write()) }]
}
