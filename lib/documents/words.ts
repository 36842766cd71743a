/** The shop's words for what only papers say, on top of the trade words. */
import { type Words as TradeWords, wordsFor } from '@/lib/domain/words'
import type { Words } from './facts'

export { capital } from '@/lib/domain/words'

export type Vocabulary = TradeWords & {
  /** The lead from the wall. */
  readonly cord: string
  readonly labour: string
  readonly pickupTitle: string
  readonly collected: string
}

export function vocabulary(words: Words): Vocabulary {
  const own =
    words === 'US'
      ? { cord: 'line cord', labour: 'Labor', pickupTitle: 'Pickup sheet', collected: 'Picked up' }
      : { cord: 'mains lead', labour: 'Labour', pickupTitle: 'Collection sheet', collected: 'Collected' }
  return { ...wordsFor(words), ...own }
}
