import { describe, expect, it } from 'vitest'
import { carriedReading, instrumentCorrection, type ReferenceTube } from '@/lib/domain/stock/instrument-correction'
import { studentT } from '@/lib/domain/stock/student-t'
import type { TubeTest } from '@/lib/domain/stock/tube'
import { volts } from '@/lib/domain/units'
import { section } from '@/tests/support/stocked-shop'

const read = (instrumentName: string, milliamps: number, grid = -14): TubeTest => ({
  ...{
    id: `${instrumentName} ${milliamps}`,
    testedAt: new Date(0),
    testedBy: 'Ines',
    instrumentName,
    calibratedOn: null,
  },
  ...{ shorts: false, leakage: '', gas: '', noise: '', microphony: '', note: '' },
  ...{ plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(grid) },
  sections: [section(milliamps)],
})

const reference = (mark: string, a: number, b: number): ReferenceTube => ({ mark, tests: [read('B', b), read('A', a)] })

describe('the correction between two testers', () => {
  // JCGM 100:2008 (GUM), table G.2, fraction 95 %: 1, 2, 5, 10, 20, 25 and 30 degrees of freedom.
  it('uses the printed points of Student', () => {
    expect([1, 2, 5, 10, 20, 25, 30].map(studentT)).toEqual([12.71, 4.3, 2.57, 2.23, 2.09, 2.06, 2.04])
  })

  // By hand: ratios 1.02, 1.10, 1.18; mean of the logarithms 0.09354, deviation 0.07287; 4.30 × 0.07287 / √3.
  it('three tubes at 1.02, 1.10 and 1.18 times give 1.098 with ± 18 %', () => {
    const tubes = [reference('R-1', 100, 102), reference('R-2', 50, 55), reference('R-3', 70, 82.6)]
    const found = instrumentCorrection(tubes, 'A', 'B', 'plateCurrent')
    expect(found?.factor).toBeCloseTo(Math.cbrt(1.02 * 1.1 * 1.18), 9)
    expect(found?.uncertainty).toBeCloseTo((4.3 * 0.07287) / Math.sqrt(3), 3)
    expect(found?.readingUncertainty).toBeCloseTo(4.3 * 0.07287 * Math.sqrt(4 / 3), 3)
    expect(found?.assumedSpread).toBe(false)
  })

  it('one tube gives a factor, and a spread that is said to be assumed: 1.96 × √2 × 2 %', () => {
    const found = instrumentCorrection([reference('R-1', 100, 110)], 'A', 'B', 'plateCurrent')
    expect(found).toMatchObject({ assumedSpread: true, marks: ['R-1'] })
    expect(found?.factor).toBeCloseTo(1.1, 12)
    expect(found?.uncertainty).toBeCloseTo(0.05544, 5)
  })

  it('readings at two test points are no pair', () => {
    const tube = { mark: 'R-1', tests: [read('B', 60, -16), read('A', 72, -14)] }
    expect(instrumentCorrection([tube], 'A', 'B', 'plateCurrent')).toBeNull()
  })

  it('a reading goes over and comes back the same; without a reference tube it is refused', () => {
    const correction = instrumentCorrection([reference('R-1', 100, 110)], 'A', 'B', 'plateCurrent')
    if (!correction) throw new Error('R-1 was read on both')
    const there = carriedReading(0.05, { from: 'A', to: 'B', figure: 'plateCurrent' }, [correction])
    if (!there.ok) throw new Error(there.fault)
    expect(there.value.value).toBeCloseTo(0.055, 12)
    expect(there.value.halfWidth).toBeCloseTo(0.055 * correction.readingUncertainty, 12)
    const back = carriedReading(there.value.value, { from: 'B', to: 'A', figure: 'plateCurrent' }, [correction])
    expect(back.ok && back.value.value).toBeCloseTo(0.05, 12)
    expect(carriedReading(0.05, { from: 'A', to: 'C', figure: 'plateCurrent' }, [correction]).ok).toBe(false)
  })
})
