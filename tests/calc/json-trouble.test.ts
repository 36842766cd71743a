import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { jsonTrouble, lineAndColumn } from '@/lib/calc/input/json-trouble'
import { parseInput } from '@/lib/calc/input/parse-input'

const parses = (text: string): boolean => {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

describe('agrees with the JSON parser of the engine', () => {
  test('every JSON text is let through', () => {
    fc.assert(fc.property(fc.json(), (text) => jsonTrouble(text) === null))
  })

  test('every text that the engine refuses has its trouble, and no other', () => {
    const spoilt = fc
      .tuple(
        fc.json(),
        fc.nat(),
        fc.constantFrom('', ',', '}', ']', '"', ':', '0', '-', '\\', '\u0001', ' ', 'NaN', '\n'),
      )
      .map(([text, at, mark]) => {
        const place = at % (text.length + 1)
        return text.slice(0, place) + mark + text.slice(place + (at % 2))
      })
    fc.assert(
      fc.property(spoilt, (text) => {
        const trouble = jsonTrouble(text)
        if (trouble?.kind !== 'key-twice') expect(trouble === null).toBe(parses(text))
      }),
      { numRuns: 2000 },
    )
  })
})

test('100 levels are read, and a million brackets are refused without a crash', () => {
  expect(jsonTrouble(`${'['.repeat(100)}${']'.repeat(100)}`)).toBeNull()
  expect(jsonTrouble('['.repeat(1_000_000))).toMatchObject({ expected: 'no more than 100 levels' })
})

test('line and column count from 1, over every kind of line end', () => {
  expect(lineAndColumn('ab\ncd\r\nef', 0)).toEqual({ line: 1, column: 1 })
  expect(lineAndColumn('ab\ncd\r\nef', 8)).toEqual({ line: 3, column: 2 })
})

const fault = (text: string) => {
  const parsed = parseInput(text)
  if (parsed.ok) throw new Error(`Not refused: ${text}`)
  return parsed.fault
}

test.each([
  ['', 'input-empty', undefined, undefined],
  [' \n', 'input-empty', undefined, undefined],
  ['{\n  "a": 1,\n}', 'not-json', 3, 1],
  ['{"a": NaN}', 'not-json', 1, 7],
  ['{"a": -Infinity}', 'not-json', 1, 7],
  ['{"a": 1} x', 'not-json', 1, 10],
  ['{"a": 01}', 'not-json', 1, 8],
  ["{'a': 1}", 'not-json', 1, 2],
  ['{"a": 1', 'not-json', 1, 8],
  ['{"plateVolts": 450,\n "plateVolts": 45}', 'key-twice', 2, 2],
])('%j is %s at line %s, column %s', (text, code, line, column) => {
  expect(fault(text)).toMatchObject({ code, ...(line ? { line, column } : {}) })
})

test('sentences name what was found', () => {
  expect(fault('{"a": NaN}').sentence).toBe(
    'Line 1, column 7: expected a value, found NaN, which is no number in JSON. The input is no JSON.',
  )
  expect(fault('{"a": [{"b": 1, "b": 2}]}')).toMatchObject({
    path: 'a[0].b',
    sentence: 'Line 1, column 17: a[0].b is given twice; give it once.',
  })
})

test('a byte order mark is no fault', () => {
  expect(parseInput('\uFEFF{"a": 1}')).toEqual({ ok: true, value: { a: 1 } })
})
