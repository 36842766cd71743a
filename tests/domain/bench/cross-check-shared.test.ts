/** Kirchhoff's first law at a shared cathode resistor, on invented stages whose solution is known. */
import { describe, expect, test } from 'vitest'
import { idleWindows } from '@/lib/domain/bench/bench-result'
import { sharedChecks } from '@/lib/domain/bench/cross-check-shared'
import { sharedCheckText } from '@/lib/domain/bench/cross-check-shared-text'
import { suspectText } from '@/lib/domain/bench/cross-check-text'
import { ohms } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { BENCH_SHOP } from '@/tests/support/bench-shop'
import { setOf, sheetOf, trueStage } from '../circuit/amp/read-amp'
import { solved } from '../circuit/solved'

const stage = trueStage(
  { biasResistors: [{ id: 'Rk', resistance: ohms(300) }], gridSupplies: [] },
  { gridSupply: null, biasResistor: 'Rk', senseResistance: ohms(10) },
)
const sheet = sheetOf(stage)
const set = setOf(stage, solved(stage))
const bench = { sheet, set, windows: idleWindows(BENCH_SHOP), catalogue: BENCH_SHOP }
const words = wordsFor('UK')

/** The sheet says other ohms than are there. */
const noted = (cathodeOhms: number) => ({ ...sheet, sockets: sheet.sockets.map((one) => ({ ...one, cathodeOhms })) })

describe('300 Ω shared by two with 10 Ω each of their own', () => {
  test('an honest round: through the resistor flows the sum, to 1e-9 of it', () => {
    const [check, ...more] = sharedChecks(bench)
    expect(more).toEqual([])
    expect(check).toMatchObject({ sockets: ['V4', 'V5'], agree: true, suspects: [] })
    expect(Math.abs(check?.difference.value ?? 1)).toBeLessThan(1e-9 * (check?.sum.value ?? 0))
    expect(check && sharedCheckText(check, words)).toContain('They agree.')
  })

  test('the meter’s gain is in both and cancels: the band of the difference is below that of either', () => {
    const [check] = sharedChecks(bench)
    const worse = Math.hypot(check?.through.plusMinus ?? 0, check?.sum.plusMinus ?? 0)
    expect(check?.difference.plusMinus).toBeLessThan(worse)
    expect(check?.difference.plusMinus).toBeGreaterThan(0)
  })

  test('360 Ω on the sheet: the current comes out a sixth low, and the resistor is told to be 300 Ω', () => {
    const [check] = sharedChecks({ ...bench, sheet: noted(360) })
    expect(check?.percent).toBeCloseTo(-100 / 6, 6)
    expect(check?.agree).toBe(false)
    const drifted = check?.suspects.find(({ kind }) => kind === 'cathode-resistor')
    expect(drifted).toMatchObject({ sheetOhms: 360 })
    expect(drifted?.kind === 'cathode-resistor' && drifted.neededOhms).toBeCloseTo(300, 6)
    expect(drifted && suspectText(drifted, words)).toContain('300 Ω')
    expect(check?.suspects.map(({ kind }) => kind)).toContain('bypass-leak')
  })

  test('250 Ω on the sheet: too much current, which no leak across it explains', () => {
    const [check] = sharedChecks({ ...bench, sheet: noted(250) })
    expect(check?.percent).toBeCloseTo(20, 6)
    expect(check?.suspects.map(({ kind }) => kind)).not.toContain('bypass-leak')
  })

  test('one sense resistor of 12 Ω where 10 Ω is noted is found again', () => {
    const entries = set.entries.map((one, i) =>
      i === 0 ? { ...one, senseDropVolts: (one.senseDropVolts ?? 0) * 1.2, cathodeVolts: null } : one,
    )
    const [check] = sharedChecks({ ...bench, set: { ...set, entries } })
    const sense = check?.suspects.filter(({ kind }) => kind === 'sense-resistor') ?? []
    const found = sense.find((one) => one.kind === 'sense-resistor' && one.part.startsWith('V4'))
    expect(check?.agree).toBe(false)
    expect(found?.kind === 'sense-resistor' && found.neededOhms).toBeCloseTo(12, 6)
  })

  test('with one sharer not read there is nothing to add up', () => {
    expect(sharedChecks({ ...bench, set: { ...set, entries: set.entries.slice(0, 1) } })).toEqual([])
  })
})
