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

describe('the line above: type and change', () => {
  const types = (text: string) => readDateCode(text).types.map(({ type, code, source }) => [code, type, source])

  // I6, GA and IS are read in collectors' pages that list codes; mC and F9 in one with years; the others from memory.
  test.each([
    ['I61', 'I61', 'ECC83', 'etched-type'],
    ['I63', 'I63', 'ECC83', 'etched-type'],
    ['mC1', 'mC1', 'ECC83', 'etched-change'],
    ['F92', 'F92', 'ECC83', 'etched-change'],
    ['GA1', 'GA1', 'ECC88', 'etched-type'],
    ['IS1', 'IS1', 'GZ37', 'etched-type'],
    ['K61', 'K61', 'ECC82', 'memory'],
    ['XF2', 'Xf2', 'EL34', 'memory'],
    ['rX4', 'rX4', 'EL84', 'memory'],
    ['9r6', '9r6', 'EF86', 'memory'],
    ['f32', 'f32', 'GZ34', 'memory'],
    ['K6', 'K6', 'ECC82', 'memory'],
  ])('%s is %s, the %s (%s)', (text, code, type, source) => {
    expect(types(text)).toEqual([[code, type, source]])
    expect(readDateCode(text).unread).toEqual([])
  })

  test.each(['GA', 'IS', 'RX', 'XF', 'K6A', 'Xf22', 'YY5', 'EK', '··', '7LG'])(
    '%s is a word, two changes or a code of no list here: no type is guessed',
    (text) => {
      expect(types(text)).toEqual([])
    },
  )

  test('a type and its change leave the years open: Xf2 of itself says none', () => {
    expect(years('Xf2')).toBeNull()
    expect(readDateCode('Xf2').types[0]?.sentence).toContain('counted in their order, which says no year by itself')
  })

  test.each(['Xf2 B2D4', 'XF2B2D4', 'xf2-b2d4', 'Xf2/B2D4', 'Xf2, B2D4'])(
    '%s is the EL34, April of 1962 or 1972, factory mark B and no name for it',
    (text) => {
      expect(types(text)).toEqual([['Xf2', 'EL34', 'memory']])
      expect(years(text)).toEqual([1962, 1972])
      expect(first(text)).toMatchObject({ month: 4, factoryMark: 'B' })
      expect(first(text).sentence).not.toMatch(/factory/i)
    },
  )

  // The example of a collector's page: IS1 over B2H3 on a GZ37, read there as the third week of August, most likely 1962.
  test('IS1 B2H3 is the GZ37 of August 1962 (or, the figure alone, 1972)', () => {
    expect(types('IS1 B2H3')).toEqual([['IS1', 'GZ37', 'etched-type']])
    expect(first('IS1 B2H3')).toMatchObject({ month: 8, years: [1962, 1972] })
  })

  test('a 4 in front is the triangle it mostly is, and is said to have been read so', () => {
    expect(first('49A')).toMatchObject({ factoryMark: 'Δ', years: [1959] })
    expect(first('∆9A')).toMatchObject({ factoryMark: 'Δ' })
    expect(
      readDateCode('Xf2 49A')
        .remarks.map(({ sentence }) => sentence)
        .join(),
    ).toContain('triangle')
    expect(readDateCode('B9A').remarks).toEqual([])
  })

  test('two characters, an old line of before about 1956, are not read, and that is said', () => {
    expect(readDateCode('BK')).toMatchObject({ readings: [], types: [], unread: ['BK'] })
    expect(readDateCode('BK').remarks[0]?.sentence).toMatch(/before about 1956.*was not read/)
  })
})

test('what fits no code is told as unread', () => {
  expect(readDateCode('zZ4 5-32')).toMatchObject({ unread: ['ZZ4'], types: [], readings: [{ week: 32 }] })
  expect(readDateCode('  ')).toEqual({ readings: [], types: [], unread: [], remarks: [] })
})
