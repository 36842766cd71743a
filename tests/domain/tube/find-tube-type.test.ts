import { describe, expect, test } from 'vitest'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { HANDBOOK } from '@/lib/domain/tube/handbook'
import { listDesignations, listDesignationsByRole } from '@/lib/domain/tube/list-designations'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'

const watts = (designation: string) => findTubeType(designation, HANDBOOK_ONLY)?.ratings?.plateWatts?.value
const named = (designation: string) => {
  const found = findTubeType(designation, HANDBOOK_ONLY)
  return found && [found.typeId, found.designation, found.resolution]
}

describe('designations as people write them', () => {
  test.each([
    ['6L6GC', '6L6', '6L6GC', 'designation'],
    ['6l6 gc', '6L6', '6L6GC', 'designation'],
    [' 6V6-GTA ', '6V6', '6V6GTA', 'designation'],
    ['ECC83', '12AX7', 'ECC83', 'designation'],
    ['12AX7A', '12AX7', '12AX7A', 'designation'],
    ['GZ34', '5AR4', 'GZ34', 'designation'],
    ['EL34/6CA7', 'EL34', 'EL34', 'designation'],
    ['6V6GT/G', '6V6', '6V6GT', 'other-number'],
    ['CV511', '6V6', '6V6GT', 'other-number'],
    ['vt 107 b', '6V6', '6V6G', 'other-number'],
    ['6П6С', '6V6', '6V6GT', 'other-number'],
    ['JAN-5881', '6L6', '5881', 'designation'],
    ['JAN-CG-6SN7GTB', '6SN7GTB', '6SN7GTB', 'designation'],
    ['JAN 12AX7WA', '12AX7', '12AX7', 'special-quality'],
    ['6SN7WGTA', '6SN7GTB', '6SN7GTA', 'special-quality'],
    ['CV4004', '12AX7', 'ECC83', 'special-quality'],
    ['6V6GTY', '6V6', '6V6GT', 'designation'],
    ['12BH7B', '12BH7A', '12BH7', 'later-issue'],
  ])('%s is %s, variant %s, by %s', (asked, ...expected) => {
    expect(named(asked)).toEqual(expected)
  })

  test.each(['', '  ', 'nonsense', '6', 'KT', '6L7XYZ', 'E83CC', '12345', '/', 'JAN-'])(
    '"%s" is no type known here',
    (asked) => {
      expect(findTubeType(asked, HANDBOOK_ONLY)).toBeNull()
    },
  )

  // "-EH", "STR-…", "LPS": a maker's or dealer's own, no meaning in the standard. Common practice, no source.
  test.each([
    ['EL34QX', 'EL34', 25],
    ['6L6GC-QXR', '6L6GC', 30],
    ['6L6GCQX', '6L6GC', 30],
    ['KT88Q', 'KT88', 42],
    ['ECC83 QX', 'ECC83', 1],
  ])('%s: letters of its own; the %s of %i W stands in and is said to', (asked, plain, plateWatts) => {
    const found = findTubeType(asked, HANDBOOK_ONLY)
    expect(found).toMatchObject({ designation: plain, resolution: 'own-letters', ratingsStandIn: true })
    expect(found?.ratings?.plateWatts?.value).toBe(plateWatts)
  })

  test('letters of its own never reach past a number that is merely similar, nor a type that is not known', () => {
    for (const asked of ['E34L', 'GU50QX', 'KT66QX/EL34'])
      expect(findTubeType(asked, HANDBOOK_ONLY)?.resolution).not.toBe('own-letters')
  })

  test('VT75 is two tubes: only the RAF number is the KT66', () => {
    expect(findTubeType('VT75', HANDBOOK_ONLY)).toBeNull()
    expect(findTubeType('VT75 (RAF)', HANDBOOK_ONLY)?.typeId).toBe('KT66')
  })

  test('KT88/6550 names two types and is not guessed at', () => {
    expect(findTubeType('KT88/6550', HANDBOOK_ONLY)).toBeNull()
  })

  test('a merely similar type is never taken for the tube: 6BW6, 7027A, 5U4GA, 12SN7GT', () => {
    expect(['6BW6', '7027A', '5U4GA', '12SN7GT'].map((one) => findTubeType(one, HANDBOOK_ONLY))).toEqual([
      null,
      null,
      null,
      null,
    ])
  })

  test('every designation of the pick list finds itself', () => {
    for (const designation of listDesignations(HANDBOOK_ONLY))
      expect(findTubeType(designation, HANDBOOK_ONLY)?.designation).toBe(designation)
  })

  test('every other number finds the designation it stands for', () => {
    for (const { number, of } of HANDBOOK.flatMap((type) => type.otherNumbers)) {
      expect([number, findTubeType(number, HANDBOOK_ONLY)?.designation]).toEqual([number, of])
    }
  })
})

describe('ratings go with the variant', () => {
  test('6V6GT 12 W design-centre, 6V6GTA 14 W design-maximum', () => {
    expect(findTubeType('6V6GT', HANDBOOK_ONLY)?.ratings).toMatchObject({
      system: 'design-centre',
      plateWatts: { value: 12 },
    })
    expect(findTubeType('6V6GTA', HANDBOOK_ONLY)?.ratings).toMatchObject({
      system: 'design-maximum',
      plateWatts: { value: 14 },
    })
  })

  test('6L6G 19 W, 5881 23 W, 6L6GC 30 W', () => {
    expect(['6L6G', '5881', '6L6GC'].map(watts)).toEqual([19, 23, 30])
  })

  test('two names of one tube with two ratings: the lower is taken', () => {
    expect(findTubeType('6L6GC/5881', HANDBOOK_ONLY)?.designation).toBe('5881')
  })

  test('a 6L6WGB has no sheet here: 19 W stands in and is marked', () => {
    expect(findTubeType('6L6WGB', HANDBOOK_ONLY)).toMatchObject({
      ratingsStandIn: true,
      ratings: { plateWatts: { value: 19 } },
    })
  })

  test('the ECL82 answers with its pentode of 7 W and keeps the triode of 1 W aside', () => {
    const found = findTubeType('6BM8', HANDBOOK_ONLY)
    expect([found?.ratings?.plateWatts?.value, found?.otherSection?.plateWatts?.value]).toEqual([7, 1])
  })

  test('a variant is a plain object: it survives JSON unchanged', () => {
    for (const designation of listDesignations(HANDBOOK_ONLY)) {
      const found = findTubeType(designation, HANDBOOK_ONLY)
      expect(JSON.parse(JSON.stringify(found))).toEqual(found)
    }
  })
})

describe('the pick list', () => {
  test('runs output, small-signal, rectifier, with no name twice', () => {
    const groups = listDesignationsByRole(HANDBOOK_ONLY)
    expect(groups.map(({ role }) => role)).toEqual(['output', 'small-signal', 'rectifier'])
    expect(new Set(listDesignations(HANDBOOK_ONLY)).size).toBe(listDesignations(HANDBOOK_ONLY).length)
  })
})
