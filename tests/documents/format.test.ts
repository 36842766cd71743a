import { describe, expect, test } from 'vitest'
import { bandDecimals, type Format, formatFor, readingDecimals } from '@/lib/documents/format'
import { sampleSettings } from '@/lib/documents/samples'
import { money } from '@/lib/domain/money'
import { amps, ratio, seconds, siemens, volts, watts } from '@/lib/domain/units'

const plain = (text: string): string => text.replace(/\u00a0/g, ' ')
const us = formatFor(sampleSettings('US'))
const uk = formatFor(sampleSettings('UK'))
const german = formatFor({ ...sampleSettings('UK'), locale: 'de-DE', currency: 'EUR' })

describe('readings', () => {
  test('425.3 V is 425 V, 38.24 V is 38.2 V, 1.594 V is 1.59 V', () => {
    expect([425.3, 38.24, 1.594].map((v) => plain(us.volts(volts(v))))).toEqual(['425 V', '38.2 V', '1.59 V'])
  })
  test('a negative grid voltage carries the minus sign, not a hyphen', () => {
    expect(plain(us.volts(volts(-38.2)))).toBe('\u221238.2 V')
  })
  test('a value that rounds to nothing has no sign', () => {
    expect(plain(us.volts(volts(-0.0001)))).toBe('0.000 V')
  })
  test('0.0352 A is 35.2 mA and 0.00518 S is 5.18 mA/V', () => {
    expect(plain(us.milliamps(amps(0.0352)))).toBe('35.2 mA')
    expect(plain(us.milliampsPerVolt(siemens(0.00518)))).toBe('5.18 mA/V')
  })
  test('three figures at the edges: 99.96 is 100, 9.996 is 10.0, zero is 0.00', () => {
    expect([99.96, 9.996, 0.9996, 0.5, 0.05, 0].map(readingDecimals)).toEqual([0, 1, 2, 2, 3, 2])
  })
  test('what was set shows no zeros of precision: 36 V, 5 mA, 2.5 W', () => {
    expect([us.settled(-36, 'V'), us.settled(5, 'mA'), us.settled(2.5, 'W')].map(plain)).toEqual([
      '−36 V',
      '5 mA',
      '2.5 W',
    ])
  })
  test('900 s is 15 min and 0.7 is 70 %', () => {
    expect(plain(us.minutes(seconds(900)))).toBe('15 min')
    expect(plain(us.percent(ratio(0.7)))).toBe('70 %')
  })
})

describe('bands', () => {
  // JCGM 100:2008, 7.2.6, from memory: 10.47 mΩ is rounded up to 11 mΩ, 28.05 kHz down to 28 kHz.
  test('a half-width of 10.47 is written 11, one of 28.05 is written 28', () => {
    expect(plain(us.bandedWatts({ value: watts(500), half: watts(10.47) }))).toBe('500 ± 11 W')
    expect(plain(us.bandedWatts({ value: watts(500), half: watts(28.05) }))).toBe('500 ± 28 W')
  })
  // JCGM 100:2008 computed by hand: 14.07 W with u = 0.189 W has a 95 % half-width of 0.378 W.
  test('14.07 W with 0.378 W is 14.1 ± 0.4 W', () => {
    expect(plain(us.bandedWatts({ value: watts(14.07), half: watts(0.378) }))).toBe('14.1 ± 0.4 W')
  })
  test('the value never shows more places than its half-width carries', () => {
    expect([0.378, 0.15, 1.2, 3, 12, 0.0004].map(bandDecimals)).toEqual([1, 2, 1, 0, 0, 3])
  })
  test('a half-width that is not known is not printed as zero', () => {
    expect(plain(us.bandedMilliamps({ value: amps(0.0352), half: null }))).toBe('35.2 mA')
    expect(plain(us.bandedPercent({ value: ratio(0.553), half: null }))).toBe('55 %')
  })
})

describe('money', () => {
  const written = (locale: string, currency: string): string =>
    plain(formatFor({ ...sampleSettings('US'), locale, currency }).money(money(123456)))
  // Minor units by ISO 4217: two for USD, GBP and EUR, none for JPY.
  test('123,456 minor units in four currencies', () => {
    expect(written('en-US', 'USD')).toBe('$1,234.56')
    expect(written('en-GB', 'GBP')).toBe('£1,234.56')
    expect(written('de-DE', 'EUR')).toBe('1.234,56 €')
    expect(written('en-US', 'JPY')).toBe('¥123,456')
  })
  test('a rate of 8,875 thousandths is 8.875 %, in German 8,875 %', () => {
    expect(plain(us.rate(8875))).toBe('8.875 %')
    expect(plain(german.rate(8875))).toBe('8,875 %')
  })
  test('a quantity of 1,250 thousandths is 1.25', () => {
    expect([us, german].map((format: Format) => format.quantity(1250))).toEqual(['1.25', '1,25'])
  })
})

describe('days and instants', () => {
  test('half past midnight in London is the evening before in New York', () => {
    const instant = '2026-10-08T23:30:00Z'
    expect(plain(uk.instant(instant))).toBe('9 Oct 2026, 00:30')
    expect(plain(us.instant(instant))).toBe('Oct 8, 2026, 7:30 PM')
    expect([uk.instantDay(instant), us.instantDay(instant)]).toEqual(['9 Oct 2026', 'Oct 8, 2026'])
  })
  test('a plain day never shifts with the zone', () => {
    const far = formatFor({ ...sampleSettings('US'), zone: 'Pacific/Kiritimati' })
    expect([far.day('2026-10-08'), us.day('2026-10-08')]).toEqual(['Oct 8, 2026', 'Oct 8, 2026'])
  })
  // 8 October 2026 is a Thursday: ISO week date 2026-W41-4, worked with Zeller's congruence.
  test('a day to keep shows its weekday', () => {
    expect([us.dueDay('2026-10-08'), uk.dueDay('2026-10-08')]).toEqual(['Thu, Oct 8, 2026', 'Thu, 8 Oct 2026'])
  })
  test('30 February and an instant without zone are refused', () => {
    expect(() => us.day('2026-02-30')).toThrow('2026-02-30')
    expect(() => us.instant('2026-10-08T10:00:00')).toThrow('with a zone')
  })
})
