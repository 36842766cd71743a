/** A question, how much its answer is expected to settle, and what each answer would mean. */
import type { Choice, ObservationKey } from '../knowledge/observations'
import { entropyOfParts } from './spread'

export type NextAnswer = {
  readonly choice: Choice
  readonly word: string
  /** How likely this answer is, as far as is known now. */
  readonly chance: number
  /** What leads then: a designation, a span of years, or null for none known here. */
  readonly leads: string | null
  /** Share of what leads then. */
  readonly share: number
}

export type NextLook = {
  readonly settles: 'version' | 'years'
  readonly key: ObservationKey | 'print' | 'date'
  readonly label: string
  readonly question: string
  /** Expected to be taken from the uncertainty. */
  readonly bits: number
  readonly answers: readonly NextAnswer[]
}

/** Parts that exclude each other after an answer, not yet divided by its chance. */
export type Split = { readonly choice: Choice; readonly word: string; readonly parts: readonly number[] }

export type Candidate = Omit<NextLook, 'bits' | 'answers'> & {
  readonly now: readonly number[]
  readonly splits: readonly Split[]
  readonly leader: (parts: readonly number[]) => { readonly leads: string | null; readonly share: number }
}

/** A rarer answer is not listed, unless it is among the first few. */
const LEAST_CHANCE = 0.02
const ALWAYS_LISTED = 4

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0)

/** gain = H(now) - sum over the answers of P(answer) * H(after it), in bits. */
export function gainBits(now: readonly number[], splits: readonly Split[]): number {
  const after = splits.reduce((total, { parts }) => total + sum(parts) * entropyOfParts(parts), 0)
  return entropyOfParts(now) - after / sum(now)
}

export function looked({ now, splits, leader, ...question }: Candidate): NextLook {
  const answers = splits
    .map(({ choice, word, parts }) => ({ choice, word, chance: sum(parts) / sum(now), ...leader(parts) }))
    .sort((a, b) => b.chance - a.chance)
    .filter(({ chance }, at) => chance >= LEAST_CHANCE || at < ALWAYS_LISTED)
  return { ...question, bits: gainBits(now, splits), answers }
}
