/**
 * Days and instants. An instant is a `Date` in UTC; a day is text YYYY-MM-DD
 * in the shop's zone. The clock is never read here: callers pass the instant.
 */
export type Day = string & { readonly __day: true }

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/

export function readDay(text: string): Day | null {
  const parts = DAY.exec(text.trim())
  if (!parts) return null
  const date = new Date(`${text.trim()}T00:00:00Z`)
  const real = Number.isFinite(date.getTime()) && date.toISOString().slice(0, 10) === text.trim()
  return real ? (text.trim() as Day) : null
}

/** A formatter takes longer to make than a thousand days to write. */
const DAY_FORMATS = new Map<string, Intl.DateTimeFormat>()

function dayFormat(zone: string): Intl.DateTimeFormat {
  const known = DAY_FORMATS.get(zone)
  if (known) return known
  const made = new Intl.DateTimeFormat('en-CA', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' })
  DAY_FORMATS.set(zone, made)
  return made
}

export const dayInZone = (instant: Date, zone: string): Day => dayFormat(zone).format(instant) as Day

export function addDays(day: Day, days: number): Day {
  const date = new Date(`${day}T00:00:00Z`)
  date.setUTCDate(date.getUTCDate() + days)
  return date.toISOString().slice(0, 10) as Day
}

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000)
}

export function formatDay(day: Day | string, locale: string): string {
  const format = new Intl.DateTimeFormat(locale, { timeZone: 'UTC', day: 'numeric', month: 'short', year: 'numeric' })
  return format.format(new Date(`${day}T00:00:00Z`))
}

export function formatInstant(instant: Date, zone: string, locale: string): string {
  const format = new Intl.DateTimeFormat(locale, {
    timeZone: zone,
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
  })
  return format.format(instant)
}

/** The last second of a day in a zone, found without a zone table of our own. */
export function endOfDay(day: Day, zone: string): Date {
  // Zones lie within 14 h of UTC; the offset is found from the wall clock shown at the guess.
  const guess = Date.parse(`${day}T23:59:59Z`)
  const last = new Date(guess - zoneOffset(new Date(guess - zoneOffset(new Date(guess), zone)), zone))
  // Where the clock goes back at midnight, that hour of the day comes twice.
  const again = new Date(last.getTime() + 3_600_000)
  return dayInZone(again, zone) === day ? again : last
}

function zoneOffset(instant: Date, zone: string): number {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  }).formatToParts(instant)
  const part = (type: string) => Number(parts.find((each) => each.type === type)?.value)
  const wall = Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'), part('second'))
  return wall - Math.floor(instant.getTime() / 1000) * 1000
}

export function isTimeZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone })
    return true
  } catch {
    return false
  }
}
