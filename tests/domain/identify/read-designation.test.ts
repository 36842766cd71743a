/**
 * The published schemes as cases. Sources: the RETMA type designation scheme as copied by an encyclopaedia; Radiotron
 * Designer's Handbook, 4th edition, on US type numbers; the European type letters as printed in a valve data
 * book; a collectors' society page on British service numbers; a collectors' page on US industrial numbers.
 * What was not looked up says "from memory" beside it, in the part that is read as well as here.
 */
import { describe, expect, test } from 'vitest'
import type { DesignationReading } from '@/lib/domain/identify/designation/designation-reading'
import { readDesignation } from '@/lib/domain/identify/designation/read-designation'

const meaning = (text: string, part: string): string =>
  readDesignation(text).parts.find((one) => one.text === part)?.meaning ?? expect.fail(`${text} has no part ${part}`)
const source = (text: string, part: string) => readDesignation(text).parts.find((one) => one.text === part)?.source
const suffix = (text: string) => readDesignation(text).suffix

describe('US numbers (Radiotron Designer’s Handbook, 4th edition)', () => {
  test.each([
    ['5U4G', '5', '4.6 to 5.6 V'],
    ['6L6', '6', '5.6 to 6.6 V'],
    ['1S5', '1', 'up to 1.6 V'],
    ['7C5', '7', '6.3 V, lock-in'],
    ['12AX7', '12', '12.6 V; a tapped heater is named by its two halves in series'],
  ])('%s: the first figure %s is a heater of %s', (text, part, words) => {
    expect(meaning(text, part)).toContain(words)
    expect(source(text, part)).toBe('radiotron')
  })

  test('0 is a cold cathode', () => {
    expect(meaning('0A4G', '0')).toContain('cold cathode')
  })

  test('6SN7 and 6SL7: the first letter S is for single-ended', () => {
    for (const [text, letters] of [
      ['6SN7GT', 'SN'],
      ['6SL7GT', 'SL'],
    ] as const)
      expect(meaning(text, letters)).toContain('single-ended')
  })

  test.each(['5Z3', '5Y3', '5X4', '5W4', '5V4', '5U4', '5T4'])(
    '%s: rectifiers run backwards from Z; the letter is not a European Z or Y',
    (text) => {
      const read = readDesignation(text)
      expect(read.scheme).toBe('us-receiving')
      expect(meaning(text, text.charAt(1))).toContain('backwards from Z')
      expect(read.parts.map((part) => part.meaning).join()).not.toMatch(/full-wave|half-wave/)
    },
  )

  test('6V6: V is only a serial letter there', () => {
    expect(meaning('6V6', 'V')).not.toContain('rectifier')
  })

  test('12AV5, 12AV6 and 12AV7 are three sorts: the letters tell no function', () => {
    for (const text of ['12AV5', '12AV6', '12AV7']) expect(meaning(text, 'AV')).toContain('do not tell the function')
  })

  test.each(['6I6', '6O6'])('%s: I and O are not used, so it is no US number', (text) => {
    expect(readDesignation(text).scheme).toBe('not-recognised')
  })

  test('the last figure counts elements, and is no check (RETMA copy: counting is inconsistent)', () => {
    expect(meaning('12AX7', '7')).toContain('no check')
  })

  test.each(['5692', '5751', '5881', '5992', '6072', '6201', '6550', '7025', '7189', '7591', '7868'])(
    '%s is a registered industrial number without a meaning in its figures',
    (text) => {
      expect(readDesignation(text)).toMatchObject({ scheme: 'us-industrial', standard: text })
      expect(meaning(text, text)).toContain('no meaning')
    },
  )
})

describe('suffixes (RETMA scheme)', () => {
  test.each([
    ['6V6', { envelope: null, issue: null, rugged: null, base: null }],
    ['6V6G', { envelope: 'G' }],
    ['6V6GT', { envelope: 'GT' }],
    ['6V6GT/G', { envelope: 'GT/G' }],
    ['6L6GA', { envelope: 'G', issue: 'A' }],
    ['6L6GB', { envelope: 'G', issue: 'B' }],
    ['6L6GC', { envelope: 'G', issue: 'C' }],
    ['6V6GTA', { envelope: 'GT', issue: 'A' }],
    ['6SN7GTB', { envelope: 'GT', issue: 'B' }],
    ['7591A', { envelope: null, issue: 'A' }],
    ['6X4W', { rugged: 'W' }],
    ['12AX7WA', { rugged: 'WA' }],
    ['12AT7WB', { rugged: 'WB' }],
    ['6L6WGB', { rugged: 'W', envelope: 'G', issue: 'B' }],
    ['6SN7WGTA', { rugged: 'W', envelope: 'GT', issue: 'A' }],
    ['5R4GY', { envelope: 'G', base: 'Y' }],
    ['5R4WGY', { rugged: 'W', envelope: 'G', base: 'Y' }],
    ['6L6GAY', { envelope: 'G', issue: 'A', base: 'Y' }],
    ['6V6GX', { envelope: 'G', base: 'X' }],
    ['6J5MG', { envelope: 'MG' }],
    ['7C5L', { envelope: 'L' }],
    ['7C5LT', { envelope: 'L' }],
    ['7C5LM', { envelope: 'L' }],
    ['6K7M', { envelope: 'M' }],
    ['6L6W', { envelope: null, rugged: 'W', base: null }],
    ['6J7S', { envelope: 'S' }],
  ])('%s', (text, read) => {
    expect(suffix(text)).toMatchObject(read)
    expect(readDesignation(text)).toMatchObject({ standard: text, ownMark: null })
  })

  test('Y is the brown heat-resistant base, X the ceramic one', () => {
    expect(meaning('5R4GY', 'Y')).toMatch(/mica-filled phenolic: brown, heat-resistant/)
    expect(meaning('6V6GX', 'X')).toMatch(/ceramic/)
  })

  test('GT/G is registered to replace both the G and the GT', () => {
    expect(meaning('6V6GT/G', 'GT/G')).toContain('replace both')
  })

  test('a later letter may replace the earlier ones, not the other way', () => {
    expect(meaning('6SN7GTB', 'B')).toBe('later issue: may replace the earlier ones, not the other way')
  })

  test('the C of 6L6GC is the issue, and no bulb is claimed for a G with an issue', () => {
    expect(meaning('6L6GC', 'C')).toContain('later issue')
    expect(meaning('6L6GC', 'G')).not.toContain('ST-')
    expect(meaning('6L6G', 'G')).toContain('shouldered')
  })

  test('E is export', () => {
    expect(meaning('6V6GTE', 'E')).toBe('export')
  })

  test('carelessly written: 6v6 gt, 6V6-GT, 6SN7 GT B', () => {
    expect(['6v6 gt', '6V6-GT', '6SN7 GT B'].map((text) => readDesignation(text).standard)).toEqual([
      '6V6GT',
      '6V6GT',
      '6SN7GTB',
    ])
  })
})

describe('a maker’s or dealer’s own letters have no meaning in the standard (from memory)', () => {
  test.each([
    ['EL34QX', 'EL34', 'QX'],
    ['EL34-QX', 'EL34', 'QX'],
    ['6L6GC-QX 12', '6L6GC', 'QX 12'],
    ['6L6GCEQ', '6L6GC', 'EQ'],
    ['12AX7EQ', '12AX7', 'EQ'],
    ['12AX7LPQ', '12AX7', 'LPQ'],
    ['12AX7WXT', '12AX7W', 'XT'],
    ['KT66 QX', 'KT66', 'QX'],
    ['6V6GT-Y', '6V6GT', 'Y'],
    ['6L6GC-STR 387', '6L6GC', 'STR 387'],
  ])('%s is %s with %s', (text, standard, ownMark) => {
    const read = readDesignation(text)
    expect([read.standard, read.ownMark]).toEqual([standard, ownMark])
    expect(meaning(text, ownMark)).toContain('no meaning')
  })
})

describe('European letters (as printed in a valve data book)', () => {
  const spelled = (text: string) =>
    readDesignation(text)
      .parts.map((part) => part.meaning)
      .join(' · ')

  test.each([
    ['EL34', /^6\.3 V heater · output pentode or tetrode · octal base/],
    ['EL84', /noval \(B9A\) base/],
    ['EL90', /7-pin miniature \(B7G\) base/],
    ['GZ34', /^5 V heater · full-wave rectifier · octal base/],
    ['EZ81', /^6\.3 V heater · full-wave rectifier · noval/],
    ['ECC83', /^6\.3 V heater · twin triode · noval/],
    ['EF86', /^6\.3 V heater · pentode · noval/],
    ['ECL82', /^6\.3 V heater · triode · output pentode or tetrode · noval/],
    ['PL84', /^300 mA heater/],
    ['UY85', /^100 mA heater.* · half-wave rectifier/],
    ['CY31', /^200 mA heater/],
    ['DK91', /^0\.5 to 1\.5 V filament · octode/],
    ['KF35', /^2 V heater/],
    ['AL42', /^4 V heater · output pentode or tetrode · B8A base/],
    ['EM80', /tuning indicator/],
    ['EBC90', /double diode · triode/],
    ['ECH21', /hexode or heptode · B8G or B10B base/],
    ['EAA91', /^6\.3 V heater · diode · diode · 7-pin/],
    ['EABC80', /diode · double diode · triode · noval/],
    ['PD500', /300 mA heater.* · output triode · B9D or a base of its own/],
    ['AE41', /^4 V heater · tetrode · B8A base/],
    ['EFF51', /pentode · pentode · B9D/],
  ])('%s', (text, words) => {
    expect(readDesignation(text).scheme).toBe('european')
    expect(spelled(text)).toMatch(words)
  })

  test('E88CC and E83CC: figures between the letters are special quality and need not equal the plain number', () => {
    for (const text of ['E88CC', 'E83CC', 'E84L']) {
      const { scheme, remarks } = readDesignation(text)
      expect(scheme).toBe('european')
      expect(remarks.map(({ sentence }) => sentence).join()).toMatch(/special-quality.*need not equal/)
    }
  })

  test('EF86 even: sharp cut-off; EF89 odd: remote; common practice only', () => {
    expect(readDesignation('EF86').remarks[0]).toMatchObject({ source: 'practice' })
    expect(readDesignation('EF86').remarks[0]?.sentence).toContain('sharp')
    expect(readDesignation('EF89').remarks[0]?.sentence).toContain('remote')
    expect(readDesignation('EL34').remarks).toEqual([])
  })

  test('a number of figures first is never read by the European letters', () => {
    for (const text of ['5Z3', '5Y3GT', '6AL5', '12DW7']) expect(readDesignation(text).scheme).toBe('us-receiving')
  })
})

describe('service numbers', () => {
  const named = ({ scheme, standard }: DesignationReading) => [scheme, standard]

  test('VT-107A: Signal Corps number with a letter for the envelope (from memory)', () => {
    expect(named(readDesignation('vt 107a'))).toEqual(['service-vt', 'VT-107A'])
    expect(meaning('VT-107A', 'A')).toContain('envelope version')
  })

  test('VT75 stands in two lists; the RAF’s is read only when it is said to be', () => {
    expect(readDesignation('VT75').remarks[0]?.sentence).toMatch(/not the same tube: VT75 of the RAF is the KT66/)
    expect(named(readDesignation('VT75 (RAF)'))).toEqual(['british-service', 'VT75 (RAF)'])
    expect(readDesignation('VT75').standard).not.toBe(readDesignation('VT75 (RAF)').standard)
  })

  test.each([
    ['ARP12', 'Army'],
    ['VR65', 'Royal Air Force'],
    ['NR50', 'Navy'],
    ['ATP4', 'Army'],
    ['ARTH2', 'Army'],
    ['VU39', 'Royal Air Force'],
    ['NU12', 'Navy'],
    ['NT57', 'Navy'],
  ])('%s is a British %s number before CV', (text, service) => {
    expect(readDesignation(text).scheme).toBe('british-service')
    expect(meaning(text, text)).toContain(service)
  })

  test('CV: the figures have no meaning; CV4004 is of the special-quality range, CV491 is not', () => {
    expect(meaning('CV491', 'CV491')).toContain('no meaning')
    expect(readDesignation('CV491').parts).toHaveLength(1)
    expect(meaning('CV4004', '4004')).toContain('special-quality')
  })

  test('5960-99-000-4004 is CV4004 in the NATO stock form (from memory)', () => {
    expect(named(readDesignation('5960-99-000-4004'))).toEqual(['common-valve', 'CV4004'])
    expect(named(readDesignation('5960-99-000-0491'))).toEqual(['common-valve', 'CV491'])
  })

  test('KB/D after a CV number is an inspection mark, and its stroke joins no numbers', () => {
    const read = readDesignation('CV491 KB/D')
    expect([read.standard, read.ownMark, read.alsoNamed]).toEqual(['CV491', 'KB/D', []])
  })

  test('M8137 is of the special-quality M8000 series (from memory)', () => {
    expect(named(readDesignation('M8137'))).toEqual(['special-quality-m', 'M8137'])
  })

  test('JAN with maker letters: the letters are set apart, the number stays', () => {
    expect(readDesignation('JAN-QX-6L6WGB')).toMatchObject({ jan: true, janMaker: 'QX', standard: '6L6WGB' })
    expect(readDesignation('JAN 5881')).toMatchObject({ jan: true, janMaker: null, standard: '5881' })
    expect(readDesignation('JAN')).toMatchObject({ jan: true, standard: null })
  })
})

describe('other schemes', () => {
  test('KT66 is a kinkless tetrode; U a rectifier, N an output pentode', () => {
    expect(meaning('KT66', 'KT')).toContain('kinkless tetrode')
    expect(meaning('U52', 'U')).toBe('rectifier')
    expect(meaning('N709', 'N')).toBe('output pentode')
    expect(meaning('L63', 'L')).toBe('low-mu triode')
    expect(meaning('B65', 'B')).toBe('double triode')
    expect(meaning('Z729', 'Z')).toMatch(/pentode/)
    expect(meaning('X65', 'X')).toBe('frequency changer')
    expect(meaning('D77', 'D')).toBe('diode')
    expect(meaning('DH77', 'DH')).toBe('diode and triode')
  })

  test('6П6С: all its meanings are from memory; a Latin C among them is read as С', () => {
    expect(new Set(readDesignation('6П6С').parts.map((part) => part.source))).toEqual(new Set(['memory']))
    expect(readDesignation('6П6C').standard).toBe('6П6С')
  })

  test('6P3S looks like a US number and may be a Cyrillic one in Latin letters: both are said', () => {
    const read = readDesignation('6P3S')
    expect(read.scheme).toBe('us-receiving')
    expect(read.remarks.map(({ sentence }) => sentence).join()).toContain('Cyrillic')
    expect(
      readDesignation('6SN7GT')
        .remarks.map(({ sentence }) => sentence)
        .join(),
    ).not.toContain('Cyrillic')
  })

  test('EL34/6CA7 is two numbers, GT/G is one suffix', () => {
    expect(readDesignation('EL34/6CA7').alsoNamed.map(({ standard }) => standard)).toEqual(['6CA7'])
    expect(readDesignation('6V6GT/G').alsoNamed).toEqual([])
  })

  test.each(['', 'wibble', '12E13', '/', '€', 'GREAT VALLEY'])(
    '"%s" is not recognised, and nothing is made up',
    (text) => {
      expect(readDesignation(text)).toMatchObject({ scheme: 'not-recognised', standard: null, parts: [] })
    },
  )
})
