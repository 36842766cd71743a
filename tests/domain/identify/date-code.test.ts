/**
 * Date codes as sets of years. Sources: a collector's page on EIA source and date codes (US); several collectors'
 * pages on European etched codes, whose examples B0D and the rule of the 8 are used here; one page for change codes.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readDateCode, yearsOfCodes } from '@/lib/domain/identify/marks/date-code'

const years = (text: string) => yearsOfCodes(readDateCode(text))
const first = (text: string) => readDateCode(text).readings[0] ?? expect.fail(`${text} was not read`)

describe('US: source code, year, week', () => {
  test.each(['188-5-32', '188532', '188 5 32'])(
    '%s: source 188, week 32, and 1945, 1955 and 1965 among the years',
    (text) => {
      expect(first(text)).toMatchObject({ system: 'us-week', sourceCode: '188', week: 32 })
      expect(years(text)).toEqual([1945, 1955, 1965, 1975, 1985, 1995])
    },
  )

  test('the code may stand apart from the source code: 5-32 and 532', () => {
    expect(first('5-32')).toMatchObject({ sourceCode: null, week: 32 })
    expect(years('532')).toEqual(years('188-5-32'))
  })

  test('two figures are one year: 55-32, 5532, 188-55-32', () => {
    for (const text of ['55-32', '5532', '188-55-32']) expect(years(text)).toEqual([1955])
  })

  test('no year has a week 54 or 00: not read, never forced', () => {
    for (const text of ['5-54', '554', '5-00', '188-5-60']) expect(years(text)).toBeNull()
  })

  test('a one-figure year is never one year alone, and every year of it ends in the figure', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 1, max: 53 }), (figure, week) => {
        const found = years(`${figure}-${String(week).padStart(2, '0')}`) ?? []
        expect(found.length).toBeGreaterThan(1)
        expect(found.every((year) => year % 10 === figure)).toBe(true)
      }),
    )
  })
})

describe('European etched codes', () => {
  test('B0D is April 1960 with factory mark B', () => {
    expect(first('B0D')).toMatchObject({ system: 'etched-month', month: 4, factoryMark: 'B' })
    expect(years('B0D')).toEqual([1960])
  })

  test('three characters with 8: 1958; four with 8: 1968 or 1978', () => {
    expect(years('R8K')).toEqual([1958])
    expect(years('R8K2')).toEqual([1968, 1978])
  })

  test('A to L are January to December; M is no month', () => {
    expect([...'ABCDEFGHIJKL'].map((letter) => first(`B9${letter}`).month)).toEqual([
      1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12,
    ])
    expect(years('B9M')).toBeNull()
  })

  test('the factory that never gave a week leaves the decade open: ≠8C is 1958, 1968 or 1978', () => {
    expect(years('≠8C')).toEqual([1958, 1968, 1978])
  })

  test.each([
    ['mC1', [1955, 1956]],
    ['F91', [1957, 1958]],
    ['F92', [1959]],
    ['I61', [1959, 1960, 1961, 1962, 1963, 1964]],
  ])('change code %s of the ECC83: %j', (text, expected) => {
    expect(years(text)).toEqual(expected)
  })

  test('two lines cut each other: I61 with B0D3 leaves 1960', () => {
    expect(years('B0D3')).toEqual([1960, 1970])
    expect(years('I61 B0D3')).toEqual([1960])
  })

  test('codes that exclude each other leave no year: F92 with B0D', () => {
    expect(years('F92 B0D')).toEqual([])
  })
})

test('what fits no code is told as unread', () => {
  expect(readDateCode('rX4 5-32')).toMatchObject({ unread: ['RX4'], readings: [{ week: 32 }] })
  expect(readDateCode('  ')).toEqual({ readings: [], unread: [] })
})
