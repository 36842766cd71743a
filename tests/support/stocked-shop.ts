/** A shop in New York time that counts in dollars, an invented tube in it, and a test of it. */
import type { Day } from '@/lib/domain/calendar'
import { money } from '@/lib/domain/money'
import { NEW_SHOP_DEFAULTS, type ShopSettings } from '@/lib/domain/shop/shop'
import type { TestEntry } from '@/lib/domain/stock/test-entry'
import type { SectionReading, TubeDetails } from '@/lib/domain/stock/tube'
import { amps, siemens, volts } from '@/lib/domain/units'
import { inTransaction } from '@/lib/store/database'
import { createJob } from '@/lib/store/job'
import { createShop } from '@/lib/store/shop'
import { keepTube } from '@/lib/workflow/stock/keep-tube'
import { ampOnFile, ownerOnFile } from './amps'
import { atBench, NOW } from './person-at-work'

export const SHOP: ShopSettings = {
  ...NEW_SHOP_DEFAULTS,
  name: 'Lantern Street Amplifier Works',
  address: '',
  phone: '',
  email: '',
  currency: 'USD',
  taxName: 'Sales tax',
  taxMilliPercent: 8875,
  mainsVolts: 120,
  timeZone: 'America/New_York',
  paper: 'LETTER',
  words: 'US',
  hourlyRate: money(9000),
  receiptTerms: '',
  warrantyTerms: '',
}

export const openStockedShop = () => inTransaction((tx) => createShop(tx, SHOP))

export const section = (milliamps: number | null, slope: number | null = null, number: 1 | 2 = 1): SectionReading => ({
  section: number,
  plateCurrent: milliamps === null ? null : amps(milliamps / 1000),
  screenCurrent: null,
  transconductance: slope === null ? null : siemens(slope / 1000),
})

export const tubeDetails = (over: Partial<TubeDetails> = {}): TubeDetails => ({
  mark: '',
  designation: '6L6GC',
  condition: 'used-tested',
  acquired: '',
  construction: '',
  location: 'Drawer 4',
  cost: null,
  price: money(4500),
  ...over,
})

/** 2031-05-06 is the day of NOW in New York. */
export const testEntry = (over: Partial<TestEntry> = {}): TestEntry => ({
  day: '2031-05-06' as Day,
  instrumentName: 'Bench tester 1',
  plateVoltage: volts(250),
  screenVoltage: volts(250),
  gridVoltage: volts(-14),
  sections: [section(72, 6)],
  shorts: false,
  leakage: '',
  gas: '',
  noise: '',
  microphony: '',
  note: '',
  ...over,
})

/** Gives the id. */
export async function tubeInStock(
  details: Partial<TubeDetails> = {},
  test: Partial<TestEntry> | null = {},
): Promise<string> {
  const kept = await keepTube(atBench(), {
    id: null,
    version: 0,
    details: tubeDetails(details),
    test: test && testEntry(test),
  })
  if (!kept.ok) throw new Error(JSON.stringify(kept.fault))
  return kept.value
}

export async function jobOnFile(): Promise<{ readonly id: string; readonly number: string }> {
  const customerId = await ownerOnFile()
  const ampId = await ampOnFile({}, customerId)
  const fault = {
    fault: 'Hums',
    faultSettings: '',
    spendingLimit: null,
    promisedOn: null,
    oldPartsBack: false,
    items: [],
  }
  return inTransaction((tx) =>
    createJob(tx, { ...fault, customerId, ampId, takenInById: 'odo', takenInBy: 'Odo', receivedAt: NOW }),
  )
}
