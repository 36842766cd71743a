import { describe, expect, test } from 'vitest'
import type { Banded } from '@/lib/domain/bias/banded'
import { DEFAULT_IDLE_WINDOWS, idleVerdict, idleWindow } from '@/lib/domain/bias/idle-verdict'
import { amps, volts } from '@/lib/domain/units'
import { idle, overCathodeSense, perfectMeter, variant } from './reading-fixture'

const percent = (value: number, plusMinus: number): Banded => ({
  value,
  standardUncertainty: plusMinus / 2,
  plusMinus,
  low: value - plusMinus,
  high: value + plusMinus,
  estimate: false,
})

// Windows: common practice, no source.
const fixed = DEFAULT_IDLE_WINDOWS.gridSuppliedPushPull

describe('the idle window', () => {
  test('grid-supplied push-pull is held to 60–70 %', () => {
    expect(idleWindow({ bias: 'grid-supplied', service: 'push-pull-class-ab', windows: DEFAULT_IDLE_WINDOWS })).toEqual(
      {
        low: 0.6,
        high: 0.7,
      },
    )
  })

  test('the 70 % rule never reaches an amp with cathode-resistor bias, whatever its service', () => {
    for (const service of ['push-pull-class-ab', 'single-ended-class-a'] as const) {
      const window = idleWindow({ bias: 'cathode-resistor', service, windows: DEFAULT_IDLE_WINDOWS })
      expect(window).toEqual({ low: 0.8, high: 1 })
    }
  })

  test('single-ended class A is held to 80–100 % with either kind of bias', () => {
    const window = idleWindow({ bias: 'grid-supplied', service: 'single-ended-class-a', windows: DEFAULT_IDLE_WINDOWS })
    expect(window).toEqual({ low: 0.8, high: 1 })
  })
})

describe('the verdict', () => {
  test('65 % ± 3 is within, 75 % ± 3 over, 55 % ± 3 under', () => {
    expect([65, 75, 55].map((value) => idleVerdict(percent(value, 3), fixed).verdict)).toEqual([
      'within',
      'over',
      'under',
    ])
  })

  test('"70 %" known to ± 3 is 67–73 %: uncertain, the upper limit lies in the band', () => {
    expect(idleVerdict(percent(70, 3), fixed)).toMatchObject({
      verdict: 'uncertain',
      limitInBand: 'high',
      percentOff: 0,
    })
  })

  test('59 % ± 2 is uncertain by the lower limit, 65 % ± 8 by both', () => {
    expect(idleVerdict(percent(59, 2), fixed).limitInBand).toBe('low')
    expect(idleVerdict(percent(65, 8), fixed).limitInBand).toBe('both')
  })

  test('a band that ends exactly on a limit does not cross it', () => {
    expect(idleVerdict(percent(67, 3), fixed).verdict).toBe('within')
  })

  test('78.4 % is 12 % too hot for 70 %, 57 % is 5 % too cold for 60 %', () => {
    expect(idleVerdict(percent(78.4, 1), fixed).percentOff).toBeCloseTo(12, 9)
    expect(idleVerdict(percent(57, 1), fixed).percentOff).toBeCloseTo(-5, 9)
  })

  test('the printed rating is a statement of its own: 105 ± 3 over, 99 ± 3 possibly, 90 ± 3 not', () => {
    const window = DEFAULT_IDLE_WINDOWS.cathodeResistor
    expect([105, 99, 90].map((value) => idleVerdict(percent(value, 3), window).overRating)).toEqual([
      'yes',
      'possibly',
      'no',
    ])
  })
})

describe('the target', () => {
  test('from 30 mA at 450 V the middle of 60–70 % of 30 W is 43.3 mA, 13.3 mA hotter', () => {
    const screen = { kind: 'stated', current: amps(0), standardUncertainty: amps(0) } as const
    const given = { plateVoltage: volts(450), cathodeVoltage: volts(0), method: overCathodeSense(0.03, 1, 0), screen }
    const { target, verdict } = idle(given, { meter: perfectMeter })
    expect(verdict.verdict).toBe('under')
    expect(1000 * (target?.plateCurrent ?? 0)).toBeCloseTo((1000 * 0.65 * 30) / 450, 9)
    expect(1000 * (target?.change ?? 0)).toBeCloseTo(13.33, 2)
  })

  test('over a 1 Ω sense resistor the meter shows plate and screen current together', () => {
    const { target } = idle({ variant: variant('EL34') })
    const share = variant('EL34').typicalScreenShare?.share ?? 0
    expect(target?.meterReading?.volts).toBeCloseTo((target?.plateCurrent ?? 0) / (1 - share), 12)
  })

  test('with a cathode-bias resistor there is no reading to trim to: the resistor is changed', () => {
    const method = {
      kind: 'cathode-bias',
      drop: volts(10),
      resistor: overCathodeSense(0, 250).resistor,
      sharedBy: 1,
    } as const
    expect(idle({ method }, { bias: 'cathode-resistor' }).target?.meterReading).toBeNull()
  })
})
