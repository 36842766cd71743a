import { describe, expect, test } from 'vitest'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import type { TrimTarget } from '@/lib/domain/circuit/what-if/trim-for-target'
import { trimBiasResistor, trimGridSupply } from '@/lib/domain/circuit/what-if/trim-for-target'
import { amps, ohms, volts } from '@/lib/domain/units'
import { given, refused, solved, tubeOf } from '../solved'
import { beam, cathodeBiased, gridSupplied, tubeIn } from '../stage-fixture'

const current = (value: number, of = 'hottest'): TrimTarget => ({ quantity: 'plate-current', value, of })
const dissipation = (value: number, of = 'hottest'): TrimTarget => ({ quantity: 'plate-dissipation', value, of })

describe('grid volts for a target', () => {
  test('found volts, put into the stage, give the target to 1e-9', () => {
    const trim = given(trimGridSupply(gridSupplied(), 'bias', dissipation(18, 'V3')))
    const again = given(solveIdle(gridSupplied({ gridSupplies: [{ id: 'bias', voltage: trim.setting, range: null }] })))
    expect(tubeOf(again, 'V3').plateDissipation / 18).toBeCloseTo(1, 9)
    expect(trim.withinRange).toBe(true)
    expect(trim.nearestInRange).toBeNull()
  })

  test('the hottest of unequal tubes is held to it; the others stay below', () => {
    const strong = { ...beam, p: 1.15 * beam.p }
    const stage = gridSupplied({ tubes: [tubeIn('V1'), tubeIn('V2', { tube: strong, side: 'b' })] })
    const { solution } = given(trimGridSupply(stage, 'bias', current(0.04)))
    expect(tubeOf(solution, 'V2').plateCurrent).toBeCloseTo(0.04, 10)
    expect(tubeOf(solution, 'V1').plateCurrent).toBeLessThan(0.04)
  })

  test('a range that ends at −50 V cannot go as hot: said, with what −50 V gives', () => {
    const range = { lowest: volts(-65), highest: volts(-50) }
    const stage = gridSupplied({ gridSupplies: [{ id: 'bias', voltage: volts(-55), range }] })
    const trim = given(trimGridSupply(stage, 'bias', dissipation(18, 'V1')))
    expect(trim.setting).toBeGreaterThan(-50)
    expect(trim.withinRange).toBe(false)
    expect(trim.nearestInRange?.setting).toBe(-50)
    expect(trim.nearestInRange?.reached).toBeLessThan(18)
    const at = solved(gridSupplied({ gridSupplies: [{ id: 'bias', voltage: volts(-50), range }] }))
    expect(trim.nearestInRange?.reached).toBeCloseTo(tubeOf(at, 'V1').plateDissipation, 10)
  })

  test('without a known range nothing is claimed about it', () => {
    const stage = gridSupplied({ gridSupplies: [{ id: 'bias', voltage: volts(-48), range: null }] })
    expect(given(trimGridSupply(stage, 'bias', current(0.03))).withinRange).toBeNull()
  })

  test('2 A from such a tube is out of reach, and the most is told', () => {
    const fault = refused(trimGridSupply(gridSupplied(), 'bias', current(2)))
    const most = solved(gridSupplied({ gridSupplies: [{ id: 'bias', voltage: volts(0), range: null }] }))
    expect(fault).toMatchObject({ code: 'target-out-of-reach', unit: 'A', target: 2 })
    expect(fault.code === 'target-out-of-reach' && fault.most).toBeCloseTo(
      Math.max(...most.tubes.map(({ plateCurrent }) => plateCurrent)),
      10,
    )
  })

  test('of two settings with the same dissipation behind a soft supply the colder is taken', () => {
    const soft = { openCircuit: volts(465), sourceResistance: ohms(4000), rectifier: null, drawn: amps(0) }
    const stage = gridSupplied({ tubes: [tubeIn('V1')], supply: soft })
    const dissipationAt = (grid: number) =>
      solved({ ...stage, gridSupplies: [{ id: 'bias', voltage: volts(grid), range: null }] }).tubes[0]?.plateDissipation
    const [peak, hot] = [dissipationAt(-8) ?? 0, dissipationAt(0) ?? 0]
    expect(hot).toBeLessThan(peak)
    const trim = given(trimGridSupply(stage, 'bias', dissipation((hot + peak) / 2)))
    expect(trim.setting).toBeLessThan(-8)
  })

  test('no such supply, no such socket, no target', () => {
    expect(refused(trimGridSupply(gridSupplied(), 'none', current(0.03))).code).toBe('nothing-to-trim')
    expect(refused(trimGridSupply(gridSupplied(), 'bias', current(0.03, 'V9'))).code).toBe('unknown-socket')
    expect(refused(trimGridSupply(gridSupplied(), 'bias', current(0))).code).toBe('target-not-positive')
  })
})

describe('a bias resistor for a target', () => {
  const trim = given(trimBiasResistor(cathodeBiased(), 'Rk', dissipation(16)))

  test('the exact value meets 16 W, its neighbours of E24 lie on either side', () => {
    expect(trim.exact.reached / 16).toBeCloseTo(1, 9)
    expect(trim.cooler.setting).toBeGreaterThan(trim.exact.setting)
    expect(trim.hotter.setting).toBeLessThan(trim.exact.setting)
    expect(trim.cooler.reached).toBeLessThan(16)
    expect(trim.hotter.reached).toBeGreaterThan(16)
  })

  test('the cooler value, fitted, gives what was promised', () => {
    const fitted = solved(cathodeBiased({ biasResistors: [{ id: 'Rk', resistance: trim.cooler.setting }] }))
    expect(Math.max(...fitted.tubes.map((tube) => tube.plateDissipation))).toBeCloseTo(trim.cooler.reached, 10)
  })
})
