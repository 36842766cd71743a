/** Long lists to choose from, drawn on the server so that page and browser show the same. */
import type { Option } from '@/app/_components/form/form-fields'
import { isTimeZone } from '@/lib/domain/calendar'
import { currencyName, listCurrencies } from '@/lib/domain/shop/currency'
export type PickLists = { readonly currencies: readonly Option[]; readonly timeZones: readonly Option[] }

/** Places the runtime still lists by their former names. IANA time zone database, file `backward` (from memory). */
const RENAMED: Readonly<Record<string, string>> = {
  'Africa/Asmera': 'Africa/Asmara',
  'America/Buenos_Aires': 'America/Argentina/Buenos_Aires',
  'America/Godthab': 'America/Nuuk',
  'Asia/Calcutta': 'Asia/Kolkata',
  'Asia/Katmandu': 'Asia/Kathmandu',
  'Asia/Rangoon': 'Asia/Yangon',
  'Asia/Saigon': 'Asia/Ho_Chi_Minh',
  'Atlantic/Faeroe': 'Atlantic/Faroe',
  'Europe/Kiev': 'Europe/Kyiv',
  'Pacific/Enderbury': 'Pacific/Kanton',
}

export const serverTimeZone = (): string => presentName(Intl.DateTimeFormat().resolvedOptions().timeZone)

function presentName(zone: string): string {
  const present = RENAMED[zone]
  return present && isTimeZone(present) ? present : zone
}

export function pickLists(locale: string): PickLists {
  const currencies = listCurrencies().map((code) => ({ value: code, text: currencyName(code, locale) }))
  const zones = new Set([...Intl.supportedValuesOf('timeZone').map(presentName), 'UTC', serverTimeZone()])
  const timeZones = [...zones].sort().map((zone) => ({ value: zone, text: zone.replaceAll('_', ' ') }))
  return { currencies, timeZones }
}
