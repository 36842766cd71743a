import { describe, expect, test } from 'vitest'
import { meterRanges, meterReading, readsLowBy, resolutionAt } from '@/lib/domain/bias/meter'
import { correlation, standardUncertainty, sub } from '@/lib/domain/bias/uncertain'
import { ohms, volts } from '@/lib/domain/units'
import { benchMeter } from './reading-fixture'

describe('the bench meter', () => {
  test('6000 counts have 600 mV, 6 V, 60 V, 600 V and 1000 V', () => {
    expect(meterRanges(6000).map(({ upTo }) => upTo)).toEqual([0.6, 6, 60, 600, 1000])
  })

  test('6000 counts resolve 0.1 mV at 35.2 mV, 0.1 V at 425 V and 1 V at 650 V', () => {
    expect(resolutionAt(benchMeter, volts(0.0352))).toBeCloseTo(0.0001, 12)
    expect(resolutionAt(benchMeter, volts(425))).toBeCloseTo(0.1, 12)
    expect(resolutionAt(benchMeter, volts(650))).toBeCloseTo(1, 12)
  })

  test('a reading at the top of a range is taken on the next', () => {
    expect(resolutionAt(benchMeter, volts(6))).toBeCloseTo(0.01, 12)
  })

  test('2000 and 50000 counts start at 200 mV and 500 mV', () => {
    expect(meterRanges(2000).map(({ upTo }) => upTo)).toEqual([0.2, 2, 20, 200, 1000])
    expect(meterRanges(50_000).map(({ upTo }) => upTo)).toEqual([0.5, 5, 50, 500, 1000])
  })

  test('0.5 % + 2 counts at 425 V is √(2.125² + 0.2²)/√3 = 1.232 V', () => {
    expect(standardUncertainty(meterReading(benchMeter, volts(425), 'x'))).toBeCloseTo(1.2323, 4)
  })

  test('two readings of 425 V share the gain: their difference is good to the counts alone', () => {
    const difference = sub(meterReading(benchMeter, volts(425), 'x'), meterReading(benchMeter, volts(425), 'y'))
    expect(standardUncertainty(difference)).toBeCloseTo((0.2 * Math.SQRT2) / Math.sqrt(3), 9)
  })

  test('a negative grid reading goes the other way with the same gain error', () => {
    const plate = meterReading(benchMeter, volts(425), 'x')
    expect(correlation(plate, meterReading(benchMeter, volts(-38), 'y'))).toBeLessThan(-0.9)
  })

  // Common practice, no source: 10 MΩ reads a 1 MΩ source 9 % low, 220 kΩ 2 % low.
  test('10 MΩ reads a 1 MΩ source 9 % low and 220 kΩ 2 % low', () => {
    expect(100 * readsLowBy(benchMeter, ohms(1e6))).toBeCloseTo(9.09, 2)
    expect(100 * readsLowBy(benchMeter, ohms(220e3))).toBeCloseTo(2.15, 2)
  })
})
