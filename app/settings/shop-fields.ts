/** Readers of the shop's own boxes, shared by the first run and the settings. */
import { type Typed, typedText } from '@/app/_components/form/depending'
import { box, choice, email, requiredAmount, requiredMeasure, text, thousandths } from '@/app/_components/form/fields'
import { isTimeZone } from '@/lib/domain/calendar'
import { readDecimal } from '@/lib/domain/decimal'
import { minorDigits } from '@/lib/domain/money'
import { isCurrency } from '@/lib/domain/shop/currency'

const currency = () =>
  box((typed, refuse) =>
    isCurrency(typed) ? typed : refuse(`Currency: “${typed}” is not a currency of the list. Choose one.`),
  )

const timeZone = () =>
  box((typed, refuse) =>
    isTimeZone(typed) ? typed : refuse(`Time zone: “${typed}” is not known. Choose one from the list.`),
  )

export const MAINS_BOUNDS = { min: 90, max: 260 } as const
/** Nominal mains voltages met with, for the list beside the box. Common practice, no source. */
export const USUAL_MAINS = [100, 110, 117, 120, 127, 220, 230, 240] as const

/** What a shop cannot be opened without. */
export function basicFields(typed: Typed) {
  const chosen = typedText(typed, 'currency')
  const money = isCurrency(chosen) ? chosen : 'USD'
  return {
    name: text({ label: 'Name of the shop', required: true, max: 120 }),
    currency: currency(),
    taxName: text({ label: 'Name of the tax', required: true, max: 30 }),
    taxMilliPercent: thousandths({ label: 'Tax rate', min: 0, max: 100_000 }),
    hourlyRate: requiredAmount({ label: 'Hourly rate', currency: money, digits: minorDigits(money) }),
    mainsVolts: requiredMeasure({ label: 'Mains voltage', unit: 'V', ...MAINS_BOUNDS }),
    timeZone: timeZone(),
    paper: choice('Paper', ['A4', 'LETTER']),
    words: choice('Words', ['US', 'UK']),
  }
}

const count = (label: string, unit: string, min: number, max: number) =>
  requiredMeasure({ label, unit, min, max, whole: true })
const days = (label: string, min: number, max: number) => count(label, 'days', min, max)

const HIGHEST_PERCENT = 150

/** The upper bound is not below what is typed as the lower one. */
function window(typed: Typed, name: string, label: string) {
  const low = readDecimal(typedText(typed, `${name}Low`))
  const least = low.ok && low.value >= 1 && low.value <= HIGHEST_PERCENT ? low.value : 1
  return {
    [`${name}Low`]: count(`${label}, from`, '%', 1, HIGHEST_PERCENT),
    [`${name}High`]: count(`${label}, to`, '%', least, HIGHEST_PERCENT),
  }
}

export const IDLE_WINDOWS = [
  ['idleFixed', 'Fixed bias'],
  ['idleCathode', 'Cathode bias'],
  ['idleSingle', 'Single-ended'],
] as const

type WindowName = `${(typeof IDLE_WINDOWS)[number][0]}${'Low' | 'High'}`

const windowFields = (typed: Typed) =>
  Object.assign(
    {},
    ...IDLE_WINDOWS.map(([name, label]) => window(typed, name, `Idle window, ${label.toLowerCase()}`)),
  ) as Record<WindowName, ReturnType<typeof count>>

export const furtherFields = (typed: Typed) => ({
  address: text({ label: 'Postal address', max: 400 }),
  phone: text({ label: 'Phone', max: 60 }),
  email: email({ label: 'E-mail' }),
  depositPercent: count('Deposit', '%', 0, 100),
  quoteValidDays: days('Quotes stand for', 1, 365),
  receiptTerms: text({ label: 'Terms on the receipt', max: 4000 }),
  warrantyDays: days('Warranty', 0, 3650),
  warrantyTerms: text({ label: 'Warranty terms', max: 4000 }),
  recheckDays: days('Check again after', 0, 3650),
  testAgeDays: days('Tests count for', 1, 3650),
  ...windowFields(typed),
  earthBondMaxOhms: requiredMeasure({ label: 'Earth bond', unit: 'Ω', min: 0.01, max: 5 }),
  insulationMinOhms: requiredMeasure({ label: 'Insulation', unit: 'MΩ', min: 0.1, max: 1000, scale: 1e6 }),
  leakageMaxAmps: requiredMeasure({ label: 'Leakage', unit: 'mA', min: 0.01, max: 20, scale: 0.001 }),
  soakMinMinutes: count('Soak', 'min', 0, 1440),
})
