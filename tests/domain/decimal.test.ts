import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { readDecimal, readDecimalText, readFixed } from '@/lib/domain/decimal'

test.each([
  ['12.5', 12.5],
  ['12,5', 12.5],
  ['  -38 ', -38],
  ['−38', -38], // the typographic minus
  ['+4', 4],
  ['.5', 0.5],
  [',5', 0.5],
  ['5.', 5],
  ['5,', 5],
  ['0', 0],
  ['007', 7],
  ['1,234', 1.234], // one mark is the decimal mark, always
  ['1.234', 1.234],
  ['1.234,5', 1234.5],
  ['1,234.5', 1234.5],
  ['1.234.567', 1_234_567],
  ['1,234,567', 1_234_567],
  ['1 234,5', 1234.5],
  ['1 234,5', 1234.5],
])('“%s” is %d', (typed, value) => expect(readDecimal(typed)).toEqual({ ok: true, value }))

test.each(['', '   ', '\t', ' '])('%j is empty, not zero', (typed) =>
  expect(readDecimal(typed)).toEqual({ ok: false, fault: 'empty' }),
)

test.each([
  'abc',
  '12V',
  '1e3',
  '0x10',
  '1,2,3',
  '1.2.3',
  '1,23.4',
  '12,34,567',
  '--1',
  '1-',
  '.',
  ',',
  '-',
  '+',
  'Infinity',
  'NaN',
  '1.5.',
  '٣',
  '1,234,56.7',
])('“%s” is no number', (typed) => expect(readDecimal(typed)).toEqual({ ok: false, fault: 'not-a-number' }))

test('any number written plainly is read back, with a point and with a comma', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 999 }), (whole, thousandths) => {
      const plain = `${whole}.${String(thousandths).padStart(3, '0')}`
      expect(readDecimal(plain)).toEqual({ ok: true, value: Number(plain) })
      expect(readDecimal(plain.replace('.', ','))).toEqual({ ok: true, value: Number(plain) })
    }),
  )
})

it('keeps every digit as text', () => {
  expect(readDecimalText('123456789012345678,9')).toEqual({ ok: true, value: '123456789012345678.9' })
})

describe('whole steps', () => {
  test.each([
    ['12,5', 2, 1250],
    ['12.50', 2, 1250],
    ['12.5000', 2, 1250],
    ['0,005', 3, 5],
    ['-0.5', 2, -50],
    ['-.5', 2, -50],
    ['.5', 3, 500],
    ['7', 0, 7],
    ['7,0', 0, 7],
    ['8.875', 3, 8875],
    ['0.29', 2, 29], // 0.29 × 100 is 28.999… in binary
    ['1.005', 3, 1005],
  ])('“%s” to %i places is %i', (typed, places, value) => expect(readFixed(typed, places)).toEqual({ ok: true, value }))

  test.each([
    ['0.005', 2],
    ['1,5', 0],
    ['8.8755', 3],
  ])('“%s” has more than %i places and is not rounded', (typed, places) =>
    expect(readFixed(typed, places)).toEqual({ ok: false, fault: 'too-many-decimals' }),
  )

  it('refuses what no integer holds, and knows one zero', () => {
    expect(readFixed('99999999999999999', 2)).toEqual({ ok: false, fault: 'not-a-number' })
    const zero = readFixed('-0', 2)
    expect(zero.ok && Object.is(zero.value, 0)).toBe(true)
    expect(readFixed('', 2)).toEqual({ ok: false, fault: 'empty' })
  })
})
