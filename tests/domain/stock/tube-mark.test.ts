import { describe, expect, it } from 'vitest'
import { LONGEST_MARK, markOfNumber, readMark } from '@/lib/domain/stock/tube-mark'

describe('a mark', () => {
  it.each([
    ['l-0147', 'L-0147'],
    [' T 0147 ', 'T-0147'],
    ['T–0147', 'T-0147'],
    ['９ａ', '9A'],
    ['7', '7'],
  ])('typed “%s” is written down as %s', (typed, mark) => expect(readMark(typed)).toBe(mark))

  it.each(['', 'LAMP', 'T--1', '-1', 'T/1', 'T_1', '1'.repeat(LONGEST_MARK + 1)])('“%s” is none', (typed) =>
    expect(readMark(typed)).toBeNull(),
  )

  it('of the running number 147 is T-0147, of 12345 it is T-12345', () => {
    expect([markOfNumber(147), markOfNumber(12345)]).toEqual(['T-0147', 'T-12345'])
    expect(readMark(markOfNumber(147))).toBe('T-0147')
  })
})
