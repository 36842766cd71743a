/** Idle figures worked out outside this project, each with its source. */
import { describe, expect, test } from 'vitest'
import { COPPER_PER_CELSIUS } from '@/lib/domain/bias/idle-currents'
import { currentAtShare } from '@/lib/domain/bias/idle-target'
import { mul, standardUncertainty, sub, withLimits, withStandard } from '@/lib/domain/bias/uncertain'
import { amps, ratio, volts, watts } from '@/lib/domain/units'
import { idle, overCathodeSense, perfectMeter, resistor, variant } from '../domain/bias/reading-fixture'

const window = { low: ratio(0.7), high: ratio(0.7) }
const atSeventy = { gridSuppliedPushPull: window, cathodeResistor: window, singleEnded: window }

describe('70 % of 25 W at 450 V (common practice, no source)', () => {
  test('is 38.9 mA', () => {
    expect((1000 * currentAtShare(ratio(0.7), watts(25), volts(450))).toFixed(1)).toBe('38.9')
  })

  test('and 1.59 V across a half primary of 41 Ω, as the reading to aim for', () => {
    const method = {
      kind: 'half-primary-drop',
      drop: volts(1),
      resistor: resistor(41),
      sharedBy: 1,
      possibleWarmingCelsius: 0,
    } as const
    const given = { variant: variant('EL34'), plateVoltage: volts(450), cathodeVoltage: volts(0), method }
    const { target } = idle(given, { windows: atSeventy })
    expect(((target?.plateCurrent ?? 0) * 1000).toFixed(1)).toBe('38.9')
    expect(target?.meterReading?.volts.toFixed(2)).toBe('1.59')
  })
})

/**
 * 425 V, 35.2 mV over 1 Ω ± 1 %, meter 0.5 % + 2 counts, screen current 2.1 mA
 * with 15 % standard uncertainty. Worked by hand after JCGM 100:2008, 5.1.2 and 4.3.7.
 */
describe('425 V, 35.2 mV over 1 Ω ± 1 %, Ig2 2.1 mA ± 15 %: 14.07 W', () => {
  const screen = { kind: 'stated', current: amps(0.0021), standardUncertainty: amps(0.15 * 0.0021) } as const

  test('with one independent limit per voltage, percent and counts together, u is 0.189 W', () => {
    const V = withLimits(425, 'plate volts', 0.005 * 425 + 2 * 0.1)
    const I = mul(
      withLimits(0.0352, 'drop', 0.005 * 0.0352 + 2 * 0.0001),
      withLimits(1, 'conductance of the resistor', 0.01),
    )
    const P = mul(V, sub(I, withStandard(0.0021, 'screen', 0.15 * 0.0021)))
    expect([P.value.toFixed(2), standardUncertainty(P).toFixed(3)]).toEqual(['14.07', '0.189'])
  })

  test('with the gain shared by both voltages and the counts apart, u is 0.187 W', () => {
    const { plateWatts } = idle({ screen })
    expect([plateWatts.value.toFixed(2), plateWatts.standardUncertainty.toFixed(3)]).toEqual(['14.07', '0.187'])
  })
})

test('50 mA less 5 mA screen at 325 V is 14.625 W (common practice, no source)', () => {
  const screen = { kind: 'stated', current: amps(0.005), standardUncertainty: amps(0) } as const
  const given = { plateVoltage: volts(325), cathodeVoltage: volts(0), method: overCathodeSense(0.05, 1, 0), screen }
  expect(idle(given, { meter: perfectMeter }).plateWatts.value).toBeCloseTo(14.625, 12)
})

describe('copper', () => {
  test('0.393 % per °C at 20 °C (standard annealed copper, IEC 60228; Bulletin of the Bureau of Standards 7, no. 1)', () => {
    expect((100 * COPPER_PER_CELSIUS).toFixed(3)).toBe('0.393')
  })

  test('15 °C of warming, not allowed for, overstates by about 6 % (common practice, no source)', () => {
    expect(Math.round(100 * 15 * COPPER_PER_CELSIUS)).toBe(6)
  })
})

// Common practice, no source: a meter of 0.5 % + 2 counts and a 1 % resistor know the cathode current to about ± 1.4 %,
// the limits squared and added; 95.45 % of 4,000,000 sums drawn between the limits lie within 1.2 %.
test('0.5 % + 2 counts and a 1 % resistor know 352 mV of cathode reading to ± 1.2 %', () => {
  const { cathodeAmps } = idle({ method: overCathodeSense(0.352, 10) })
  expect(((100 * cathodeAmps.plusMinus) / cathodeAmps.value).toFixed(1)).toBe('1.2')
})
