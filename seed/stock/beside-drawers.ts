/**
 * What lies beside the marked tubes: lots nobody has tested yet, parts, a
 * matched pair that is kept together, and two shop references that were read on
 * both testers.
 */
import { dayInZone } from '@/lib/domain/calendar'
import { type Money, money } from '@/lib/domain/money'
import type { PartDetails } from '@/lib/domain/stock/part'
import type { TubeLotDetails } from '@/lib/domain/stock/tube-lot'
import { amps, volts } from '@/lib/domain/units'
import { listTubes } from '@/lib/store/tube'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { keepLot } from '@/lib/workflow/stock/keep-lot'
import { changePartCount, keepPart } from '@/lib/workflow/stock/keep-part'
import { keepTube } from '@/lib/workflow/stock/keep-tube'
import { settled } from '@/seed/settled'
import { DEMO_INSTRUMENTS } from '@/seed/shop/instruments'
import { type DemoWorld, type Happening, later, stepOf } from '@/seed/world'

const dollars = (amount: number): Money => money(Math.round(amount * 100))

const lot = (designation: string, count: number, price: number, location: string, note: string): TubeLotDetails => ({
  ...{ designation, condition: 'as-found', count, cost: null, price: dollars(price), location, note },
})

const LOTS: readonly TubeLotDetails[] = [
  lot('12AU7', 34, 6, 'Crate 1', 'Cleared from a school laboratory, untested'),
  lot('5Y3GT', 12, 8, 'Crate 1', 'Same clearance, boxes mostly torn'),
  lot('6SN7GTB', 19, 9, 'Crate 2', 'Pulled from organ chassis, untested'),
]

type PartRow = readonly [
  name: string,
  kind: PartDetails['kind'],
  value: string,
  count: number,
  price: number,
  level: number,
]

const PARTS: readonly PartRow[] = [
  ['Fuse 5 × 20', 'fuse', 'T 2 A 250 V', 46, 0.8, 20],
  ['Fuse 5 × 20', 'fuse', 'T 3.15 A 250 V', 12, 0.8, 20],
  ['Screen resistor', 'resistor', '470 Ω 5 W', 38, 1.2, 16],
  ['Sense resistor', 'resistor', '1 Ω 1 % 1 W', 52, 0.9, 20],
  ['Filter capacitor', 'capacitor', '47 µF 500 V', 9, 9.5, 6],
  ['Filter can', 'capacitor', '32 + 32 + 16 µF 450 V', 0, 38, 0],
  ['Coupling capacitor', 'capacitor', '22 nF 630 V', 61, 2.4, 20],
  ['Octal socket', 'other', 'ceramic', 7, 5.5, 8],
]

async function writeDown(world: DemoWorld, at: Date): Promise<void> {
  const step = stepOf(world, 'milo', at)
  for (const details of LOTS) await settled(world.shop, 'a lot', keepLot(step, { id: null, version: 0, details }))
  for (const [name, kind, value, count, price, reorderLevel] of PARTS) {
    const details = { name, kind, value, count, cost: null, price: dollars(price), reorderLevel, location: 'Wall rack' }
    const partId = await settled(world.shop, name, keepPart(step, { id: null, version: 0, details }))
    if (kind !== 'fuse') continue
    const used = { partId, by: -2, reason: 'Fuses of two amplifiers replaced' }
    await settled(world.shop, name, changePartCount(later(step, 30), used))
  }
}

/** Free ones that no job of the demo wants, so that its stories stay as they are. */
async function restingTubes(designation: string, count: number, now: Date) {
  const { tubes } = await listTubes({ search: designation, view: 'free', now })
  const tested = tubes.filter(({ tube, test }) => tube.designation === designation && test !== null)
  const chosen = tested.slice(-count)
  if (chosen.length < count) throw new Error(`The demo stock has only ${tested.length} free and tested ${designation}`)
  return chosen
}

async function keepPair(world: DemoWorld, at: Date): Promise<void> {
  const step = stepOf(world, 'anselm', at)
  for (const { tube } of await restingTubes('12AX7', 2, at)) {
    const further = {
      ...tube.further,
      setName: 'Phase pair 1',
      used: 'used',
      getters: 'one, halo, at the top',
    } as const
    const input = { id: tube.id, version: tube.version, details: { ...tube, price: money(tube.price + 600) } }
    await settled(world.shop, tube.mark, keepTube(step, { ...input, further, test: null }))
  }
}

/** The second tester reads some 4 % more: shares of the first one's reading. */
const ON_SECOND = [1.034, 1.047] as const

async function compareTesters(world: DemoWorld, at: Date): Promise<void> {
  const step = stepOf(world, 'anselm', at)
  for (const [place, { tube, test }] of (await restingTubes('12AU7', 2, at)).entries()) {
    const further = { ...tube.further, reference: true }
    const input = { id: tube.id, version: tube.version, details: tube, further, test: null }
    await settled(world.shop, tube.mark, keepTube(step, input))
    const factor = ON_SECOND[place] ?? 1
    const sections = (test?.sections ?? []).map((section) => ({
      ...section,
      plateCurrent: section.plateCurrent === null ? null : amps(Number((section.plateCurrent * factor).toPrecision(4))),
    }))
    const again = {
      ...{
        day: dayInZone(at, world.shop.timeZone),
        instrumentName: DEMO_INSTRUMENTS.tracer.name,
        sections,
        shorts: false,
      },
      ...{
        plateVoltage: test?.plateVoltage ?? volts(250),
        screenVoltage: null,
        gridVoltage: test?.gridVoltage ?? null,
      },
      ...{ leakage: '', gas: '', noise: '', microphony: '', note: 'Read on both testers, to compare them' },
    }
    await settled(world.shop, tube.mark, addTubeTest(later(step, 5), { tubeId: tube.id, test: again, reject: false }))
  }
}

export const besideDrawers = (world: DemoWorld): Happening[] => {
  const on = (daysAgo: number, clock: string, run: (world: DemoWorld, at: Date) => Promise<void>): Happening => {
    const at = world.calendar.at(daysAgo, clock)
    return { at, run: () => run(world, at) }
  }
  return [on(30, '15:40', writeDown), on(1, '16:20', keepPair), on(1, '16:30', compareTesters)]
}
