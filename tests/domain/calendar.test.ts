import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import {
  addDays,
  type Day,
  dayInZone,
  daysBetween,
  endOfDay,
  formatDay,
  formatInstant,
  isTimeZone,
  readDay,
} from '@/lib/domain/calendar'

const day = (text: string) => text as Day

describe('reading a day', () => {
  test.each(['2026-02-28', '2028-02-29', ' 2026-12-31 '])('%j is a day', (text) =>
    expect(readDay(text)).toBe(text.trim()),
  )
  // 1900 and 2100 are no leap years, 2000 is: Gregorian rule, ISO 8601-1:2019, 4.2.1 (from memory).
  test.each([
    '2026-02-29',
    '1900-02-29',
    '2100-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '2026-4-1',
    '01.02.2026',
    '20260201',
    '',
    '2026-02-01T00:00',
  ])('%j is none', (text) => expect(readDay(text)).toBeNull())
  it('2000-02-29 is a day', () => expect(readDay('2000-02-29')).toBe('2000-02-29'))
})

describe('counting days', () => {
  test.each([
    ['2026-01-31', 1, '2026-02-01'],
    ['2028-02-28', 1, '2028-02-29'],
    ['2026-12-31', 1, '2027-01-01'],
    ['2026-03-01', -1, '2026-02-28'],
    ['2026-03-28', 2, '2026-03-30'], // over a day of 23 hours in Europe
  ])('%s and %i days is %s', (from, days, to) => expect(addDays(day(from), days)).toBe(to))

  test('as many days back as forth', () => {
    const start = fc.date({ min: new Date('1970-01-01'), max: new Date('2100-01-01'), noInvalidDate: true })
    fc.assert(
      fc.property(start, fc.integer({ min: -40_000, max: 40_000 }), (date, days) => {
        const from = day(date.toISOString().slice(0, 10))
        expect(daysBetween(from, addDays(from, days))).toBe(days)
      }),
    )
  })
})

/*
 * Changes of the clock. Europe: Directive 2000/84/EC, articles 2 and 3: last Sunday of March and of October at
 * 01:00 UTC. United States: Energy Policy Act of 2005, section 110: second Sunday of March and first Sunday of
 * November, 2 a.m. local. Lord Howe Island shifts by half an hour: IANA time zone database, australasia.
 */
describe('the day an instant falls on', () => {
  test.each([
    ['2026-03-29T21:59:59Z', 'Europe/Berlin', '2026-03-29'],
    ['2026-03-29T22:00:00Z', 'Europe/Berlin', '2026-03-30'],
    ['2026-10-25T22:59:59Z', 'Europe/Berlin', '2026-10-25'],
    ['2026-10-25T23:00:00Z', 'Europe/Berlin', '2026-10-26'],
    ['2026-03-08T04:59:59Z', 'America/New_York', '2026-03-07'],
    ['2026-03-09T04:00:00Z', 'America/New_York', '2026-03-09'],
    ['2026-06-01T18:15:00Z', 'Asia/Kathmandu', '2026-06-02'], // 5 h 45 min
    ['2026-06-01T10:00:00Z', 'Pacific/Kiritimati', '2026-06-02'], // 14 h
    ['2026-06-01T10:59:59Z', 'Pacific/Pago_Pago', '2026-05-31'], // −11 h
  ])('%s in %s is %s', (instant, zone, expected) => expect(dayInZone(new Date(instant), zone)).toBe(expected))
})

describe('the last instant of a day', () => {
  test.each([
    ['2026-01-15', 'UTC', '2026-01-15T23:59:59.000Z'],
    ['2026-03-28', 'Europe/Berlin', '2026-03-28T22:59:59.000Z'],
    ['2026-03-29', 'Europe/Berlin', '2026-03-29T21:59:59.000Z'],
    ['2026-10-25', 'Europe/Berlin', '2026-10-25T22:59:59.000Z'],
    ['2026-03-08', 'America/New_York', '2026-03-09T03:59:59.000Z'],
    ['2026-11-01', 'America/New_York', '2026-11-02T04:59:59.000Z'],
    ['2026-04-05', 'Australia/Lord_Howe', '2026-04-05T13:29:59.000Z'],
    ['2026-10-04', 'Australia/Lord_Howe', '2026-10-04T12:59:59.000Z'],
  ])('%s in %s ends at %s', (text, zone, expected) => expect(endOfDay(day(text), zone).toISOString()).toBe(expected))

  test('a second later the next day has begun', () => {
    const zone = fc.constantFrom(
      'Europe/London',
      'America/Los_Angeles',
      'Asia/Kolkata',
      'Pacific/Auckland',
      'Australia/Lord_Howe',
    )
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3650 }), zone, (offset, name) => {
        const date = addDays(day('2020-01-01'), offset)
        const end = endOfDay(date, name)
        expect(dayInZone(end, name)).toBe(date)
        expect(dayInZone(new Date(end.getTime() + 1000), name)).toBe(addDays(date, 1))
      }),
    )
  })

  // Chile goes back from 24:00 to 23:00 (IANA time zone database, southamerica): the last hour runs twice.
  it('is the second 23:59:59 where the clock goes back at midnight', () => {
    expect(endOfDay(day('2026-04-04'), 'America/Santiago').toISOString()).toBe('2026-04-05T03:59:59.000Z')
  })
})

describe('as it is shown', () => {
  it('a day is the same day wherever the server stands', () => {
    expect(formatDay('2026-03-09', 'en-GB')).toBe('9 Mar 2026')
    expect(formatDay('2026-03-09', 'en-US')).toBe('Mar 9, 2026')
  })

  it('an instant is shown in the zone of the shop', () => {
    const instant = new Date('2026-03-29T22:30:00Z')
    expect(formatInstant(instant, 'Europe/Berlin', 'en-GB')).toMatch(/^30 Mar 2026, 00:30$/)
    expect(formatInstant(instant, 'America/New_York', 'en-US')).toMatch(/^Mar 29, 2026, 06:30\sPM$/)
  })
})

test.each([
  ['Europe/Berlin', true],
  ['UTC', true],
  ['America/Argentina/Buenos_Aires', true],
  ['Mars/Olympus', false],
  ['', false],
])('%j is a time zone: %s', (zone, expected) => expect(isTimeZone(zone)).toBe(expected))
