import { describe, expect, test } from 'vitest'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { provenanceOf } from '@/lib/domain/tube/handbook-sources'
import type { Figure } from '@/lib/domain/tube/handbook-type'
import { ownTubeTypeOf } from '@/lib/domain/tube/own/own-tube-type'
import { ownTypeStart } from '@/lib/domain/tube/own/own-type-start'
import { HANDBOOK_ONLY, type OwnTubeType, type TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { PIN_COUNTS } from '@/lib/domain/tube/tube-ratings'
import { searchTypes } from '@/lib/domain/tube/type-search'
import { cardSources } from '@/lib/domain/tube/type-sources'
import { ownEntry, rectifierEntry, triodeEntry } from './own-type-fixture'

const own = [ownEntry(), triodeEntry(), rectifierEntry()].map((entry, place) => ownTubeTypeOf(`own${place}`, entry))
const catalogue: TubeCatalogue = { ownTypes: own }
const start = (designation: string) => {
  const variant = findTubeType(designation, catalogue)
  return variant ? ownTypeStart(variant, catalogue) : expect.fail(`no ${designation}`)
}

/** The rules that hold the handbook (tests/domain/tube/handbook.test.ts). */
describe.each(own.map((type) => [type.variants[0]?.designations[0] ?? '', type] as const))('%s', (_name, type) => {
  const ratings = type.variants.map((variant) => variant.ratings)
  const figures = (): Figure[] =>
    [
      ...ratings.flatMap((one) => (one && typeof one === 'object' ? Object.values(one.limits) : [])),
      ...type.rows.flatMap((row) => Object.values(row.figures)),
      ...type.heaters.flatMap(({ volts, amps }) => [volts, amps]),
    ].filter((figure) => figure !== undefined)

  test('every number is finite, and the shop is its source', () => {
    expect(figures().length).toBeGreaterThan(4)
    for (const [value, source] of figures()) {
      expect(Number.isFinite(value)).toBe(true)
      expect(provenanceOf(source)).toEqual({ basis: 'shop-entry', confidence: null, text: 'entered by this shop' })
    }
  })

  test('limits lie above zero, grid volts at or below, heaters take 1 to 16 W', () => {
    for (const one of ratings) {
      if (one === null || typeof one !== 'object') return expect.fail('no ratings')
      for (const figure of Object.values(one.limits)) expect(figure?.[0]).toBeGreaterThan(0)
    }
    for (const row of type.rows) expect(row.figures.gridVolts?.[0] ?? 0).toBeLessThanOrEqual(0)
    for (const { volts, amps } of type.heaters) {
      expect(volts[0] * amps[0]).toBeGreaterThan(1)
      expect(volts[0] * amps[0]).toBeLessThan(16)
    }
  })

  test('its pins fit its base', () => {
    for (const pin of Object.keys(type.base.pins ?? {}))
      expect(Number(pin)).toBeLessThanOrEqual(PIN_COUNTS[type.base.name])
  })

  test('it is found by its designation however that is written, and elsewhere only as the plain type with letters of its own', () => {
    const [designation = ''] = type.variants[0]?.designations ?? []
    for (const written of [designation, designation.toLowerCase().replace('-', ' '), `JAN ${designation}`])
      expect(findTubeType(written, catalogue)).toMatchObject({ typeId: type.id, resolution: 'designation' })
    const elsewhere = findTubeType(designation, HANDBOOK_ONLY)
    expect(elsewhere?.resolution ?? 'own-letters').toBe('own-letters')
  })

  test('its card names the one source, in the shop’s words', () => {
    expect(cardSources(type).list).toEqual([
      { number: 1, text: 'written down by this shop from: leaflet of the second issue' },
    ])
  })
})

describe('ratings', () => {
  test('stand as written, with their system', () => {
    expect(findTubeType('QH25', catalogue)?.ratings).toMatchObject({
      appliesTo: '6L6-QH25',
      system: 'design-maximum',
      plateWatts: { value: 25, provenance: { basis: 'shop-entry' } },
      screenWatts: { value: 4 },
      cathodeMilliamps: null,
    })
  })

  test('none written are none, never zero', () => {
    const bare: OwnTubeType = ownTubeTypeOf('bare', ownEntry({ limits: {} }))
    expect(findTubeType('6L6-QH25', { ownTypes: [bare] })?.ratings).toBeNull()
  })

  test('typical screen current is that of its own row: 3.2 of 63.2 mA', () => {
    expect(findTubeType('QH25', catalogue)?.typicalScreenShare?.share).toBeCloseTo(3.2 / 63.2, 12)
  })
})

describe('a sheet started from a known type', () => {
  test('takes class, base, pins, heater, limits and curves of the variant; no points, no name', () => {
    const started = start('CV511')
    expect(started).toMatchObject({
      designation: '',
      family: '6V6',
      tubeClass: 'beam-tetrode',
      base: 'octal',
      heaterVolts: 6.3,
      heaterAmps: 0.45,
      system: 'design-centre',
      curves: { typeId: '6V6', degree: 'similar' },
      sourceText: 'figures of the 6V6GT, taken over to start from',
    })
    expect(started.limits.plateWatts).toBe(12)
    expect('rows' in started).toBe(false)
  })

  test('6V6GTA gives its own 14 W design-maximum, a rectifier its drop', () => {
    expect(start('6V6GTA')).toMatchObject({ system: 'design-maximum', limits: { plateWatts: 14 } })
    expect(start('5Y3GT')).toMatchObject({ drop: { dropVolts: 60, milliamps: 125 }, curves: null })
  })

  test('from an own type it borrows what that borrows', () => {
    expect(start('6L6-QH25').curves).toEqual({ typeId: '6L6', degree: 'similar' })
  })
})

describe('the search', () => {
  const ids = (text: string) => searchTypes(text, catalogue).types.map(({ type }) => type.id)

  test('without a text finds every type, the own first', () => {
    expect(ids('')).toHaveLength(48)
    expect(ids('').slice(0, 3)).toEqual(['own0', 'own1', 'own2'])
  })

  test('finds part of a number, and says which other number it was', () => {
    expect(ids('qh')).toEqual(['own0', 'own1', 'own2'])
    const { exact, types } = searchTypes('vt 107', catalogue)
    expect(exact).toMatchObject({ designation: '6V6', resolution: 'other-number' })
    expect(types.map(({ type, numbers }) => [type.id, numbers])).toEqual([['6V6', ['VT-107', 'VT-107A', 'VT-107B']]])
  })

  test('6BW6 is no type known here; the 6V6 names it as merely similar', () => {
    const { exact, types, similar } = searchTypes('6BW6', catalogue)
    expect([exact, types]).toEqual([null, []])
    expect(similar.map(({ type, number }) => [type.id, number])).toEqual([['6V6', '6BW6']])
  })
})
