import { describe, expect, it } from 'vitest'
import { bookReading } from '@/lib/domain/stock/sheet/book-point'
import { sheetSpread } from '@/lib/domain/stock/sheet/sheet-spread'
import { alarmText } from '@/lib/domain/stock/sheet/sheet-text'
import type { SheetLine } from '@/lib/domain/stock/sheet/test-sheet'
import { handbookRows } from '@/lib/domain/tube/handbook-rows'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { section } from '@/tests/support/stocked-shop'

const AT = { plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-12.5) }

const line = (mark: string, milliamps: number | null, slope: number | null = null): SheetLine => ({
  tubeId: mark,
  mark,
  test: {
    ...AT,
    ...{ id: mark, testedAt: new Date(0), testedBy: 'Ines', instrumentName: 'Tester', calibratedOn: null },
    ...{ shorts: milliamps === null, leakage: '', gas: '', noise: '', microphony: '', note: '' },
    sections: [section(milliamps, slope)],
  },
})

describe('the run of a test sheet', () => {
  it('has the range and the mean of what was read, and names shorts apart', () => {
    const { figures, shorts } = sheetSpread([line('T-1', 44, 4), line('T-2', null), line('T-3', 46, 4.2)], null)
    expect(figures.map(({ kind, count, low, high }) => [kind, count, low.toFixed(6), high.toFixed(6)])).toEqual([
      ['plateCurrent', 2, '0.044000', '0.046000'],
      ['transconductance', 2, '0.004000', '0.004200'],
    ])
    expect(figures[0]?.mean).toBeCloseTo(0.045, 12)
    expect(shorts).toEqual(['T-2'])
  })

  it('5 mA apart is alike and 5.1 mA is not', () => {
    expect(sheetSpread([line('T-1', 40), line('T-2', 45)], null).alike).toEqual(['T-1', 'T-2'])
    expect(sheetSpread([line('T-1', 40), line('T-2', 45.1)], null).alike).toEqual([])
  })

  it('the largest group counts, and 10 % of transconductance divides it', () => {
    const lines = [
      line('T-1', 40, 4),
      line('T-2', 41, 4.1),
      line('T-3', 42, 5),
      line('T-4', 43, 4.2),
      line('T-5', 60, 4),
    ]
    expect(sheetSpread(lines, null).alike).toEqual(['T-1', 'T-2', 'T-4'])
  })

  it('tells the one that lies far from the others, in a sentence with both figures', () => {
    const lines = [45, 44.2, 46.1, 43.8, 45.5, 28].map((milliamps, place) => line(`T-${place}`, milliamps))
    const { alarms } = sheetSpread(lines, null)
    expect(alarms.map(({ mark, against }) => [mark, against])).toEqual([['T-5', 'run']])
    const text = alarms[0] && alarmText(alarms[0], wordsFor('US'), false)
    expect(text).toContain('T-5: plate current 28 mA')
    expect(text).toContain('44.6 mA')
  })
})

describe('the handbook at the test point', () => {
  const rows = handbookRows('6V6', HANDBOOK_ONLY)

  // 6V6GTA data sheet, class A1 single tube: 250 V, 250 V, -12.5 V gives 45 mA and 4100 µmho.
  it('45 mA and 4.1 mA/V stand for a 6V6 at 250 / 250 / −12.5 V', () => {
    const book = bookReading(rows, AT)
    expect(book?.plateCurrent).toBeCloseTo(0.045, 9)
    expect(book?.transconductance).toBeCloseTo(0.0041, 9)
  })

  it('a point it does not print is not carried over from another', () => {
    expect(bookReading(rows, { ...AT, gridVoltage: volts(-14) })).toBeNull()
    expect(bookReading(rows, { ...AT, screenVoltage: volts(200) })).toBeNull()
  })

  // 6V6GTA data sheet, triode connection: 250 V, -12.5 V gives 49.5 mA and 5000 µmho.
  it('without a screen voltage it was strapped as a triode: 49.5 mA', () => {
    expect(bookReading(rows, { ...AT, screenVoltage: null })?.plateCurrent).toBeCloseTo(0.0495, 9)
  })

  it('28 mA is 62 % of 45 mA and is told; 33 and 59 mA are good new tubes', () => {
    const book = bookReading(rows, AT)
    const odd = (milliamps: number) => sheetSpread([line('T-1', milliamps)], book).alarms
    expect(odd(28).map((alarm) => alarmText(alarm, wordsFor('UK'), false))).toEqual([
      "T-1: anode current 28 mA is 62 % of the handbook's 45 mA at this point; good new valves read 65 % to 135 %.",
    ])
    expect([...odd(33), ...odd(59)]).toEqual([])
  })
})
