/** Opens the shop: settings, people, instruments, a few flat prices. Refused when there is a shop already. */
import { addDays, type Day, dayInZone } from '@/lib/domain/calendar'
import type { Actor } from '@/lib/domain/person/role'
import { ok, type Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import { findPerson } from '@/lib/store/person'
import { findShop } from '@/lib/store/shop'
import { keepInstrument } from '@/lib/workflow/shop/keep-instrument'
import { keepOperation } from '@/lib/workflow/shop/keep-operation'
import { addPerson } from '@/lib/workflow/shop/keep-person'
import { openShop } from '@/lib/workflow/shop/open-shop'
import { personOfToken, signOut } from '@/lib/workflow/shop/sign-in'
import type { Step } from '@/lib/workflow/step/step'
import type { ShopCalendar } from '@/seed/calendar-of-shop'
import { settled } from '@/seed/settled'
import { type DemoWorld, type Happening, stepOf } from '@/seed/world'
import { DEMO_INSTRUMENTS, type DemoInstrument, type InstrumentKey } from './instruments'
import { DEMO_PEOPLE, type Who } from './people'
import { DEMO_OPERATIONS, DEMO_SHOP } from './settings'

export const OPENED = { workingDaysAgo: 360, clock: '10:00' } as const

export async function openDemoShop(calendar: ShopCalendar): Promise<Result<DemoWorld, 'already-open'>> {
  const now = calendar.at(OPENED.workingDaysAgo, OPENED.clock)
  const opened = await openShop(DEMO_SHOP, DEMO_PEOPLE.tess, now, true)
  if (!opened.ok) return opened
  const [keeper, shop] = [await personOfToken(opened.value.token, now), await findShop()]
  if (!keeper || !shop) throw new Error('The demo shop was opened but is not there')
  await signOut(opened.value.token)
  const step = { actor: keeper, now }
  const actors = { tess: keeper, milo: await hire(shop, step, 'milo'), anselm: await hire(shop, step, 'anselm') }
  for (const details of DEMO_OPERATIONS)
    await settled(shop, details.name, keepOperation(step, { id: null, details: { ...details, active: true } }))
  const instruments = await setUpInstruments(shop, step, calendar)
  return ok({ shop, calendar, actors, instruments, customers: new Map(), amps: new Map() })
}

async function hire(shop: Shop, step: Step, who: Who): Promise<Actor> {
  const id = await settled(shop, who, addPerson(step, { ...DEMO_PEOPLE[who], keepsShop: false }))
  const person = await findPerson(id)
  if (!person) throw new Error(`${who} was added but is not there`)
  return person
}

const DAYS_BETWEEN_CALIBRATIONS = 370

const dayOfCalibration = ({ calendar, timeZone }: Bench, { calibrated }: DemoInstrument): Day =>
  dayInZone(calendar.at(calibrated, BACK_FROM_CALIBRATION), timeZone)

type Bench = { readonly calendar: ShopCalendar; readonly timeZone: string }

const BACK_FROM_CALIBRATION = '15:45'

/** With the calibration they had when the shop opened. */
async function setUpInstruments(
  shop: Shop,
  step: Step,
  calendar: ShopCalendar,
): Promise<Record<InstrumentKey, string>> {
  const ids: Partial<Record<InstrumentKey, string>> = {}
  for (const [key, instrument] of Object.entries(DEMO_INSTRUMENTS) as [InstrumentKey, DemoInstrument][]) {
    const { calibrated: _calibrated, ...rest } = instrument
    const latest = dayOfCalibration({ calendar, timeZone: shop.timeZone }, instrument)
    const details = { ...rest, calibratedOn: addDays(latest, -DAYS_BETWEEN_CALIBRATIONS), active: true }
    ids[key] = await settled(shop, rest.name, keepInstrument(step, { id: null, version: 0, details }))
  }
  return ids as Record<InstrumentKey, string>
}

/** Each instrument comes back from its calibration once since. */
export function calibrationHappenings(world: DemoWorld): Happening[] {
  const { shop, calendar, instruments } = world
  return (Object.entries(DEMO_INSTRUMENTS) as [InstrumentKey, DemoInstrument][]).map(([key, instrument]) => {
    const { calibrated, ...rest } = instrument
    const at = calendar.at(calibrated, BACK_FROM_CALIBRATION)
    const calibratedOn = dayOfCalibration({ calendar, timeZone: shop.timeZone }, instrument)
    const details = { ...rest, calibratedOn, active: true }
    const kept = { id: instruments[key], version: 1, details }
    return {
      at,
      run: async () => void (await settled(shop, rest.name, keepInstrument(stepOf(world, 'tess', at), kept))),
    }
  })
}
