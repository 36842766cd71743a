/** What somebody tells of a bottle. Everything may be left out. */
import { type Choice, isChoice, OBSERVATION_KEYS, type ObservationKey } from './knowledge/observations'

export type Seen = {
  /** Type as printed or etched: "6V6GT", "EL34/6CA7", "JAN-6L6WGB". */
  readonly print: string
  /** Service and maker's numbers: "VT-107A, 188". */
  readonly codes: string
  /** Date code or etched code. */
  readonly date: string
  /** Anything else on it; kept as text, it weighs nothing. */
  readonly other: string
  readonly choices: Readonly<Partial<Record<ObservationKey, Choice>>>
  /** Looked for and not to be told: not asked again. */
  readonly skipped: readonly (ObservationKey | 'print' | 'date')[]
}

export const NOTHING_SEEN: Seen = { print: '', codes: '', date: '', other: '', choices: {}, skipped: [] }

export function seenChoices({ choices }: Seen): readonly (readonly [ObservationKey, Choice])[] {
  return OBSERVATION_KEYS.flatMap((key) => {
    const choice = choices[key]
    if (choice === undefined) return []
    if (!isChoice(key, choice)) throw new Error(`${key} cannot be answered with ${choice}`)
    return [[key, choice] as const]
  })
}

/** Makers are the shop's own entries; none come with the program. */
export type OwnMaker = {
  readonly name: string
  /** Three figures of the US source code. */
  readonly sourceCodes: readonly string[]
  /** First character of an etched code. */
  readonly factoryMarks: readonly string[]
  /** Letters after JAN. */
  readonly janLetters: readonly string[]
}
