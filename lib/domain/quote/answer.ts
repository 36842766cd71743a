/** The customer's answer: who, how and when, as it is written down for good. */
import { type Day, dayInZone, endOfDay } from '@/lib/domain/calendar'

export const ANSWER_WAYS = ['in person', 'by phone', 'by e-mail', 'by post'] as const
export type AnswerWay = (typeof ANSWER_WAYS)[number]

/** Where the job goes after a yes. */
export const AFTER_YES = ['on-bench', 'waiting-for-parts'] as const
export type AfterYes = (typeof AFTER_YES)[number]

/** `detail` is the number called, or the address written from. "by phone, 207-555-0177" */
export const answerHowText = (way: AnswerWay, detail: string): string =>
  detail.trim() === '' ? way : `${way}, ${detail.trim()}`

const CLOCK = /^([01]?\d|2[0-3])[:.]([0-5]\d)$/

/** "9:05" or "9.05" in 24 hours, as minutes from midnight. */
export function readClock(text: string): number | null {
  const parts = CLOCK.exec(text.trim())
  return parts ? Number(parts[1]) * 60 + Number(parts[2]) : null
}

/** "09:05" of an instant, in the shop's zone. */
export function clockInZone(instant: Date, zone: string): string {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    hour: '2-digit',
    minute: '2-digit',
  })
  return format.format(instant)
}

/**
 * The instant at which the shop's clock shows this minute of this day. Of an hour that the
 * clock shows twice it is the first; an hour that it skips is taken as the one after it.
 */
export function instantInZone(day: Day, minutes: number, zone: string): Date {
  const guess = endOfDay(day, zone).getTime() - (24 * 60 - minutes) * 60_000 + 1000
  const around = [-120, -60, -30, 0, 30, 60, 120].map((off) => new Date(guess + off * 60_000))
  const shows = (instant: Date) => dayInZone(instant, zone) === day && readClock(clockInZone(instant, zone)) === minutes
  return around.find(shows) ?? new Date(guess)
}
