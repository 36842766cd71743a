import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FITTED_CURVES } from '@/lib/domain/model/fitted-parameters'
import {
  type AmplifyingParameters,
  CURVE_NUMBERS,
  curvesInto,
  diodeCurrent,
  diodeDrop,
  type PlateCurves,
  pentodeCurrents,
  triodeCurrents,
  tubeCurrents,
} from '@/lib/domain/model/plate-curves'

const tubes = Object.entries(FITTED_CURVES).map(([key, curve]) => ({ key, tube: curve.parameters }))
const anyTube = fc.constantFrom(...tubes)
const volt = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const seeded = { seed: 20240531, numRuns: 3000 }

type Names = readonly [keyof PlateCurves, keyof PlateCurves, 0 | 1 | 2]
const SLOPES: readonly Names[] = [
  ['plate', 'plateByPlate', 0],
  ['plate', 'plateByScreen', 1],
  ['plate', 'plateByGrid', 2],
  ['screen', 'screenByPlate', 0],
  ['screen', 'screenByScreen', 1],
  ['screen', 'screenByGrid', 2],
]

function numericSlope(tube: AmplifyingParameters, at: readonly [number, number, number], names: Names): number {
  const step = 1e-5
  const value = (by: number): number => {
    const [plate, screen, grid] = at.map((one, i) => (i === names[2] ? one + by : one)) as [number, number, number]
    return tubeCurrents(tube, plate, screen, grid)[names[0]]
  }
  return (value(step) - value(-step)) / (2 * step)
}

describe('pentode and triode curves', () => {
  it('evaluate the written form: P = 1 mA/V^1.5, mu 10, mu_a 200, r 0.1, kp 20 at 250/250/-12 V is 67.804 mA and 6.780 mA', () => {
    // By hand: drive -12 + 25 + 1.25 = 14.25 V, w 12.5 V, e = 12.5 ln(1 + exp(1.14)) = 17.71868 V,
    // It = 1e-3 e^1.5 = 74.58425 mA, shared 1 : 0.1. The two floors change it by less than 1e-5.
    const found = pentodeCurrents({ kind: 'pentode', p: 1e-3, mu: 10, muA: 200, r: 0.1, kp: 20 }, 250, 250, -12)
    expect(Math.abs(found.plate / 0.0678038672 - 1)).toBeLessThan(1e-5)
    expect(Math.abs(found.screen / 0.00678038672 - 1)).toBeLessThan(1e-5)
  })

  it('evaluate Koren’s triode: mu 100, x 1.4, kg 1060, kp 600, kvb 300 at 250 V, -2 V is 0.9518 mA', () => {
    // By hand: 600 (1/100 - 2/sqrt(300 + 62500)) = 1.2114787, ln(1 + exp(.)) = 1.4721158,
    // e = 250/600 of that = 0.6133816 V, 2 e^1.4/1060 = 0.9518032 mA.
    const found = triodeCurrents({ kind: 'triode', mu: 100, x: 1.4, kg: 1060, kp: 600, kvb: 300 }, 250, -2)
    expect(Math.abs(found.plate / 9.518032e-4 - 1)).toBeLessThan(1e-6)
    expect(found.screen).toBe(0)
  })

  it('have slopes equal to central differences within 1e-5 of their size, also with the plate below the cathode', () => {
    fc.assert(
      fc.property(anyTube, volt(-50, 800), volt(1, 500), volt(-120, 20), ({ tube }, plate, screen, grid) => {
        const at = [plate, screen, grid] as const
        const here = tubeCurrents(tube, ...at)
        for (const names of SLOPES) {
          const slope = here[names[1]]
          // Rounding: 1e-16 of the current over a step of 1e-5 V. Curvature: with one volt on the
          // screen the cutoff is 1/kp = 5 mV wide, which leaves (1e-5/5e-3)²/6 of the slope.
          const room = 1e-5 * Math.abs(slope) + 1e-10 * here[names[0]] + 1e-15
          expect(Math.abs(numericSlope(tube, at, names) - slope)).toBeLessThanOrEqual(room)
        }
      }),
      seeded,
    )
  })

  it('have slopes whose integral is the current, with the screen from 5 V below the cathode to 5 V above it', () => {
    // Trapezia of 0.2 mV: the cutoff, 10 mV/kp wide there, is resolved to parts in a thousand of the current.
    for (const { tube } of tubes.filter((one) => one.tube.kind === 'pentode')) {
      const at = (screen: number) => tubeCurrents(tube, 100, screen, -0.05)
      let sum = 0
      for (let step = 0; step < 50_000; step++) {
        sum += 1e-4 * (at(-5 + 2e-4 * step).plateByScreen + at(-5 + 2e-4 * (step + 1)).plateByScreen)
      }
      const change = at(5).plate - at(-5).plate
      expect(Math.abs(sum - change)).toBeLessThanOrEqual(1e-3 * Math.max(at(5).plate, at(-5).plate))
    }
  })

  it('never rise when the grid goes more negative', () => {
    fc.assert(
      fc.property(
        anyTube,
        volt(-50, 800),
        volt(-50, 500),
        volt(-150, 20),
        volt(0, 60),
        ({ tube }, plate, screen, grid, by) => {
          const before = tubeCurrents(tube, plate, screen, grid)
          const after = tubeCurrents(tube, plate, screen, grid - by)
          expect(after.plate).toBeLessThanOrEqual(before.plate)
          expect(after.screen).toBeLessThanOrEqual(before.screen)
        },
      ),
      seeded,
    )
  })

  it('never fall when the plate goes more positive, at grids up to zero', () => {
    fc.assert(
      fc.property(
        anyTube,
        volt(-50, 800),
        volt(1, 500),
        volt(-120, 0),
        volt(0, 100),
        ({ tube }, plate, screen, grid, by) => {
          const below = tubeCurrents(tube, plate, screen, grid).plate
          expect(tubeCurrents(tube, plate + by, screen, grid).plate).toBeGreaterThanOrEqual(below)
        },
      ),
      seeded,
    )
  })

  it.each(tubes)('$key: plate current dies with the plate voltage', ({ tube }) => {
    const hot = tubeCurrents(tube, 250, 250, 0).plate
    expect(tubeCurrents(tube, 1, 250, 0).plate).toBeLessThan(0.1 * hot)
    expect(tubeCurrents(tube, 0, 250, 0).plate).toBeLessThan(0.01 * hot)
    expect(tubeCurrents(tube, -2, 250, 0).plate).toBeLessThan(1e-6 * hot)
    expect(tubeCurrents(tube, -100, 250, 0).plate).toBeLessThan(1e-12 * hot)
  })

  it('scale with P: twice the perveance is twice every current and slope', () => {
    const tube = { kind: 'pentode', p: 1e-3, mu: 10, muA: 200, r: 0.1, kp: 20 } as const
    const once = pentodeCurrents(tube, 300, 250, -15)
    const twice = pentodeCurrents({ ...tube, p: 2e-3 }, 300, 250, -15)
    for (const name of Object.keys(once) as (keyof PlateCurves)[]) expect(twice[name]).toBeCloseTo(2 * once[name], 14)
  })

  it('stay finite and not negative for any finite voltages', () => {
    const wild = fc.oneof(volt(-1e308, 1e308), volt(-2000, 2000), fc.constantFrom(0, -0, 5e-324, -5e-324))
    fc.assert(
      fc.property(anyTube, wild, wild, wild, ({ tube }, plate, screen, grid) => {
        const out = new Float64Array(CURVE_NUMBERS)
        curvesInto(tube, plate, screen, grid, out)
        expect(out.every(Number.isFinite)).toBe(true)
        expect(out[0]).toBeGreaterThanOrEqual(0)
        expect(out[4]).toBeGreaterThanOrEqual(0)
      }),
      seeded,
    )
  })

  it('write from the index given and leave the rest of the array alone', () => {
    const out = new Float64Array(CURVE_NUMBERS + 4).fill(7)
    curvesInto(FITTED_CURVES['6L6']?.parameters as AmplifyingParameters, 250, 250, -14, out, 2)
    expect([out[0], out[1], out[10], out[11]]).toEqual([7, 7, 7, 7])
    expect(out[2]).toBe(tubeCurrents(FITTED_CURVES['6L6']?.parameters as AmplifyingParameters, 250, 250, -14).plate)
  })

  it('refuse a voltage that is not a number, naming it', () => {
    const tube = { kind: 'pentode', p: 1e-3, mu: 10, muA: 200, r: 0.1, kp: 20 } as const
    expect(() => pentodeCurrents(tube, Number.NaN, 250, 0)).toThrow('NaN')
  })
})

describe('rectifier', () => {
  const tube = { kind: 'diode', k: 0.125 / 60 ** 1.5 } as const

  it('drops 60 V at 125 mA a plate when that is what fixed k, and 37.8 V at half the current', () => {
    expect(diodeDrop(tube, 0.125).drop).toBeCloseTo(60, 9)
    expect(diodeDrop(tube, 0.0625).drop).toBeCloseTo(60 / 2 ** (2 / 3), 9)
  })

  it('drop and current undo each other above 4 V, slopes included', () => {
    for (const volts of [5, 20, 60, 200]) {
      const { current, slope } = diodeCurrent(tube, volts)
      const back = diodeDrop(tube, current)
      expect(back.drop).toBeCloseTo(volts, 9)
      expect(back.slope * slope).toBeCloseTo(1, 9)
    }
  })

  it('passes next to nothing backwards and drops nothing at no current', () => {
    expect(diodeCurrent(tube, -5).current).toBeLessThan(1e-12)
    expect(diodeDrop(tube, 0).drop).toBe(0)
    expect(diodeDrop(tube, -1).drop).toBe(0)
    expect(diodeDrop(tube, 0).slope).toBeLessThan(1e5)
  })
})
