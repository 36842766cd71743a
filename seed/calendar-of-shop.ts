/**
 * Dates of the demo, all counted back from the day of seeding, so that none of
 * them rots. The shop is open Monday to Saturday: events lie on working days
 * before that day, promises and calibrations are counted in plain days.
 */
import { addDays, type Day, dayInZone, daysBetween, readDay } from '@/lib/domain/calendar'
import { instantInZone, readClock } from '@/lib/domain/quote/answer'

export type ShopCalendar = {
  readonly today: Day
  /** "10:15" on the n-th working day before today; n is 1 or more. */
  readonly at: (workingDaysAgo: number, clock: string) => Date
  /** Plain days from today: −1 is yesterday. */
  readonly day: (offset: number) => Day
}

const A_SUNDAY = readDay('2023-01-01') as Day

const isSunday = (day: Day): boolean => daysBetween(A_SUNDAY, day) % 7 === 0

function workingDayBefore(today: Day, count: number): Day {
  let day = today
  for (let left = count; left > 0; ) {
    day = addDays(day, -1)
    if (!isSunday(day)) left -= 1
  }
  return day
}

function minutesOf(clock: string): number {
  const minutes = readClock(clock)
  if (minutes === null) throw new Error(`"${clock}" is no time of day`)
  return minutes
}

export function shopCalendar(now: Date, zone: string): ShopCalendar {
  const today = dayInZone(now, zone)
  return {
    today,
    at: (workingDaysAgo, clock) => {
      if (workingDaysAgo < 1) throw new Error(`Events of the demo lie before today, got ${workingDaysAgo} days ago`)
      return instantInZone(workingDayBefore(today, workingDaysAgo), minutesOf(clock), zone)
    },
    day: (offset) => addDays(today, offset),
  }
}
