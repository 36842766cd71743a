/** Worked by hand from the formula in each file, or from the source named. */
import { describe, expect, test } from 'vitest'
import { couplingLeakage } from '@/lib/domain/circuit/checks/coupling-leakage'
import { gridLeakCheck, gridLift } from '@/lib/domain/circuit/checks/grid-leak-limit'
import { heaterBudget } from '@/lib/domain/circuit/checks/heater-budget'
import { clippingEstimate, type LoadCase, reflectedLoad } from '@/lib/domain/circuit/checks/load-line'
import { reservoirDischarge } from '@/lib/domain/circuit/checks/reservoir-discharge'
import { reservoirRipple } from '@/lib/domain/circuit/checks/reservoir-ripple'
import { screenDissipation } from '@/lib/domain/circuit/checks/screen-dissipation'
import { tubeCurrents } from '@/lib/domain/model/plate-curves'
import { amps, ohms, volts, watts } from '@/lib/domain/units'
import { given, refused } from '../solved'
import { beam } from '../stage-fixture'

describe('screen dissipation', () => {
  test('400 V and 5 mA are 2 W, 40 % of 5 W', () => {
    expect(screenDissipation(volts(400), amps(0.005), watts(5))).toEqual({ dissipation: 2, share: 0.4 })
  })
  test('without a rating there is no share', () => {
    expect(screenDissipation(volts(400), amps(0.005), null).share).toBeNull()
  })
})

describe('grid leak', () => {
  const limits = { gridSupplied: ohms(100_000), cathodeResistor: ohms(500_000) }
  test('220 kΩ is above 100 kΩ for grid-supplied bias, below 500 kΩ for a cathode resistor', () => {
    expect(gridLeakCheck(ohms(220_000), 1, 'gridSupplied', limits)).toEqual({ limit: 100_000, above: true })
    expect(gridLeakCheck(ohms(220_000), 1, 'cathodeResistor', limits)).toEqual({ limit: 500_000, above: false })
  })
  test('shared by two tubes the limit halves, and is still inside', () => {
    expect(gridLeakCheck(ohms(250_000), 2, 'cathodeResistor', limits)).toEqual({ limit: 250_000, above: false })
  })
  test('nothing printed, nothing claimed', () => {
    const none = { gridSupplied: null, cathodeResistor: null }
    expect(gridLeakCheck(ohms(1e6), 1, 'gridSupplied', none)).toEqual({ limit: null, above: null })
  })
  test('1.5 µA in 220 kΩ is 0.33 V (common practice, no source)', () => {
    expect(gridLift(amps(1.5e-6), ohms(220_000))).toBeCloseTo(0.33, 12)
  })
})

describe('heater winding', () => {
  test('four at 0.9 A and three at 0.3 A leave 0.5 A of 5 A', () => {
    const { drawn, left, share } = heaterBudget([0.9, 0.9, 0.9, 0.9, 0.3, 0.3, 0.3].map(amps), amps(5))
    expect([drawn, left, share].map((value) => value.toFixed(3))).toEqual(['4.500', '0.500', '0.900'])
  })
  test('1.5 A instead of 0.9 A overdraws it by 1.9 A', () => {
    expect(heaterBudget([1.5, 1.5, 1.5, 1.5, 0.3, 0.3, 0.3].map(amps), amps(5)).left).toBeCloseTo(-1.9, 12)
  })
})

describe('coupling capacitor', () => {
  const reading = { gridSupply: volts(-40), gridLeak: ohms(220_000), driverPlate: volts(250) }
  test('a grid 0.33 V up on 220 kΩ takes in 1.5 µA: 193 MΩ from a driver at 250 V', () => {
    const { current, insulation } = couplingLeakage({ ...reading, grid: volts(-39.67) })
    expect(current * 1e6).toBeCloseTo(1.5, 9)
    expect((insulation ?? 0) / 1e6).toBeCloseTo((250 + 39.67) / 1.5, 6)
  })
  test('a grid at its supply, or below, has no leak to it', () => {
    expect(couplingLeakage({ ...reading, grid: volts(-40) }).insulation).toBeNull()
    expect(couplingLeakage({ ...reading, grid: volts(-41) }).insulation).toBeNull()
  })
})

describe('reservoir discharge', () => {
  const charged = { capacitanceFarads: 100e-6, charged: volts(450) }
  test('100 µF from 450 V through 220 kΩ is at 60 V after 44.3 s, and held 10.1 J', () => {
    const { time, energyJoules } = given(reservoirDischarge({ ...charged, resistance: ohms(220_000), safe: volts(60) }))
    expect([time.toFixed(1), energyJoules.toFixed(1)]).toEqual(['44.3', '10.1'])
  })
  test('through 2.2 kΩ to 50 V: 0.483 s, with 92 W in the first instant', () => {
    const { time, peak } = given(reservoirDischarge({ ...charged, resistance: ohms(2200), safe: volts(50) }))
    expect([time.toFixed(3), peak.toFixed(0)]).toEqual(['0.483', '92'])
  })
  test('after the time it gives, the exponential stands at the safe voltage', () => {
    const { time } = given(reservoirDischarge({ ...charged, resistance: ohms(33_000), safe: volts(42) }))
    expect(450 * Math.exp(-time / (33_000 * 100e-6))).toBeCloseTo(42, 10)
  })
  test('below the safe voltage already: no time', () => {
    expect(given(reservoirDischarge({ ...charged, resistance: ohms(2200), safe: volts(500) })).time).toBe(0)
  })
  test('zero volts is never reached, and is refused as a goal', () => {
    expect(refused(reservoirDischarge({ ...charged, resistance: ohms(2200), safe: volts(0) }))).toBe(
      'safe-not-positive',
    )
    expect(refused(reservoirDischarge({ ...charged, resistance: ohms(0), safe: volts(50) }))).toBe(
      'resistance-not-positive',
    )
  })
})

describe('ripple', () => {
  const load = { current: amps(0.1), capacitanceFarads: 100e-6, reservoir: volts(400) }
  test('100 mA on 100 µF: 10 V peak to peak at 50 Hz, 8.33 V at 60 Hz', () => {
    expect(reservoirRipple({ ...load, mainsHertz: 50 }).peakToPeak).toBeCloseTo(10, 12)
    expect(reservoirRipple({ ...load, mainsHertz: 60 }).peakToPeak).toBeCloseTo(8.3333, 4)
  })
  test('of a saw-tooth 10 V high the rms is 2.89 V: so says its sum over a period', () => {
    const samples = Array.from({ length: 10_000 }, (_, place) => ((place + 0.5) / 10_000 - 0.5) * 10)
    const rms = Math.sqrt(samples.reduce((sum, one) => sum + one * one, 0) / samples.length)
    expect(reservoirRipple({ ...load, mainsHertz: 50 }).rms).toBeCloseTo(rms, 6)
  })
})

describe('load line', () => {
  const pushPull: LoadCase = {
    tube: beam,
    tubesPerSide: 1,
    plate: volts(450),
    screen: volts(400),
    plateCurrent: amps(0.05),
    load: ohms(5600),
    arrangement: 'push-pull',
  }
  test('the clipping point lies on the line and on the curve at zero grid volts', () => {
    const { clipping } = clippingEstimate(pushPull)
    expect(clipping.current).toBeCloseTo((450 - clipping.plate) / 1400, 10)
    expect(clipping.current).toBeCloseTo(tubeCurrents(beam, clipping.plate, 400, 0).plate, 8)
  })
  test('power is that of a sine with the swing as its peak', () => {
    const { clipping, power } = clippingEstimate(pushPull)
    expect(power).toBeCloseTo((450 - clipping.plate) ** 2 / 2 / 1400, 10)
  })
  test('a single tube at 50 mA into 5 kΩ clips at cutoff: ½·I²·R = 6.25 W', () => {
    const one = clippingEstimate({ ...pushPull, arrangement: 'single-ended', load: ohms(5000) })
    expect(one.clips).toBe('at-cutoff')
    expect(one.power).toBeCloseTo(6.25, 10)
    expect(one.cutoff.plate).toBeCloseTo(700, 10)
  })
  test('into 20 kΩ it clips at zero grid first', () => {
    const one = clippingEstimate({ ...pushPull, arrangement: 'single-ended', load: ohms(20_000) })
    expect(one.clips).toBe('at-zero-grid')
    expect(one.power).toBeLessThan(0.5 * 0.05 ** 2 * 20_000)
  })
  test('8 Ω through 26.5 to 1 shows as 5618 Ω', () => {
    expect(reflectedLoad(ohms(8), 26.5)).toBeCloseTo(5618, 6)
  })
  test('a load of nothing is a mistake', () => {
    expect(() => clippingEstimate({ ...pushPull, load: ohms(0) })).toThrow('load above zero')
  })
})
