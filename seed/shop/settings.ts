/** An invented shop in an invented town. Rates and terms are plausible, not anybody's. */
import { money } from '@/lib/domain/money'
import { NEW_SHOP_DEFAULTS, type ShopSettings } from '@/lib/domain/shop/shop'

export const DEMO_SHOP: ShopSettings = {
  ...NEW_SHOP_DEFAULTS,
  name: 'Quillhaven Amplifier Service',
  address: '41 Tannery Row\nQuillhaven',
  phone: '555-0100',
  email: 'bench@quillhaven-amps.example',
  currency: 'USD',
  taxName: 'Sales tax',
  taxMilliPercent: 6250,
  mainsVolts: 120,
  timeZone: 'America/Chicago',
  paper: 'LETTER',
  words: 'US',
  hourlyRate: money(9000),
  depositPercent: 30,
  receiptTerms:
    'The bench fee is credited to the work if you go ahead. Nothing beyond your limit is done before you have agreed to it. Amplifiers not collected within 90 days of our notice may be charged storage.',
  warrantyTerms:
    'Does not cover other faults of the amplifier, wrong speaker load, or tubes moved or biased elsewhere. Bring the amplifier back with its tubes as fitted.',
}

/** Beside the usual operations a new shop starts from. */
export const DEMO_OPERATIONS = [
  { name: 'Bench fee, credited to the work', milliHours: null, flatPrice: money(7500) },
  { name: 'Match a pair or quad from stock', milliHours: null, flatPrice: money(2000) },
  { name: 'Rush, next in line', milliHours: null, flatPrice: money(6000) },
] as const

/** Where the codes on the demo's papers lead: this machine. */
export const ADDRESS = 'http://localhost:3000'
