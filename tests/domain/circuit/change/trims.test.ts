import { describe, expect, test } from 'vitest'
import { type Trim, trimsFor } from '@/lib/domain/circuit/change/trims'
import { whatIf } from '@/lib/domain/circuit/change/what-if'
import { ohms } from '@/lib/domain/units'
import { circuitOf, fullFacts, sheetOf, trueStage } from '../amp/read-amp'
import { given, refused } from '../solved'

const grid = ([trim, ...more]: readonly Trim[]) => {
  if (trim?.kind !== 'grid' || more.length > 0) throw new Error('Not one grid trim')
  return trim
}

describe('one grid adjustment for both tubes', () => {
  const stage = trueStage()
  const circuit = circuitOf(stage, {
    facts: { ...fullFacts(stage), gridColdestVolts: -60, gridHottestVolts: -38 },
  })

  test('the hottest tube is brought to 65 % of 30 W, the middle of 60 to 70 %', () => {
    const trim = grid(given(trimsFor(circuit, {})))
    expect(trim).toMatchObject({
      sockets: ['V4', 'V5'],
      targetPercent: expect.closeTo(65, 9),
      targetWatts: expect.closeTo(19.5, 9),
    })
    const { setting, withinRange } = given(trim.result)
    expect(withinRange).toBe(true)
    const { sockets } = given(whatIf(circuit, { gridVolts: setting }))
    const percents = sockets.map(({ changed }) => changed?.platePercent?.value ?? 0)
    expect(Math.max(...percents)).toBeCloseTo(65, 6)
  })

  test('with a change made the trim is that of the changed stage: EL34 want other volts', () => {
    const as6l6 = given(grid(given(trimsFor(circuit, {}))).result).setting
    const change = { tubes: { all: { kind: 'type', designation: 'EL34' } } } as const
    const trim = grid(given(trimsFor(circuit, change)))
    expect(trim.targetWatts).toBeCloseTo(0.65 * 25, 9)
    const { setting } = given(trim.result)
    expect(Math.abs(setting - as6l6)).toBeGreaterThan(1)
    const { sockets } = given(whatIf(circuit, { ...change, gridVolts: setting }))
    expect(sockets[0]?.changed?.platePercent?.value).toBeCloseTo(65, 6)
  })

  test('an adjustment that ends at −50 V does not reach it: what its hottest end gives is said', () => {
    const cold = circuitOf(stage, { facts: { ...fullFacts(stage), gridColdestVolts: -60, gridHottestVolts: -50 } })
    const trim = given(grid(given(trimsFor(cold, {}))).result)
    expect(trim.withinRange).toBe(false)
    expect(trim.nearestInRange?.setting).toBe(-50)
    expect(trim.nearestInRange?.reached).toBeLessThan(19.5)
  })

  test('where the range is not noted nothing is said of it', () => {
    expect(given(grid(given(trimsFor(circuitOf(stage), {}))).result).withinRange).toBeNull()
  })
})

describe('a shared cathode resistor', () => {
  const stage = trueStage(
    { biasResistors: [{ id: 'Rk', resistance: ohms(300) }], gridSupplies: [] },
    { gridSupply: null, biasResistor: 'Rk', senseResistance: ohms(0) },
  )

  test('aims at 90 %, and the neighbours of the E24 series lie on both sides of it', () => {
    const [trim] = given(trimsFor(circuitOf(stage, { sheet: sheetOf(stage) }), {}))
    if (trim?.kind !== 'resistor') throw new Error('No resistor trim')
    expect(trim).toMatchObject({ nowOhms: 300, targetPercent: 90 })
    const { exact, cooler, hotter } = given(trim.result)
    expect(exact.reached).toBeCloseTo(27, 6)
    expect(cooler.reached).toBeLessThan(27)
    expect(hotter.reached).toBeGreaterThan(27)
    expect(cooler.setting).toBeGreaterThan(exact.setting)
  })
})

test('a change that cannot be is refused here too', () => {
  expect(refused(trimsFor(circuitOf(trueStage()), { pulled: 'V9' })).code).toBe('unknown-socket')
})
