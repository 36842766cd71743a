/** What is told of a bottle: everything may be left out. Choices are those of the form. */
import { z } from 'zod'
import { wordSet } from '@/lib/calc/input/word-set'
import { inWords } from '@/lib/domain/identify/identify-text'
import { OBSERVATION_KEYS, OBSERVATIONS, type ObservationKey } from '@/lib/domain/identify/knowledge/observations'
import { wordsFor } from '@/lib/domain/words'

const text = (meaning: string, longest: number) => z.string().max(longest).default('').describe(meaning)

function meaningOf(key: ObservationKey): string {
  const { question, choices } = OBSERVATIONS[key]
  const each = Object.entries<string>(choices).map(([choice, word]) =>
    choice === word ? choice : `${choice}: ${word}`,
  )
  return inWords(`${question} ${each.join('; ')}.`, wordsFor('US'))
}

const choice = (key: ObservationKey) =>
  z.enum(Object.keys(OBSERVATIONS[key].choices)).optional().describe(meaningOf(key))

const choices = Object.fromEntries(OBSERVATION_KEYS.map((key) => [key, choice(key)])) as Record<
  ObservationKey,
  ReturnType<typeof choice>
>

const codes = (meaning: string) => z.array(z.string().min(1).max(20)).max(50).default([]).describe(meaning)

const maker = z.strictObject({
  name: z.string().min(1).max(60).describe('As the shop calls it.'),
  sourceCodes: codes('Three figures of the US source code.'),
  factoryMarks: codes('First character of an etched code.'),
  janLetters: codes('Letters after JAN.'),
})

export const identifyInput = z.strictObject({
  print: text('Type as printed or etched: "6V6GT", "EL34/6CA7", "JAN-6L6WGB".', 60),
  codes: text('Service and source codes, with commas: "VT-107A, 188".', 120),
  date: text('Date code or etched code: "188-5-32", "I61 B0D3".', 40),
  choices: z.strictObject(choices).default({}).describe('What was looked at.'),
  skipped: z
    .array(z.enum([...OBSERVATION_KEYS, 'print', 'date']))
    .max(30)
    .default([])
    .describe('Looked for and not to be told: not asked again.'),
  makers: z.array(maker).max(200).default([]).describe('The shop’s own list of makers; none come with the program.'),
  thisYear: z.number().int().min(1990).max(2200).default(2026).describe('No year after it is considered.'),
  words: wordSet,
})

export type IdentifyInput = z.output<typeof identifyInput>
