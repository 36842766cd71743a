import { describe, expect, test } from 'vitest'
import { typeModel } from '@/lib/domain/model/type-model'
import { plotDescription, plotLegend, plotNotes } from '@/lib/domain/plot/plot-text'
import { typeSheet } from '@/lib/domain/plot/type-sheet'
import { HANDBOOK } from '@/lib/domain/tube/handbook'
import { ownTubeTypeOf } from '@/lib/domain/tube/own/own-tube-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { wordsFor } from '@/lib/domain/words'
import { ownEntry } from '@/tests/domain/tube/own/own-type-fixture'

const words = wordsFor('US')
const DRAWN = HANDBOOK.filter(({ id }) => typeModel(id).ok)

function sheetOf(typeId: string, { watts, volts }: { watts: number | null; volts: number | null }) {
  const rating = watts === null ? null : { watts, system: 'design-centre' as const }
  const shared = { section: 'first', ratedVolts: volts, catalogue: HANDBOOK_ONLY } as const
  const sheet = typeSheet({ typeId, designation: typeId, rating, ...shared })
  return sheet.ok ? sheet.value : expect.fail(sheet.fault.code)
}

describe('the curve sheet of a type', () => {
  test('there are 36 to draw, and nine rectifiers that have none', () => {
    expect(DRAWN).toHaveLength(36)
    const rectifier = { typeId: '5AR4', designation: '5AR4', section: 'first', rating: null, ratedVolts: null } as const
    expect(typeSheet({ ...rectifier, catalogue: HANDBOOK_ONLY })).toEqual({
      ok: false,
      fault: { code: 'no-curves', designation: '5AR4' },
    })
  })

  test.each(DRAWN.map(({ id }) => id))('%s: curves from 0 V down, every point inside the frame and finite', (id) => {
    const { whole, figures, points, screen } = sheetOf(id, { watts: null, volts: null })
    const { across, up } = whole.frame
    expect(whole.curves.length).toBeGreaterThanOrEqual(4)
    expect(whole.curves.at(-1)?.gridVolts).toBe(0)
    for (const { line } of whole.curves)
      for (const point of line) {
        expect(point.across >= 0 && point.across <= across.to).toBe(true)
        expect(point.up >= 0 && point.up <= up.to).toBe(true)
      }
    expect(figures.rows.flatMap(({ milliamps }) => milliamps).every(Number.isFinite)).toBe(true)
    expect(points).toEqual([])
    expect(screen === null || screen.volts > 50).toBe(true)
  })

  test('the 6V6 is drawn at 250 V on the screen, past the 315 V it is rated for, with its 12 W on the sheet', () => {
    const { screen, whole } = sheetOf('6V6', { watts: 12, volts: 315 })
    expect(screen).toEqual({ volts: 250, assumed: false, lowest: 250, highest: 250 })
    expect(whole.frame.across.to).toBeGreaterThanOrEqual(315)
    expect(whole.heat?.line.length).toBeGreaterThan(1)
  })

  test('a 1 W triode shows where 1 W lies', () => {
    const { whole } = sheetOf('12AX7', { watts: 1, volts: 300 })
    const [left] = whole.heat?.line ?? []
    expect(left && left.across / whole.frame.across.to).toBeLessThan(0.7)
  })

  test('speaks of no readings, and of no box', () => {
    const sheet = sheetOf('6V6', { watts: 12, volts: 315 })
    expect(plotNotes(sheet, words)[0]).toMatch(/^The curves are a model of an average tube, good to about ±\s\d+\s%/)
    expect(plotLegend(sheet, words).map(({ kind }) => kind)).toEqual(['curve', 'heat'])
    expect(plotDescription(sheet, words)).not.toMatch(/idles/)
  })

  test('of an own type says whose curves were moved to how many points', () => {
    const type = ownTubeTypeOf('own', ownEntry())
    const input = { typeId: 'own', designation: '6L6-QH25', section: 'first', rating: null, ratedVolts: 450 } as const
    const sheet = typeSheet({ ...input, catalogue: { ownTypes: [type] } })
    if (!sheet.ok) return expect.fail(sheet.fault.code)
    expect(plotNotes(sheet.value, words)).toContain(
      'The curves are those of 6L6, moved to the operating point noted for 6L6-QH25. Away from there they are only as good as the likeness.',
    )
  })
})
