/**
 * Curves borrowed and moved, held against printed rows they were not moved to.
 *
 * Outside check: a type of the handbook is written down under an invented name from its first
 * printed single-tube row alone, with the curves of ANOTHER type as merely similar. Its other
 * printed rows, which neither the fit of that other type nor the move has seen, must lie
 * within the 95 % band that is then claimed. The rows and the source of each figure stand in
 * lib/domain/tube/handbook: 6V6 (250 V row published in a 6V6GTA data sheet), 6L6, KT66,
 * EL34, 6550, 6K6GT, 6F6, 12AU7 from US and European handbooks, from memory.
 */
import { describe, expect, test } from 'vitest'
import { catalogueModel, catalogueRectifier, ownModel } from '@/lib/domain/model/catalogue-model'
import { diodeDrop, tubeCurrents } from '@/lib/domain/model/plate-curves'
import { comparedRows } from '@/lib/domain/model/row-comparison'
import { typeModel } from '@/lib/domain/model/type-model'
import { handbookType } from '@/lib/domain/tube/handbook'
import { ownTubeTypeOf } from '@/lib/domain/tube/own/own-tube-type'
import type { OwnTypeEntry } from '@/lib/domain/tube/own/own-type-entry'
import { ownEntry, ownRow, rectifierEntry, triodeEntry } from './own-type-fixture'

const modelOf = (entry: OwnTypeEntry) => {
  const model = ownModel(ownTubeTypeOf('own', entry))
  return model.ok ? model.value : expect.fail(model.fault)
}

describe('curves moved to printed points', () => {
  test.each([
    ['one point', [ownRow()]],
    ['one point without transconductance', [ownRow({ gmMilliampsPerVolt: null })]],
    [
      'two points',
      [ownRow(), ownRow({ plateVolts: 250, gridVolts: -14, plateMilliamps: 70, gmMilliampsPerVolt: 5.9 })],
    ],
  ])('%s: plate current there is met within 3 %%', (_what, rows) => {
    const { parameters } = modelOf(ownEntry({ rows }))
    for (const { plateVolts, screenVolts, gridVolts, plateMilliamps } of rows) {
      const { plate } = tubeCurrents(parameters, plateVolts, screenVolts ?? 0, gridVolts)
      expect(Math.abs((1000 * plate) / plateMilliamps - 1)).toBeLessThan(0.03)
    }
  })

  test('of a triode too, and without any point they are the other type’s own', () => {
    const triode = triodeEntry()
    const { plate } = tubeCurrents(modelOf(triode).parameters, 250, 0, -2)
    expect(Math.abs(1000 * plate - 1.1)).toBeLessThan(0.03 * 1.1)
    const like = typeModel('12AX7')
    expect(modelOf(triodeEntry({ rows: [] })).parameters).toEqual(like.ok && like.value.parameters)
  })

  test('similar counts the error double, the same does not; how many points moved it is kept', () => {
    const like = typeModel('6L6')
    const share = like.ok ? like.value.share : Number.NaN
    const [similar, same] = [modelOf(ownEntry()), modelOf(ownEntry({ curves: { typeId: '6L6', degree: 'same' } }))]
    expect([similar.share / share, similar.standIn, similar.movedTo]).toEqual([2, 'similar', 1])
    expect([same.share / share, same.standIn, same.curvesOf]).toEqual([1, 'same', '6L6'])
    expect(modelOf(ownEntry({ rows: [] })).movedTo).toBeUndefined()
  })

  test('points unlike the type by more than a factor of four, or cut off, are refused', () => {
    const refusal = (rows: OwnTypeEntry['rows']) => ownModel(ownTubeTypeOf('own', ownEntry({ rows })))
    expect(refusal([ownRow({ plateMilliamps: 600, gmMilliampsPerVolt: null })])).toEqual({
      ok: false,
      fault: 'unlike-the-type',
    })
    expect(refusal([ownRow({ gridVolts: -170 })])).toEqual({ ok: false, fault: 'test-point-cut-off' })
  })

  test('without curves none are made up', () => {
    const type = ownTubeTypeOf('own', ownEntry({ curves: null }))
    expect(catalogueModel('own', { ownTypes: [type] })).toEqual({ ok: false, fault: 'no-curves' })
  })

  test('a rectifier of 40 V at 200 mA drops 40 V at 200 mA, and by the three-halves law 25.2 V at half', () => {
    const diode = catalogueRectifier('own', { ownTypes: [ownTubeTypeOf('own', rectifierEntry())] })
    if (!diode.ok) return expect.fail(diode.fault)
    expect(diodeDrop(diode.value, 0.2).drop).toBeCloseTo(40, 9)
    expect(diodeDrop(diode.value, 0.1).drop).toBeCloseTo(40 * 0.5 ** (2 / 3), 9)
  })
})

describe('outside check: one printed row and the curves of a merely similar type', () => {
  const PAIRS = [
    ['6V6', '6L6'],
    ['6V6', '6K6GT'],
    ['6V6', '6AQ5'],
    ['6L6', 'KT66'],
    ['6L6', '6550'],
    ['KT66', '6L6'],
    ['KT66', 'EL37'],
    ['EL34', 'EL37'],
    ['6550', 'KT88'],
    ['6K6GT', '6V6'],
    ['6F6', '6V6'],
    ['12AU7', '6SN7GTB'],
  ] as const

  test.each(PAIRS)('%s by the curves of %s: its other printed rows lie in the band claimed', (written, like) => {
    const type = handbookType(written)
    const fitted = typeModel(written)
    if (!fitted.ok) return expect.fail(fitted.fault)
    const printed = comparedRows(type, fitted.value).map(({ row }) => row)
    const first = printed.find(({ currentsFor }) => currentsFor === 1)
    if (!first) return expect.fail(`no single row of ${written}`)
    const curves = { typeId: like, degree: 'similar' } as const
    const model = ownModel({ ...type, id: 'own', rows: [first], curves, sourceText: 'the handbook' })
    if (!model.ok) return expect.fail(model.fault)
    const others = comparedRows(type, model.value).filter(({ row }) => row !== first)
    expect(others.length).toBeGreaterThanOrEqual(1)
    const band = Math.exp(2 * model.value.share) - 1
    expect(band).toBeLessThan(0.35)
    for (const { row, printedMilliamps, modelMilliamps } of others)
      expect(Math.abs(modelMilliamps / printedMilliamps - 1), row.label).toBeLessThan(band)
  })
})
