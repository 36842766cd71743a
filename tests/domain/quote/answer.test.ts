import { describe, expect, it } from 'vitest'
import type { Day } from '@/lib/domain/calendar'
import { answerHowText, clockInZone, instantInZone, readClock } from '@/lib/domain/quote/answer'
import { declinedText, withoutDeclined } from '@/lib/domain/quote/declined'
import { stateNow } from '@/lib/domain/quote/quote'

const at = (day: string, minutes: number, zone: string) => instantInZone(day as Day, minutes, zone).toISOString()

describe('the time of an answer', () => {
  it('reads 9:05, 09.05 and 17:30; not 24:00, 9:5 or noon', () => {
    expect(['9:05', '09.05', '17:30', '24:00', '9:5', 'noon'].map(readClock)).toEqual([
      545,
      545,
      1050,
      null,
      null,
      null,
    ])
  })

  // Offsets from the time zone database (tz), as the runtime carries it: New York is UTC−5, UTC−4 in summer.
  it.each([
    ['2031-01-15', 9 * 60, 'America/New_York', '2031-01-15T14:00:00.000Z'],
    ['2031-07-15', 9 * 60, 'America/New_York', '2031-07-15T13:00:00.000Z'],
    ['2031-03-09', 60, 'America/New_York', '2031-03-09T06:00:00.000Z'],
    ['2031-03-09', 12 * 60, 'America/New_York', '2031-03-09T16:00:00.000Z'],
    ['2031-11-02', 90, 'America/New_York', '2031-11-02T05:30:00.000Z'],
    ['2031-11-02', 0, 'America/New_York', '2031-11-02T04:00:00.000Z'],
    ['2031-07-15', 23 * 60 + 59, 'Asia/Kathmandu', '2031-07-15T18:14:00.000Z'],
  ])('%s, minute %i in %s is %s', (day, minutes, zone, instant) => {
    expect(at(day, minutes, zone)).toBe(instant)
  })

  it('shows the clock again as it was typed', () => {
    expect(clockInZone(instantInZone('2031-07-15' as Day, 545, 'Europe/London'), 'Europe/London')).toBe('09:05')
  })

  it('names the number called', () => {
    expect(answerHowText('by phone', ' 207-555-0177 ')).toBe('by phone, 207-555-0177')
    expect(answerHowText('in person', '')).toBe('in person')
  })
})

describe('a sent quote', () => {
  const quote = { state: 'sent', validUntil: '2031-05-20' as Day } as const
  // 20 May ends at 04:00 UTC in New York's summer.
  it('counts to the end of its last day in the shop, and has lapsed then', () => {
    expect(stateNow(quote, new Date('2031-05-21T03:59:00Z'), 'America/New_York')).toBe('sent')
    expect(stateNow(quote, new Date('2031-05-21T04:00:00Z'), 'America/New_York')).toBe('lapsed')
  })
  it('an accepted one does not lapse', () => {
    expect(stateNow({ ...quote, state: 'accepted' }, new Date('2031-06-21T04:00:00Z'), 'America/New_York')).toBe(
      'accepted',
    )
  })
})

describe('declined work', () => {
  const quote = {
    number: 'Q2001',
    revision: 2,
    lines: [
      { text: 'New\nreverb tank', socketPosition: null },
      { text: '6L6GC, mark T-1', socketPosition: 'V3' },
    ],
  } as never
  it('is one line, and is taken out again without touching others', () => {
    const said = declinedText(quote, 'May 6, 2031', 'Mirela\nThorn')
    expect(said).toBe(
      'Quote Q2001, revision 2, declined May 6, 2031 by Mirela Thorn: New reverb tank; 6L6GC, mark T-1 for V3',
    )
    expect(withoutDeclined(`Old note\n${said}`, quote)).toBe('Old note')
    expect(withoutDeclined('Quote Q2001, revision 1, declined x', quote)).toBe('Quote Q2001, revision 1, declined x')
  })
})
