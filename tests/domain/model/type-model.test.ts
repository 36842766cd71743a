import { describe, expect, it } from 'vitest'
import { currentDensity, reach } from '@/lib/domain/model/current-density'
import { inverse, solve } from '@/lib/domain/model/small-matrix'
import { rectifierModel, typeModel } from '@/lib/domain/model/type-model'
import { HANDBOOK } from '@/lib/domain/tube/handbook'

describe('type model', () => {
  it('every output type has curves, own or standing in', () => {
    const without = HANDBOOK.filter((type) => type.role === 'output' && !typeModel(type.id).ok)
    expect(without.map((type) => type.id)).toEqual([])
  })

  it('every rectifier with a printed drop meets it', () => {
    const printed = HANDBOOK.flatMap(({ id, rows }) => rows.map((row) => ({ id, ...row.figures }))).filter(
      (row) => row.dropVolts,
    )
    expect(printed.length).toBeGreaterThanOrEqual(8)
    for (const { id, dropVolts, dropMilliampsPerPlate } of printed) {
      const diode = rectifierModel(id)
      if (!diode.ok || !dropVolts || !dropMilliampsPerPlate) throw new Error(id)
      expect(diode.value.k * dropVolts[0] ** 1.5 * 1000).toBeCloseTo(dropMilliampsPerPlate[0], 2)
    }
  })

  it('the triode of an ECL82 is its second section, a 12DW7 is a 12AX7 and a 12AU7', () => {
    const [triode, high, medium] = [typeModel('ECL82', 'second'), typeModel('12DW7'), typeModel('12DW7', 'second')]
    if (!triode.ok || !high.ok || !medium.ok) throw new Error('a section has no curves')
    expect(triode.value.parameters.kind).toBe('triode')
    expect([high.value.curvesOf, medium.value.curvesOf]).toEqual(['12AX7', '12AU7'])
  })

  it('a similar type that stands in has its error doubled', () => {
    const [own, stand] = [typeModel('EL34'), typeModel('KT77')]
    if (!own.ok || !stand.ok) throw new Error('no curves')
    expect(stand.value.standIn).toBe('similar')
    expect(stand.value.share).toBeCloseTo(2 * own.value.share, 12)
  })

  it('refuses an unknown type and a section that is not there', () => {
    expect(typeModel('no such tube')).toEqual({ ok: false, fault: 'no-curves' })
    expect(typeModel('6L6', 'second')).toEqual({ ok: false, fault: 'no-curves' })
    expect(rectifierModel('6L6')).toEqual({ ok: false, fault: 'no-curves' })
  })
})

describe('current density', () => {
  it('is the same for a point and the point with all voltages doubled under the 3/2 law', () => {
    expect(currentDensity(0.04 * 2 ** 1.5, 500)).toBeCloseTo(currentDensity(0.04, 250), 12)
  })

  it('reach is 0 inside the rows, ln 2 at half the coldest and at twice the hottest', () => {
    expect(reach(1.5, 1, 2)).toBe(0)
    expect(reach(0.5, 1, 2)).toBeCloseTo(Math.LN2, 12)
    expect(reach(4, 1, 2)).toBeCloseTo(Math.LN2, 12)
    expect(Number.isFinite(reach(0, 1e-5, 2e-5))).toBe(true)
  })
})

describe('small systems', () => {
  const matrix = [
    [4, 2, 0.6],
    [2, 5, 1],
    [0.6, 1, 3],
  ]
  it('solve gives back the unknowns, inverse times matrix is one', () => {
    const wanted = [1, -2, 3]
    const right = matrix.map((row) => row.reduce((sum, one, j) => sum + one * (wanted[j] ?? 0), 0))
    for (const [i, one] of (solve(matrix, right) ?? []).entries()) expect(one).toBeCloseTo(wanted[i] ?? 0, 12)
    const inverted = inverse(matrix) ?? []
    for (const i of [0, 1, 2])
      for (const j of [0, 1, 2]) {
        const sum = [0, 1, 2].reduce((total, k) => total + (inverted[i]?.[k] ?? 0) * (matrix[k]?.[j] ?? 0), 0)
        expect(sum).toBeCloseTo(i === j ? 1 : 0, 12)
      }
  })
  it('is null where two unknowns cannot be told apart', () => {
    const singular = [
      [1, 1],
      [1, 1],
    ]
    expect(solve(singular, [1, 1])).toBeNull()
    expect(inverse(singular)).toBeNull()
  })
})
