/**
 * Numbers as they stand on bottles and in drawers, from everywhere and carelessly written: what each is read as. What a
 * number is by its scheme has the sources of read-designation.test.ts; that a maker's own letters mean nothing is from
 * memory.
 */
import { describe, expect, test } from 'vitest'
import type { DesignationReading } from '@/lib/domain/identify/designation/designation-reading'
import { readDesignation } from '@/lib/domain/identify/designation/read-designation'
import { readPrinted } from '@/lib/domain/identify/marks/printed'
import { NOTHING_SEEN } from '@/lib/domain/identify/seen'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { leader, told } from './told'

const spelled = (text: string): string => {
  const one = ({ jan, janMaker, standard, ownMark }: DesignationReading) =>
    [jan && 'JAN', janMaker, standard, ownMark && `(${ownMark})`].filter(Boolean).join(' ') || '?'
  const read = readDesignation(text)
  return [read, ...read.alsoNamed].map(one).join(' + ')
}

test.each([
  ['12ax7', '12AX7'],
  ['12AX7A/ECC83', '12AX7A + ECC83'],
  ['ecc83 / 12ax7a', 'ECC83 + 12AX7A'],
  ['ECC83/12AX7/CV4004', 'ECC83 + 12AX7 + CV4004'],
  ['JAN-5814A', 'JAN 5814A'],
  ['JAN6SN7WGTA', 'JAN 6SN7WGTA'],
  ['JAN-QXS-6SL7WGT', 'JAN QXS 6SL7WGT'],
  ['CV4004', 'CV4004'],
  ['CV 4024', 'CV4024'],
  ['CV4004/M8137', 'CV4004 + M8137'],
  ['CV491 KB/AD', 'CV491 (KB/AD)'],
  ['vt231', 'VT-231'],
  ['VT-107-A', 'VT-107A'],
  ['6SN7GTB', '6SN7GTB'],
  ['6SN-7GT', '6SN7GT'],
  ['6 L 6 GC', '6L6GC'],
  ['6L6-GC', '6L6GC'],
  ['5881', '5881'],
  ['7581A', '7581A'],
  ['6922', '6922'],
  ['KT-88', 'KT88'],
  ['KT88/6550', 'KT88 + 6550'],
  ['6CA7/EL-34', '6CA7 + EL34'],
  ['EL 34', 'EL34'],
  ['E83CC', 'E83CC'],
  ['E 83 CC', 'E83CC'],
  ['ECC803S', 'ECC803 (S)'],
  ['5ar4/gz34', '5AR4 + GZ34'],
  ['6V6 GT/G', '6V6GT/G'],
  ['KT66/II', 'KT66 + ?'],
  ['TYPE 45', '45'],
  ['300B', '300B'],
  ['300 B', '300B'],
  ['300B-QX', '300B (QX)'],
  ['300BQX', '300B (QX)'],
  ['QX300B', '300B (QX)'],
  ['UX-245', '245 (UX)'],
  ['6П3С-Е', '6П3С (Е)'],
  ['6п3се', '6П3С (Е)'],
  ['6Н2П-ЕВ', '6Н2П (ЕВ)'],
  ['6П14П', '6П14П'],
  ['2А3', '2A3'],
  ['6АС7', '6AC7'],
  ['6Е5С', '6Е5С'],
  ['MAY57', '?'],
  ['12E13', '?'],
])('%s is read as %s', (text, read) => {
  expect(spelled(text)).toBe(read)
})

describe('what a number names', () => {
  const remarks = (print: string) =>
    readPrinted({ ...NOTHING_SEEN, print }, HANDBOOK_ONLY, []).remarks.map(({ sentence }) => sentence)
  const named = (print: string) => [
    ...new Set(readPrinted({ ...NOTHING_SEEN, print }, HANDBOOK_ONLY, []).named.flatMap(({ types }) => [...types])),
  ]

  test.each([
    ['12AX7A/ECC83', ['12AX7']],
    ['JAN-5814A', ['12AU7']],
    ['VT-231', ['6SN7GTB']],
    ['CV4004/M8137', ['12AX7']],
    ['300BQX', ['300B']],
    ['QX300B', ['300B']],
    ['6H8C', ['6SN7GTB']],
    ['6Н8С-Е', ['6SN7GTB']],
    ['2А3', ['2A3']],
    ['UX-245', ['45']],
  ])('%s: %j', (print, types) => {
    expect(named(print)).toEqual(types)
  })

  test.each(['E83CC', '6922', '7581A', '6DJ8/ECC88', '12AU6', '6АС7', '845'])(
    '%s is read, names no type here, and says so; nothing near is taken',
    (print) => {
      expect(named(print)).toEqual([])
      expect(remarks(print).join()).toMatch(/reads as a number, but no type of it is known here/)
    },
  )

  test.each([
    ['6П3С-Е', /6П3С: near the 6L6G, with lower ratings than the 6L6GC\. Not taken for it/],
    ['6P3S-E', /6П3С: near the 6L6G/],
    ['6Н9С', /6Н9С: near the 6SL7GT/],
    ['6H9C', /6Н9С: near the 6SL7GT/],
    ['6Н2П-ЕВ', /heater of 6\.3 V between pins 4 and 5/],
    ['5Ц3С', /near the 5U4G/],
  ])('%s: what it is near, from memory, and never taken for it', (print, words) => {
    expect(named(print)).toEqual([])
    expect(remarks(print).join(' ')).toMatch(words)
    expect(findTubeType(print, HANDBOOK_ONLY)).toBeNull()
  })

  test('letters for the quality behind a Cyrillic number are spelled out; others are a maker’s own', () => {
    const meanings = (text: string) =>
      readDesignation(text)
        .parts.map(({ meaning }) => meaning)
        .join(' · ')
    expect(meanings('6Н2П-ЕВ')).toMatch(/quality: long life · quality: more reliable/)
    expect(meanings('6П14П-Э')).toMatch(/no meaning in the letters known here/)
  })

  test('only a type that was registered as metal is said to be metal without a suffix', () => {
    for (const print of ['6V6', '6L6', '6SC7']) expect(remarks(print).join()).toContain('registered as metal')
    for (const print of ['6BQ5', '6CA7', '6DJ8', '6BM8', '6AQ5', '6X4', '6V6GT'])
      expect(remarks(print).join()).not.toContain('registered as metal')
  })

  test('12AX7S and 6V6S: the S of the scheme is old, and of today mostly a maker’s own', () => {
    for (const print of ['12AX7S', '6V6S']) expect(remarks(print).join()).toContain('mostly is a maker’s own letter')
    expect(remarks('6V6GT').join()).not.toContain('own letter')
  })

  test('a bare 6L6 with a maker’s letters is not named the metal one', () => {
    expect(told({ print: '6L6EQ' }).ranked[0]?.share).toBeLessThan(0.2)
    expect(leader(told({ print: '6L6EQ', choices: { bulb: 'T-12' } }))).not.toBe('6L6')
    expect(leader(told({ print: '6L6EQ', choices: { bulb: 'metal' } }))).toBe('6L6')
  })

  test('300B with letters of a maker stands in with the 300B’s own figures, and says it does', () => {
    expect(findTubeType('300BQX', HANDBOOK_ONLY)).toMatchObject({ designation: '300B', resolution: 'own-letters' })
    expect(findTubeType('300B', HANDBOOK_ONLY)).toMatchObject({ designation: '300B', resolution: 'designation' })
  })
})
