/** What every accepted job goes through on one day at the bench, and the sign-off after it. */
import type { Who } from '@/seed/shop/people'
import { type Round, read } from './bench'
import { release, type SafetyFigures, signSafety } from './safety'
import { on, type Story } from './story'
import { finishWork, fitTubes, printWorkOrder, tickOff } from './working'

export type WorkedOff = {
  readonly signedDaysAgo: number
  /** After the work. */
  readonly round: Omit<Round, 'phase'>
  readonly figures: SafetyFigures
}

/** Not every day at the same minute. */
function clockOn(daysAgo: number, hour: number, minute: number): string {
  const minutes = minute + ((daysAgo * 7) % 23)
  return `${hour + Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`
}

export function workedOff(daysAgo: number, who: Who, { signedDaysAgo, round, figures }: WorkedOff): Story['scenes'] {
  return [
    on(daysAgo, clockOn(daysAgo, 10, 10), who, printWorkOrder),
    on(daysAgo, clockOn(daysAgo, 10, 35), who, fitTubes),
    on(daysAgo, clockOn(daysAgo, 11, 30), who, tickOff()),
    on(daysAgo, clockOn(daysAgo, 12, 15), who, read({ phase: 'after', ...round })),
    on(daysAgo, clockOn(daysAgo, 12, 30), who, finishWork),
    on(signedDaysAgo, clockOn(signedDaysAgo, 13, 5), who, signSafety(figures)),
    on(signedDaysAgo, clockOn(signedDaysAgo, 16, 35), who, release),
  ]
}
