/** Takes the lots into stock, each on its day; then looks at a few of them again. */
import { dayInZone } from '@/lib/domain/calendar'
import { type Money, money } from '@/lib/domain/money'
import type { TestEntry } from '@/lib/domain/stock/test-entry'
import type { SectionReading } from '@/lib/domain/stock/tube'
import { volts } from '@/lib/domain/units'
import { addTubeTest } from '@/lib/workflow/stock/add-tube-test'
import { receiveTubes } from '@/lib/workflow/stock/receive-tubes'
import { chanceFrom } from '@/seed/chance'
import { settled } from '@/seed/settled'
import { DEMO_INSTRUMENTS } from '@/seed/shop/instruments'
import { type DemoWorld, type Happening, stepOf } from '@/seed/world'
import { BOOK_VALUES, type BookKey, type BookValue } from './book-values'
import { grownTube, readAgain } from './grow-tube'
import { type Finding, LOOKED_AT_AGAIN } from './looked-at-again'
import { LOTS, type Lot } from './lots'

/** With what it read when it came in; empty when it was not tested. */
type StockedTube = { readonly id: string; readonly mark: string; readonly sections: readonly SectionReading[] }

const instrumentOf = (book: BookKey) => DEMO_INSTRUMENTS[book.endsWith('at 400 V') ? 'tracer' : 'tester'].name

const dollars = (amount: number): Money => money(Math.round(amount * 100))

const NOTHING_NOTED = { leakage: '', gas: '', noise: '', microphony: '', note: '' } as const

function settingAt({ shop }: DemoWorld, book: BookKey, at: Date): Omit<TestEntry, 'sections' | 'shorts'> {
  const { plateVolts, screenVolts, gridVolts }: BookValue = BOOK_VALUES[book]
  return {
    ...NOTHING_NOTED,
    day: dayInZone(at, shop.timeZone),
    instrumentName: instrumentOf(book),
    plateVoltage: volts(plateVolts),
    screenVoltage: screenVolts === null ? null : volts(screenVolts),
    gridVoltage: gridVolts === null ? null : volts(gridVolts),
  }
}

async function receive(world: DemoWorld, lot: Lot, at: Date): Promise<StockedTube[]> {
  const { designation, condition, acquired, construction, location, cost, price, untested } = lot
  const chance = chanceFrom(`${lot.book}, ${lot.acquired}, ${lot.daysAgo}`)
  const sections = Array.from({ length: lot.tested }, () => grownTube(BOOK_VALUES[lot.book], lot, chance))
  const details = { designation, condition, acquired, construction, location }
  const delivery = {
    details: { ...details, cost: cost === null ? null : dollars(cost), price: dollars(price) },
    setting: settingAt(world, lot.book, at),
    rows: sections.map((read) => ({ mark: '', sections: read, shorts: false })),
    untested,
  }
  const received = await settled(
    world.shop,
    `a lot of ${designation}`,
    receiveTubes(stepOf(world, lot.by, at), delivery),
  )
  return received.map((tube, place) => ({ ...tube, sections: sections[place] ?? [] }))
}

async function lookAgain(world: DemoWorld, tube: StockedTube, { book, read, strength, by }: Finding, at: Date) {
  const shorts = strength === null
  const sections = shorts ? [] : readAgain(BOOK_VALUES[book], tube.sections, strength, chanceFrom(tube.mark))
  const test = { ...settingAt(world, book, at), ...read, sections, shorts }
  await settled(world.shop, tube.mark, addTubeTest(stepOf(world, by, at), { tubeId: tube.id, test, reject: shorts }))
}

/** Lots of one day come in one after another, twelve minutes apart. */
function clockOf(lot: Lot): string {
  const before = LOTS.slice(0, LOTS.indexOf(lot)).filter(({ daysAgo }) => daysAgo === lot.daysAgo).length
  const minutes = 10 * 60 + 15 + 12 * before
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`
}

function lotHappenings(world: DemoWorld, lot: Lot): Happening[] {
  const at = world.calendar.at(lot.daysAgo, clockOf(lot))
  let received: StockedTube[] = []
  const arrival = async () => {
    received = await receive(world, lot, at)
  }
  const own = LOOKED_AT_AGAIN.filter(({ book, condition }) => book === lot.book && condition === lot.condition)
  const later = own.map((finding): Happening => {
    const then = world.calendar.at(finding.daysAgo, finding.clock)
    return { at: then, run: () => lookAgain(world, tubeAt(received, lot, finding.place), finding, then) }
  })
  return [{ at, run: arrival }, ...later]
}

function tubeAt(received: readonly StockedTube[], { designation }: Lot, place: number): StockedTube {
  const tube = received[place]
  if (!tube) throw new Error(`The lot of ${designation} has no tube at place ${place}`)
  return tube
}

export const stockHappenings = (world: DemoWorld): Happening[] => LOTS.flatMap((lot) => lotHappenings(world, lot))
