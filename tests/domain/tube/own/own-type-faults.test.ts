import { describe, expect, test } from 'vitest'
import { ownTubeTypeOf } from '@/lib/domain/tube/own/own-tube-type'
import type { OwnTypeEntry } from '@/lib/domain/tube/own/own-type-entry'
import { ownTypeFaults } from '@/lib/domain/tube/own/own-type-faults'
import { ownTypeFaultText } from '@/lib/domain/tube/own/own-type-text'
import { HANDBOOK_ONLY, type TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { ownEntry, ownRow, rectifierEntry, triodeEntry } from './own-type-fixture'

const told = (entry: OwnTypeEntry, others: TubeCatalogue = HANDBOOK_ONLY) =>
  ownTypeFaults(entry, others).map(ownTypeFaultText)

describe('a type that may be written down', () => {
  test.each([
    ['an output tube', ownEntry()],
    ['a twin triode', triodeEntry()],
    ['a rectifier', rectifierEntry()],
    ['one without rows, curves, limits or pins', ownEntry({ rows: [], curves: null, limits: {}, pins: null })],
    ['the sheet of a later issue that only stands in so far', ownEntry({ designation: '12BH7B', otherNumbers: [] })],
    ['the sheet of a special-quality issue', ownEntry({ designation: '6V6WGT', otherNumbers: [] })],
  ])('%s has no fault', (_what, entry) => {
    expect(told(entry)).toEqual([])
  })
})

describe('a number names one type', () => {
  test.each([
    ['6L6GC', '6L6GC is known already. Give the designation that is printed on this very type.'],
    ['6l6-gc', '6l6-gc is known already as a number of 6L6GC. Give the designation that is printed on this very type.'],
    ['CV511', 'CV511 is known already as a number of 6V6GT. Give the designation that is printed on this very type.'],
  ])('%s is refused', (designation, sentence) => {
    expect(told(ownEntry({ designation }))).toEqual([sentence])
  })

  test('nor may another number be one of the handbook, of another own type, or stand twice in other writing', () => {
    const entry = ownEntry({ otherNumbers: ['EL34', 'qh-25', 'QH 25'] })
    const others = { ownTypes: [ownTubeTypeOf('own', ownEntry({ designation: 'QX1', otherNumbers: ['QH25'] }))] }
    expect(ownTypeFaults(entry, HANDBOOK_ONLY).map(({ code }) => code)).toEqual(['number-taken', 'number-twice'])
    expect(ownTypeFaults(entry, others).map((fault) => [fault.code, 'by' in fault && fault.by])).toEqual([
      ['number-taken', 'EL34'],
      ['number-taken', 'QX1'],
      ['number-taken', 'QX1'],
    ])
  })
})

describe('class, base, points and curves belong together', () => {
  test('an octal base has no pin 9, a four-pin base no pin 5', () => {
    expect(told(ownEntry({ pins: { 9: 'h' } }))).toEqual(['Pins: there is no pin 9; this base has 8.'])
    expect(told(ownEntry({ base: 'four-pin', pins: { 4: 'f', 5: 'f' } }))).toEqual([
      'Pins: there is no pin 5; this base has 4.',
    ])
  })

  test('a screen tube without screen volts at a point cannot be placed', () => {
    const rows = [ownRow(), ownRow({ plateVolts: 300, screenVolts: null })]
    expect(ownTypeFaults(ownEntry({ rows }), HANDBOOK_ONLY)).toEqual([
      { code: 'screen-volts-missing', field: 'screenVolts', row: 1 },
    ])
  })

  test('two points at the same voltages are told at the second', () => {
    const rows = [ownRow(), ownRow({ plateVolts: 300 }), ownRow({ plateMilliamps: 61 })]
    expect(told(ownEntry({ rows }))).toEqual([
      'Operating point 3 stands at the same voltages as point 1. Keep one of them.',
    ])
  })

  test('a rectifier needs its drop, has no points, and borrows no curves', () => {
    const wrong = rectifierEntry({ drop: null, rows: [ownRow()], curves: { typeId: '6L6', degree: 'same' } })
    expect(ownTypeFaults(wrong, HANDBOOK_ONLY).map(({ code }) => code)).toEqual([
      'row-on-rectifier',
      'drop-missing',
      'curves-on-rectifier',
    ])
  })

  test('an amplifying tube has no drop', () => {
    const drop = { dropVolts: 40, milliamps: 200 }
    expect(ownTypeFaults(ownEntry({ drop }), HANDBOOK_ONLY).map(({ code }) => code)).toEqual([
      'drop-on-amplifying-tube',
    ])
  })

  test('a beam tetrode cannot borrow the curves of a triode, nor a triode those of a pentode', () => {
    expect(told(ownEntry({ curves: { typeId: '2A3', degree: 'similar' } }))).toEqual([
      'Curves: 2A3 is of another kind: one of the two has a screen grid and the other has none. Choose a type of the same kind, or none.',
    ])
    expect(told(triodeEntry({ curves: { typeId: 'EF86', degree: 'same' } }))[0]).toMatch(/EF86 is of another kind/)
  })
})
