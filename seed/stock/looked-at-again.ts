/** What came to light when a few tubes of the stock were looked at once more. */
import type { TestEntry } from '@/lib/domain/stock/test-entry'
import type { TubeCondition } from '@/lib/domain/stock/tube'
import type { Who } from '@/seed/shop/people'
import type { BookKey } from './book-values'

export type Finding = {
  readonly book: BookKey
  readonly condition: TubeCondition
  /** Within its lot, from 0; the tested ones come first. */
  readonly place: number
  readonly daysAgo: number
  readonly clock: string
  readonly by: Who
  readonly read: Partial<Pick<TestEntry, 'leakage' | 'gas' | 'noise' | 'microphony' | 'note'>>
  /** Plate current over what it read before, or over the book value when it was untested. Null: a short stopped the test. */
  readonly strength: number | null
}

export const LOOKED_AT_AGAIN: readonly Finding[] = [
  {
    ...{ book: 'EL84', condition: 'pull', place: 2, daysAgo: 29, clock: '15:10', by: 'anselm' },
    read: { note: 'The short shows when it is tapped.' },
    strength: null,
  },
  {
    ...{ book: 'EL84', condition: 'pull', place: 3, daysAgo: 29, clock: '15:20', by: 'anselm' },
    read: { gas: 'slight haze at the lower mica' },
    strength: 0.74,
  },
  {
    ...{ book: '12AX7', condition: 'new-old-stock-boxed', place: 0, daysAgo: 12, clock: '14:40', by: 'tess' },
    read: { noise: 'quiet, fit for a first stage', microphony: 'none' },
    strength: 0.99,
  },
  {
    ...{ book: '12AX7', condition: 'used-tested', place: 1, daysAgo: 38, clock: '11:30', by: 'anselm' },
    read: { microphony: 'strong, second stages only' },
    strength: 1.01,
  },
  {
    ...{ book: '6V6GT', condition: 'used-tested', place: 2, daysAgo: 16, clock: '14:00', by: 'anselm' },
    read: { leakage: '12 µA heater to cathode' },
    strength: 0.98,
  },
]
