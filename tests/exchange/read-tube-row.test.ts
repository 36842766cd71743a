import { describe, expect, it } from 'vitest'
import type { Day } from '@/lib/domain/calendar'
import { stockType } from '@/lib/domain/stock/stock-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { wordsFor } from '@/lib/domain/words'
import { faultTable } from '@/lib/exchange/fault-table'
import { type RowReading, readTubeRow } from '@/lib/exchange/read-tube-row'
import { guessedColumns, headingsKey } from '@/lib/exchange/tube-columns'

const HEADINGS = [
  'Stock no',
  'Valve',
  'Grade',
  'Asking price',
  'Tester',
  'Test date',
  'Va',
  'Vg2',
  'Vg',
  'Ia (mA)',
  'gm',
]
const reading: RowReading = {
  mapping: guessedColumns(HEADINGS),
  ...{ digits: 2, currency: 'GBP', words: wordsFor('UK'), today: '2031-05-06' as Day },
  typeOf: (designation) => stockType(designation, HANDBOOK_ONLY),
}
const read = (over: Readonly<Record<number, string>> = {}) => {
  const row = ['B-7', 'EL34', 'NOS boxed', '£45,50', 'Tester 1', '2031-05-01', '250', '250', '-13,5', '98,2', '10.9']
  return readTubeRow(
    row.map((field, place) => over[place] ?? field),
    reading,
  )
}

describe('headings in bench words', () => {
  it('are guessed', () => {
    expect(reading.mapping).toEqual([
      ...[
        'mark',
        'designation',
        'condition',
        'price',
        'instrumentName',
        'day',
        'plateVolts',
        'screenVolts',
        'gridVolts',
      ],
      ...['plateMilliamps', 'gm'],
    ])
  })

  it('a meaning goes to one column only, its own heading before a guess', () => {
    expect(guessedColumns(['Number', 'Mark', 'Colour of sky'])).toEqual([null, 'mark', null])
  })

  it('are the same set however they are spaced and cased', () => {
    expect(headingsKey(['Plate volts', 'gm µmho'])).toBe(headingsKey(['plate  VOLTS', 'gm (umho)']))
  })
})

describe('a row of a list', () => {
  it('is a tube with its test; decimal comma and point are both read', () => {
    expect(read()).toMatchObject({
      ok: true,
      tube: {
        details: { mark: 'B-7', designation: 'EL34', condition: 'new-old-stock-boxed', price: 4550, cost: null },
        whereabouts: 'in-stock',
        test: {
          day: '2031-05-01',
          gridVoltage: -13.5,
          sections: [{ plateCurrent: expect.closeTo(0.0982, 9), transconductance: expect.closeTo(0.0109, 9) }],
        },
      },
    })
  })

  it('keeps microphony beside noise; a list with noise alone may tell of both in it', () => {
    const test = (headings: readonly string[], fields: readonly string[]) => {
      const row = ['B-7', 'EL34', 'NOS boxed', '', 'Tester 1', '2031-05-01', '250', '250', '-13,5', '98,2', '10.9']
      const mapping = guessedColumns([...HEADINGS, ...headings])
      const found = readTubeRow([...row, ...fields], { ...reading, mapping })
      return found.ok ? found.tube.test : found
    }
    expect(test(['Noise', 'Microphonics'], ['hiss', 'slight'])).toMatchObject({ noise: 'hiss', microphony: 'slight' })
    expect(test(['Noise'], ['rings a little'])).toMatchObject({ noise: 'rings a little', microphony: null })
    expect(test(['Noise', 'Microphony'], ['', ''])).toMatchObject({ noise: '', microphony: '' })
  })

  it('without a reading has no test, and an empty price is nothing asked', () => {
    expect(read({ 3: '', 9: '', 10: '' })).toMatchObject({ ok: true, tube: { test: null, details: { price: 0 } } })
  })

  it('1,234 is one and a fraction, never a thousand: more decimals than the currency has are refused', () => {
    const refused = read({ 3: '1,234' })
    expect(refused.ok ? [] : refused.faults.map(({ sentence }) => sentence)).toEqual([
      'Price: “1,234” has more than 2 decimals; GBP has 2.',
    ])
  })

  it.each([
    [{ 1: '' }, 'designation', 'Type is empty. It must say what is printed on it: 6L6GC, EL34.'],
    [{ 2: 'lovely' }, 'condition', 'Condition: “lovely” is not one of current production;'],
    [{ 8: '13,5' }, 'gridVolts', 'Grid volts: 13.5 V is too high. It must be between -300 and 0 V.'],
    [{ 9: '4000' }, 'plateMilliamps', 'Plate current, mA: 4000 mA is too high. It must be between 0 and 1000 mA.'],
    [{ 5: '01.05.2031' }, 'day', 'Tested on: “01.05.2031” is not a day. Write it as year-month-day.'],
    [{ 5: '2031-05-07' }, 'day', 'Tested on: 7 May 2031 is still to come'],
    [{ 4: '' }, 'instrumentName', 'Instrument is empty.'],
    [{ 0: 'abc' }, 'mark', 'Mark: “abc” is no mark.'],
  ] as const)('%j is refused at its column with field, value and bound', (over, column, sentence) => {
    const refused = read(over)
    if (refused.ok) throw new Error('the row was taken')
    expect(refused.faults).toContainEqual({ column, sentence: expect.stringContaining(sentence) })
  })

  it('tells all of its faults at once', () => {
    const refused = read({ 0: 'abc', 3: 'x', 8: '5' })
    expect(refused.ok ? [] : refused.faults.map(({ column }) => column)).toEqual(['mark', 'price', 'gridVolts'])
  })
})

it('rows to correct keep their fields, and the fault of an earlier try is written anew', () => {
  const row = { number: 4, fields: ['T-1', '=x', 'old fault'] }
  const text = faultTable(['Mark', 'Note', 'Fault'], [{ row, faults: [{ column: 'mark', sentence: 'Taken.' }] }])
  expect(text).toBe('\ufeffMark,Note,Fault\r\nT-1,=x,Taken.\r\n')
})
