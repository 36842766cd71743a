import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { individualTube, type TestPoint, type TestRecord, untestedTube } from '@/lib/domain/model/individual-tube'
import { type LogScales, loggedPoint, scaledTube } from '@/lib/domain/model/tube-scales'
import { type TypeModel, typeModel } from '@/lib/domain/model/type-model'
import { amps, siemens, volts } from '@/lib/domain/units'

function curves(typeId: string): TypeModel {
  const found = typeModel(typeId)
  if (!found.ok) throw new Error(found.fault)
  return found.value
}

const point = (plate: number, screen: number, grid: number): TestPoint => ({
  plateToCathode: volts(plate),
  screenToCathode: volts(screen),
  gridToCathode: volts(grid),
})

type Shares = { readonly plate: number; readonly gm?: number; readonly screen?: number }

/** What a tube with these scales reads at the point, with relative standard uncertainties. */
function reads(type: TypeModel, scales: LogScales, at: TestPoint, shares: Shares): TestRecord {
  const here = loggedPoint(scaledTube(type.parameters, scales), at)
  return {
    point: at,
    plateCurrent: { value: amps(here.plate), standard: here.plate * shares.plate },
    transconductance: shares.gm ? { value: siemens(here.gm), standard: here.gm * shares.gm } : null,
    screenCurrent: shares.screen ? { value: amps(here.screen), standard: here.screen * shares.screen } : null,
  }
}

const SL = curves('6L6')
const AT_250 = point(250, 250, -14)
const AT_400 = point(400, 400, -36)

function tubeOf(type: TypeModel, records: readonly TestRecord[]) {
  const found = individualTube(type, records)
  if (!found.ok) throw new Error(found.fault)
  return found.value
}

describe('individual tube', () => {
  it('finds the P and mu it was read with, within 1e-8, over ±30 % in P and ±15 % in mu', () => {
    const scale = (half: number) => fc.double({ min: -half, max: half, noNaN: true })
    fc.assert(
      fc.property(scale(0.3), scale(0.15), (p, mu) => {
        const tube = tubeOf(SL, [reads(SL, [p, mu, 0], AT_250, { plate: 0.02, gm: 0.03 })])
        expect(Math.abs(tube.scales[0] - p)).toBeLessThan(1e-8)
        expect(Math.abs(tube.scales[1] - mu)).toBeLessThan(1e-8)
      }),
      { seed: 7, numRuns: 300 },
    )
  })

  it('finds all three scales where the screen current is recorded too', () => {
    const tube = tubeOf(SL, [reads(SL, [0.1, -0.05, 0.3], AT_250, { plate: 0.02, gm: 0.03, screen: 0.05 })])
    for (const [i, wanted] of [0.1, -0.05, 0.3].entries()) expect(tube.scales[i]).toBeCloseTo(wanted, 8)
    expect(tube.basis).toBe('current-and-transconductance')
  })

  it('finds P and mu of a power triode', () => {
    const type = curves('300B')
    const tube = tubeOf(type, [reads(type, [0.12, 0.04, 0], point(300, 300, -61), { plate: 0.02, gm: 0.03 })])
    expect(tube.scales[0]).toBeCloseTo(0.12, 8)
    expect(tube.scales[1]).toBeCloseTo(0.04, 8)
  })

  it('scales P alone where only the current is known: 20 % more current is 20 % more P, mu as the type ± 3 %', () => {
    const tube = tubeOf(SL, [reads(SL, [Math.log(1.2), 0, 0], AT_250, { plate: 0.02 })])
    expect(tube.basis).toBe('current-only')
    expect(Math.exp(tube.scales[0])).toBeCloseTo(1.2, 8)
    expect(tube.scales[1]).toBeCloseTo(0, 8)
    expect(Math.sqrt(tube.covariance[1]?.[1] ?? 0)).toBeCloseTo(0.03, 8)
  })

  it('covariance is that of the readings carried through: 400 drawn records spread as it says, within 15 %', () => {
    // A sample of 400 has a standard deviation known to 1/√800 = 3.5 %; 15 % is four of these.
    const nominal = reads(SL, [0, 0, 0], AT_250, { plate: 0.02, gm: 0.03 })
    const stated = tubeOf(SL, [nominal]).covariance
    let state = 12345
    const uniform = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0
      return (state + 0.5) / 2 ** 32
    }
    const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
    const drawn = Array.from({ length: 400 }, () => {
      const current = nominal.plateCurrent.value * Math.exp(0.02 * normal())
      const gm = (nominal.transconductance?.value ?? 0) * Math.exp(0.03 * normal())
      const record: TestRecord = {
        ...nominal,
        plateCurrent: { value: amps(current), standard: 0.02 * current },
        transconductance: { value: siemens(gm), standard: 0.03 * gm },
      }
      return tubeOf(SL, [record]).scales
    })
    const spread = Math.sqrt(drawn.reduce((sum, [, mu]) => sum + mu * mu, 0) / drawn.length)
    expect(Math.abs(spread / Math.sqrt(stated[1]?.[1] ?? 0) - 1)).toBeLessThan(0.15)
  })

  it('two equal records halve the variance of P and mu', () => {
    const record = reads(SL, [0.1, 0.02, 0], AT_250, { plate: 0.02, gm: 0.03, screen: 0.05 })
    const [one, two] = [tubeOf(SL, [record]), tubeOf(SL, [record, record])]
    for (const i of [0, 1, 2]) expect((one.covariance[i]?.[i] ?? 0) / (two.covariance[i]?.[i] ?? 1)).toBeCloseTo(2, 6)
    expect(two.agreement?.chiSquare).toBeCloseTo(0, 8)
    expect(two.agreement?.spare).toBe(3)
  })

  it('the surer of two records weighs more, and records that disagree show in chi-square', () => {
    const sure = reads(SL, [0, 0, 0], AT_250, { plate: 0.01, gm: 0.01 })
    const unsure = reads(SL, [0.3, 0, 0], AT_250, { plate: 0.05, gm: 0.05 })
    const tube = tubeOf(SL, [sure, unsure])
    // Weights 25 : 1 of a difference of 0.3.
    expect(tube.scales[0]).toBeCloseTo(0.3 / 26, 3)
    expect(tube.agreement?.chiSquare).toBeGreaterThan(10)
  })

  it('an untested tube is its type with the assumed spread', () => {
    const tube = untestedTube(SL)
    expect(tube.parameters).toEqual(SL.parameters)
    expect(tube.covariance.map((row, i) => Math.sqrt(row[i] ?? 0))).toEqual([0.1, 0.03, 0.35])
  })

  it.each([
    { fault: 'no-record', records: [] },
    {
      fault: 'reading-not-positive',
      records: [
        { ...reads(SL, [0, 0, 0], AT_250, { plate: 0.02 }), plateCurrent: { value: amps(0), standard: 0.001 } },
      ],
    },
    {
      fault: 'reading-not-positive',
      records: [{ ...reads(SL, [0, 0, 0], AT_250, { plate: 0.02 }), plateCurrent: { value: amps(0.07), standard: 0 } }],
    },
    {
      fault: 'test-point-cut-off',
      records: [{ ...reads(SL, [0, 0, 0], AT_250, { plate: 0.02 }), point: point(250, 250, -200) }],
    },
    { fault: 'unlike-the-type', records: [reads(SL, [2, 0, 0], AT_250, { plate: 0.02 })] },
    { fault: 'unlike-the-type', records: [reads(SL, [-2, 0, 0], AT_250, { plate: 0.02, gm: 0.03 })] },
  ])('refuses with $fault', ({ fault, records }) => {
    expect(individualTube(SL, records)).toEqual({ ok: false, fault })
  })

  it('gives finite numbers or a named refusal for 2000 wild records of any output type', () => {
    const types = ['6V6', '6L6', 'EL34', 'EL84', 'KT88', '6F6', '2A3', '300B'].map(curves)
    // Half of the readings lie anywhere, half within a factor ten of the type.
    const size = fc.record({
      anywhere: fc.boolean(),
      value: fc.double({ min: 1e-9, max: 10, noNaN: true }),
      factor: fc.double({ min: -2.3, max: 2.3, noNaN: true }),
    })
    type Size = { anywhere: boolean; value: number; factor: number }
    const reading = (size: Size, nominal: number): number =>
      size.anywhere || !(nominal > 1e-12) ? size.value : nominal * Math.exp(size.factor)
    const wild = fc.record({
      type: fc.constantFrom(...types),
      plate: fc.double({ min: -100, max: 1000, noNaN: true }),
      screen: fc.double({ min: -100, max: 600, noNaN: true }),
      grid: fc.double({ min: -150, max: 30, noNaN: true }),
      current: size,
      gm: fc.option(size),
      ig2: fc.option(size),
    })
    let settled = 0
    fc.assert(
      fc.property(wild, ({ type, plate, screen, grid, current, gm, ig2 }) => {
        const here = loggedPoint(type.parameters, point(plate, screen, grid))
        const ia = reading(current, here.plate)
        const slope = gm && reading(gm, here.gm)
        const screenCurrent = ig2 && reading(ig2, here.screen)
        const found = individualTube(type, [
          {
            point: point(plate, screen, grid),
            plateCurrent: { value: amps(ia), standard: ia * 0.03 },
            transconductance: slope === null ? null : { value: siemens(slope), standard: slope * 0.05 },
            screenCurrent:
              screenCurrent === null ? null : { value: amps(screenCurrent), standard: screenCurrent * 0.1 },
          },
        ])
        if (!found.ok) return
        settled++
        expect([...found.value.scales, ...found.value.covariance.flat()].every(Number.isFinite)).toBe(true)
        for (const i of [0, 1, 2]) expect(found.value.covariance[i]?.[i]).toBeGreaterThan(0)
      }),
      { seed: 11, numRuns: 2000 },
    )
    expect(settled).toBeGreaterThan(100)
  })

  it('combines a 250 V and a 400 V record into less uncertainty than either', () => {
    const low = reads(SL, [0.1, 0.03, 0], AT_250, { plate: 0.02, gm: 0.03 })
    const high = reads(SL, [0.1, 0.03, 0], AT_400, { plate: 0.02, gm: 0.03 })
    const variance = (records: readonly TestRecord[]): number => tubeOf(SL, records).covariance[1]?.[1] ?? Number.NaN
    expect(variance([low, high])).toBeLessThan(Math.min(variance([low]), variance([high])))
  })
})
