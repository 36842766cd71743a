/** What was told, as part of the address: so it can be sent to somebody, gone back to and printed. */
import { isChoice, OBSERVATION_KEYS, type ObservationKey } from '@/lib/domain/identify/knowledge/observations'
import type { Seen } from '@/lib/domain/identify/seen'
import type { StockEntry } from '@/lib/domain/identify/stock-entry'

export const PLACE = '/stock/identify'
export const FORM_ID = 'told'
/** Value of an answer that was looked for and cannot be told. */
export const CANNOT_TELL = 'cannot-tell'
export const NO_PRINT = 'no-print'
export const NO_DATE = 'no-date'

export const TEXTS = { print: 60, codes: 120, date: 40, other: 160 } as const
type TextKey = keyof typeof TEXTS
const TEXT_KEYS = Object.keys(TEXTS) as readonly TextKey[]

export type Query = Readonly<Record<string, string | readonly string[] | undefined>>

function one(query: Query, name: string): string {
  const value = query[name]
  return (typeof value === 'string' ? value : (value?.[0] ?? '')).trim()
}

/** An address may be typed by hand: what is no answer of the form is left out. */
export function seenOf(query: Query): Seen {
  const texts = Object.fromEntries(TEXT_KEYS.map((key) => [key, one(query, key).slice(0, TEXTS[key])]))
  const answered = OBSERVATION_KEYS.filter((key) => isChoice(key, one(query, key)))
  const skipped = OBSERVATION_KEYS.filter((key) => one(query, key) === CANNOT_TELL)
  return {
    ...(texts as Record<TextKey, string>),
    choices: Object.fromEntries(answered.map((key) => [key, one(query, key)])),
    skipped: [
      ...skipped,
      ...(one(query, NO_PRINT) === '' ? [] : (['print'] as const)),
      ...(one(query, NO_DATE) === '' ? [] : (['date'] as const)),
    ],
  }
}

function entriesOf({ choices, skipped, ...texts }: Seen): [string, string][] {
  return [
    ...TEXT_KEYS.map((key): [string, string] => [key, texts[key]]),
    ...OBSERVATION_KEYS.map((key): [string, string] => [
      key,
      choices[key] ?? (skipped.includes(key) ? CANNOT_TELL : ''),
    ]),
    [NO_PRINT, skipped.includes('print') ? '1' : ''],
    [NO_DATE, skipped.includes('date') ? '1' : ''],
  ]
}

export function addressOf(seen: Seen): string {
  const query = new URLSearchParams(entriesOf(seen).filter(([, value]) => value !== ''))
  return query.size > 0 ? `${PLACE}?${query}` : PLACE
}

export const answered = (seen: Seen, key: ObservationKey, choice: string): Seen => ({
  ...seen,
  choices: { ...seen.choices, [key]: choice },
  skipped: seen.skipped.filter((one) => one !== key),
})

export function forgotten(seen: Seen, key: ObservationKey): Seen {
  const { [key]: _, ...choices } = seen.choices
  return { ...seen, choices, skipped: seen.skipped.filter((one) => one !== key) }
}

export const cannotTell = (seen: Seen, key: ObservationKey | 'print' | 'date'): Seen => {
  const without = key === 'print' || key === 'date' ? seen : forgotten(seen, key)
  return { ...without, skipped: [...without.skipped, key] }
}

/** Where on the page it is answered. */
export const placeOf = (key: ObservationKey | 'print' | 'date'): string =>
  key === 'print' || key === 'date' ? '#print-fields' : `#ask-${key}`

/** How many things were told. */
export const countSeen = ({ print, codes, date, choices }: Seen): number =>
  [print, codes, date].filter((text) => text !== '').length + Object.keys(choices).length

export const hasSeen = (seen: Seen): boolean => entriesOf(seen).some(([, value]) => value !== '')

/** The stock form, filled with what was found. */
export function stockAddress(designation: string, entry: StockEntry): string {
  const told = Object.entries({ designation, ...entry }).filter(([, text]) => text !== '')
  return `/stock/new?${new URLSearchParams(told)}`
}
