import { describe, expect, test } from 'vitest'
import { computeIdle } from '@/lib/domain/bias/idle'
import type { IdleFault } from '@/lib/domain/bias/idle-fault'
import type { IdleContext, SocketReading } from '@/lib/domain/bias/idle-reading'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'
import { context, idle, overCathodeSense, perfectMeter, reading, resistor, variant } from './reading-fixture'

const exact: Partial<IdleContext> = { meter: perfectMeter }
const noScreenDoubt = (milliamps: number): SocketReading['screen'] => ({
  kind: 'stated',
  current: amps(milliamps / 1000),
  standardUncertainty: amps(0),
})

describe('currents by method', () => {
  test('50 mA less 5 mA screen at 325 V is 14.625 W', () => {
    const sense = overCathodeSense(0.05, 1, 0)
    const given = { plateVoltage: volts(325), cathodeVoltage: volts(0), method: sense, screen: noScreenDoubt(5) }
    const { plateWatts, plateAmps } = idle(given, exact)
    expect(plateAmps.value).toBeCloseTo(0.045, 12)
    expect(plateWatts.value).toBeCloseTo(14.625, 12)
    expect(plateWatts.plusMinus).toBe(0)
  })

  test('with no cathode volts given, the drop over the cathode resistor is taken off the plate volts', () => {
    const method: SocketReading['method'] = {
      kind: 'cathode-bias',
      drop: volts(12.5),
      resistor: resistor(250),
      sharedBy: 1,
    }
    const given = { variant: variant('6V6GT'), plateVoltage: volts(262.5), method }
    const { plateToCathodeVolts, cathodeAmps } = idle(given, { bias: 'cathode-resistor', ...exact })
    expect(plateToCathodeVolts.value).toBeCloseTo(250, 12)
    expect(cathodeAmps.value).toBeCloseTo(0.05, 12)
  })

  test('two tubes on one 125 Ω resistor: each is taken at half of 100 mA, ± 10 %, and marked as an estimate', () => {
    const method: SocketReading['method'] = {
      kind: 'cathode-bias',
      drop: volts(12.5),
      resistor: resistor(125, 0),
      sharedBy: 2,
    }
    const { cathodeAmps, estimates } = idle({ method }, { bias: 'cathode-resistor', ...exact })
    expect(cathodeAmps.value).toBeCloseTo(0.05, 12)
    expect(cathodeAmps.standardUncertainty).toBeCloseTo((0.05 * 0.1) / Math.sqrt(3), 12)
    expect(cathodeAmps.estimate).toBe(true)
    expect(estimates.map(({ kind }) => kind)).toContain('equal-split-assumed')
  })

  test('1.59 V over a 41 Ω half primary is 38.8 mA of plate current, measured and no estimate', () => {
    const method: SocketReading['method'] = {
      kind: 'half-primary-drop',
      drop: volts(1.59),
      resistor: resistor(41),
      sharedBy: 1,
      possibleWarmingCelsius: 0,
    }
    const { plateAmps, screenAmps, cathodeAmps } = idle({ method, cathodeVoltage: volts(0) })
    expect(1000 * plateAmps.value).toBeCloseTo(38.78, 2)
    expect([plateAmps.estimate, screenAmps.estimate, cathodeAmps.estimate]).toEqual([false, true, true])
    expect(screenAmps.value / cathodeAmps.value).toBeCloseTo(variant('6L6GC').typicalScreenShare?.share ?? 0, 12)
  })

  test('up to 15 °C of warming takes 2.9 % off the current of a cold-measured winding and widens the band', () => {
    const half = (celsius: number): Partial<SocketReading> => ({
      cathodeVoltage: volts(0),
      method: {
        kind: 'half-primary-drop',
        drop: volts(1.59),
        resistor: resistor(41, 0),
        sharedBy: 1,
        possibleWarmingCelsius: celsius,
      },
    })
    const [hot, cold] = [idle(half(0), exact).plateAmps, idle(half(15), exact).plateAmps]
    expect(cold.value / hot.value).toBeCloseTo(1 / (1 + 0.00393 * 7.5), 12)
    expect(hot.plusMinus).toBe(0)
    // One error between limits alone: 95.45 % of the way to them, to first order.
    const [low, middle] = [1.59 / (41 * (1 + 0.00393 * 15)), cold.value]
    expect((middle - cold.low) / (middle - low)).toBeGreaterThan(0.95)
    expect((middle - cold.low) / (middle - low)).toBeLessThan(1)
    expect((cold.high - middle) / (hot.value - middle)).toBeGreaterThan(0.9)
    expect((cold.high - middle) / (hot.value - middle)).toBeLessThan(1)
    expect(cold.estimate).toBe(true)
  })

  test('2.1 V over a 1 kΩ screen resistor is 2.1 mA measured, and nothing is assumed', () => {
    const screen: SocketReading['screen'] = {
      kind: 'screen-resistor-drop',
      drop: volts(2.1),
      resistor: resistor(1000, 0.05, 'V3 screen'),
    }
    const { screenAmps, plateAmps, screenWatts, estimates } = idle({ screen, screenVoltage: volts(420) }, exact)
    expect(screenAmps.value).toBeCloseTo(0.0021, 12)
    expect(plateAmps.value).toBeCloseTo(0.0331, 12)
    expect(screenWatts?.value).toBeCloseTo((420 - 0.0352) * 0.0021, 12)
    expect(estimates).toEqual([])
  })

  test('a screen strapped to the plate leaves all of 35.2 mA as plate current', () => {
    const { plateAmps, screenAmps, screenWatts } = idle({
      screen: { kind: 'triode-strapped' },
      screenVoltage: volts(425),
    })
    expect([plateAmps.value, screenAmps.value, screenWatts]).toEqual([0.0352, 0, null])
  })

  test('a 2A3 has no screen: nothing is assumed and 60 mA at 250 V is 100 % of 15 W', () => {
    const given = {
      variant: variant('2A3'),
      plateVoltage: volts(250),
      cathodeVoltage: volts(0),
      method: overCathodeSense(0.06),
    }
    const { platePercent, estimates } = idle(given)
    expect(platePercent?.value).toBeCloseTo(100, 9)
    expect(estimates).toEqual([])
  })
})

describe('ratings of the variant', () => {
  test('the same 11.9 W is 99 % for a 6V6GT of 12 W and 85 % for a 6V6GTA of 14 W', () => {
    const given = {
      plateVoltage: volts(350),
      cathodeVoltage: volts(0),
      method: overCathodeSense(0.039, 1, 0),
      screen: noScreenDoubt(5),
    }
    const percent = (name: string) => idle({ ...given, variant: variant(name) }, exact).platePercent?.value
    expect(percent('6V6GT')).toBeCloseTo((100 * 11.9) / 12, 9)
    expect(percent('6V6GTA')).toBeCloseTo((100 * 11.9) / 14, 9)
  })

  test('a 6L6WGB is judged by the lowest rating of its type, and says so', () => {
    const { plateRatingWatts, platePercent, estimates } = idle({ variant: variant('6L6WGB') })
    expect(plateRatingWatts).toBe(19)
    expect(platePercent?.estimate).toBe(true)
    expect(estimates.map(({ kind }) => kind)).toContain('rating-stands-in')
  })

  test('a KT77, whose sources contradict each other, gets watts but no verdict and no target', () => {
    const { plateWatts, platePercent, verdict, target } = idle({ variant: variant('KT77') })
    expect(plateWatts.value).toBeGreaterThan(0)
    expect([platePercent, verdict.verdict, verdict.overRating, target]).toEqual([null, 'no-rating', 'not-known', null])
  })
})

describe('contributions', () => {
  test('shares of the variance add up to 1, largest first, the assumed screen current leading', () => {
    const { contributions } = idle()
    expect(contributions.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
    expect(contributions.map(({ share }) => share)).toEqual(
      contributions.map(({ share }) => share).sort((a, b) => b - a),
    )
    expect(contributions[0]?.source.kind).toBe('screen-share')
  })

  test('the result is a plain object: it survives JSON unchanged', () => {
    const result = idle({ screenVoltage: volts(420), gridVoltage: volts(-38) })
    expect(JSON.parse(JSON.stringify(result))).toEqual(result)
  })
})

describe('readings that are refused', () => {
  const refused = (given: Partial<SocketReading>, amp: Partial<IdleContext> = {}): IdleFault['code'] => {
    const computed = computeIdle(reading(given), context(amp))
    if (computed.ok) throw new Error('not refused')
    return computed.fault.code
  }
  const halfPrimary = { kind: 'half-primary-drop', drop: volts(1.6), resistor: resistor(41), sharedBy: 1 } as const
  const cathodeBias = { kind: 'cathode-bias', drop: volts(12.5), resistor: resistor(250) } as const

  test.each<[IdleFault['code'], Partial<SocketReading>, Partial<IdleContext>?]>([
    ['not-an-output-tube', { variant: variant('12AX7') }],
    [
      'resistance-not-positive',
      { method: { ...overCathodeSense(0.03), resistor: { ...resistor(1), resistance: ohms(0) } } },
    ],
    [
      'tolerance-out-of-range',
      { method: { ...overCathodeSense(0.03), resistor: { ...resistor(1), tolerance: ratio(1) } } },
    ],
    ['drop-negative', { method: overCathodeSense(-0.03) }],
    ['drop-negative', { screen: { kind: 'screen-resistor-drop', drop: volts(-1), resistor: resistor(470) } }],
    ['resistance-not-positive', { screen: { kind: 'screen-resistor-drop', drop: volts(1), resistor: resistor(-470) } }],
    ['shared-by-not-whole', { method: { ...cathodeBias, sharedBy: 1.5 } }, { bias: 'cathode-resistor' }],
    ['shared-by-not-whole', { method: { ...cathodeBias, sharedBy: 0 } }, { bias: 'cathode-resistor' }],
    ['warming-out-of-range', { method: { ...halfPrimary, possibleWarmingCelsius: -1 }, cathodeVoltage: volts(0) }],
    ['method-needs-cathode-resistor', { method: { ...cathodeBias, sharedBy: 1 } }],
    ['missing-cathode-voltage', { method: { ...halfPrimary, possibleWarmingCelsius: 0 } }],
    ['missing-screen-share', { variant: { ...variant('6L6GC'), typicalScreenShare: null } }],
    ['screen-current-negative', { screen: noScreenDoubt(-1) }],
    ['plate-below-cathode', { plateVoltage: volts(10), cathodeVoltage: volts(12) }],
    ['screen-above-cathode', { screen: noScreenDoubt(36) }],
  ])('%s', (code, given, amp) => {
    expect(refused(given, amp)).toBe(code)
  })
})
