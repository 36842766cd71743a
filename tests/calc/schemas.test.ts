import Ajv2020 from 'ajv/dist/2020'
import { describe, expect, test } from 'vitest'
import { type CalculatorName, loadCalculator, SUMMARIES } from '@/lib/calc/calculators'
import { answer } from './answers'

const NAMES = Object.keys(SUMMARIES) as CalculatorName[]
const SCHEMA_CODES = new Set(['missing', 'wrong-type', 'out-of-bounds', 'not-a-choice', 'unknown-key'])

type Path = readonly (string | number)[]

function placesOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path]
  const inner = Object.entries(value).flatMap(([key, one]) =>
    placesOf(one, [...path, Array.isArray(value) ? Number(key) : key]),
  )
  return [path, ...inner]
}

/** A copy in which the place is changed; undefined takes it out. */
function changed(value: unknown, [step, ...rest]: Path, to: unknown): unknown {
  if (step === undefined) return to
  const copy = structuredClone(value) as Record<string | number, unknown>
  if (rest.length === 0 && to === undefined && Array.isArray(copy)) copy.splice(Number(step), 1)
  else if (rest.length === 0 && to === undefined) delete copy[step]
  else copy[step] = changed(copy[step], rest, to)
  return copy
}

const MUTATIONS: readonly unknown[] = [undefined, null, 'NaN', '', true, -1, -1e9, 1e9, 0.5, [], {}, { odd: 1 }]

describe.each(NAMES)('%s', (name) => {
  test('its schema is a JSON Schema of 2020-12 that takes its example', async () => {
    const { schema, example } = await loadCalculator(name)
    const ajv = new Ajv2020({ strict: false })
    expect(schema()).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' })
    expect(ajv.validateSchema(schema())).toBe(true)
    expect(ajv.validate(schema(), example), ajv.errorsText()).toBe(true)
  })

  test('its example is answered, twice with the same text', async () => {
    const { example } = await loadCalculator(name)
    const text = JSON.stringify(await answer(name, example))
    expect(text).toBe(JSON.stringify(await answer(name, example)))
    expect(text).not.toMatch(/null,null|NaN|Infinity/)
  })

  // The other validator is a general-purpose one (JSON Schema 2020-12); ours must refuse what it refuses, and no more.
  test('what the schema refuses is refused, and nothing else is refused by its codes', async () => {
    const { schema, example, answer: answerTo } = await loadCalculator(name)
    const valid = new Ajv2020({ strict: false }).compile(schema())
    const added = changed(example, ['odd'], 1)
    const inputs = [added, ...placesOf(example).flatMap((path) => MUTATIONS.map((to) => changed(example, path, to)))]
    let refused = 0
    for (const given of inputs) {
      const result = answerTo(given)
      const bySchema = !result.ok && result.fault.some(({ code }) => SCHEMA_CODES.has(code))
      expect(bySchema, JSON.stringify(given)).toBe(!valid(given))
      if (!result.ok) {
        refused += 1
        for (const one of result.fault) expect(one.sentence).toMatch(/^.{10,300}\.$/)
      }
    }
    expect(refused).toBeGreaterThan(inputs.length / 4)
  })

  test('what is asked for by name: every key of the schema says what it means or is one of a choice', async () => {
    const { schema } = await loadCalculator(name)
    const numbers: string[] = []
    JSON.stringify(schema(), (key, value) => {
      if (value?.type === 'number' && value.description === undefined && !/^(wallVolts|marked)/.test(key))
        numbers.push(key)
      return value
    })
    expect(numbers).toEqual([])
  })
})
