import { describe, expect, test } from 'vitest'
import { milliampsText, voltsText } from '@/lib/domain/bias/bias-figures'
import {
  balanceText,
  cautionText,
  errorSourceText,
  estimateText,
  idleFaultText,
  overRatingText,
  targetText,
  verdictText,
} from '@/lib/domain/bias/bias-text'
import { groupBalance } from '@/lib/domain/bias/group-balance'
import { computeIdle } from '@/lib/domain/bias/idle'
import { amps, volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { context, idle, overCathodeSense, perfectMeter, reading, resistor, variant } from './reading-fixture'

const [us, uk] = [wordsFor('US'), wordsFor('UK')]
const noScreen = { kind: 'triode-strapped' } as const

describe('bench sentences', () => {
  test('a fault names socket, values and units', () => {
    const fault = { code: 'screen-above-cathode', socket: 'V3', screenMilliamps: 51, cathodeMilliamps: 50 } as const
    expect(idleFaultText(fault, us)).toBe(
      'V3: screen current 51.0 mA is above cathode current 50.0 mA. Check the probe or the resistor value.',
    )
  })

  test('US says plate, UK says anode', () => {
    const fault = { code: 'plate-below-cathode', socket: 'V4', plateVolts: 10, cathodeVolts: 12 } as const
    expect(idleFaultText(fault, us)).toBe('V4: plate 10.0 V is below cathode 12.0 V. Check which pins were read.')
    expect(idleFaultText(fault, uk)).toBe('V4: anode 10.0 V is below cathode 12.0 V. Check which pins were read.')
  })

  test('too hot says by how much and which way to turn', () => {
    const hot = idle(
      {
        plateVoltage: volts(450),
        cathodeVoltage: volts(0),
        method: overCathodeSense(0.052266667, 1, 0),
        screen: noScreen,
      },
      { meter: perfectMeter },
    )
    expect(verdictText(hot, us)).toBe(
      '78.4 % of the 30.0 W rating, 12 % too hot for the window of 60 % to 70 %: run it colder.',
    )
    expect(targetText(hot, us)).toBe(
      'For 65 %, aim at 43.3 mA of plate current, 8.9 mA colder: 43.3 mV across V3 resistor (1.00 Ω). Then read plate volts again and repeat.',
    )
    expect(overRatingText(hot, us)).toBeNull()
  })

  test('uncertain names the limit inside the band', () => {
    const close = idle({
      plateVoltage: volts(450),
      cathodeVoltage: volts(0),
      method: overCathodeSense(0.0467),
      screen: noScreen,
    })
    expect(verdictText(close, us)).toMatch(
      /^70\.1 % of .*The limit of 70 % lies inside the 95 % band of 68\.\d to 7\d\.\d %/,
    )
  })

  test('over the rating is said in its own, stronger sentence', () => {
    const glowing = idle({ method: overCathodeSense(0.09), screen: noScreen })
    expect(overRatingText(glowing, uk)).toMatch(
      /^Over the printed rating: 38\.2 W where 30\.0 W .* The valve will not last/,
    )
  })

  test('a dead socket is not told to run hotter', () => {
    const dead = idle({ method: overCathodeSense(0.0001) })
    expect(verdictText(dead, us)).toMatch(/the socket is dead\. Find the fault/)
    expect(verdictText(dead, us)).not.toMatch(/hotter/)
    expect(targetText(dead, us)).toBeNull()
    expect(dead.cautions.map((caution) => cautionText(caution, us))).toEqual([
      expect.stringMatching(/suspects the circuit first/),
    ])
  })

  test('uncertain with the value inside the window asks for nothing to be turned', () => {
    const near = idle({ variant: variant('EL34'), plateVoltage: volts(450), method: overCathodeSense(0.0444) })
    expect(near.verdict).toMatchObject({ verdict: 'uncertain', percentOff: 0 })
    expect(targetText(near, us)).toBeNull()
  })

  test('a colder aim on a cathode resistor asks for a larger one', () => {
    const method = {
      kind: 'cathode-bias',
      drop: volts(20),
      resistor: overCathodeSense(0, 250).resistor,
      sharedBy: 1,
    } as const
    const hot = idle({ method, variant: variant('6V6GT'), plateVoltage: volts(320) }, { bias: 'cathode-resistor' })
    expect(targetText(hot, us)).toMatch(/colder: a larger cathode resistor/)
  })

  test('a fault to be mended first is never told to be set hotter or colder', () => {
    const method = overCathodeSense(0.03)
    const faults = [{ gridVoltage: volts(3.2) }, { gridVoltage: volts(0) }, { plateVoltage: volts(5) }]
    for (const given of faults) {
      const found = idle({ method, ...given })
      expect(verdictText(found, us)).toMatch(/Find the fault before setting anything\.$/)
      expect(verdictText(found, us)).not.toMatch(/hotter|colder/)
      expect(targetText(found, us)).toBeNull()
    }
  })

  test('a positive grid of 42 V asks first whether the minus was left out', () => {
    const caution = { kind: 'grid-positive', volts: volts(42), bias: 'grid-supplied' } as const
    expect(cautionText(caution, us)).toMatch(
      /^The grid reads \+42\.0 V\. If only its minus was left out, correct the read/,
    )
  })

  test('a drop typed in the wrong unit is told in both: 0.042 V is 42.0 mV', () => {
    const [slip] = idle({ method: overCathodeSense(0.000042) }).cautions
    expect(slip && cautionText(slip, us)).toMatch(/If the meter showed 0\.042 V, that is 42\.0 mV: type it in mV\./)
  })

  test('4.2 V across 1 Ω would be 1785 W: refused with the unit to check', () => {
    const computed = computeIdle(reading({ method: overCathodeSense(4.2), screen: noScreen }), context())
    if (computed.ok) throw new Error('not refused')
    // (425 − 4.2) V × 4.2 A = 1767 W, by hand.
    expect(idleFaultText(computed.fault, us)).toBe(
      'V3: 4.20 V across V3 resistor would be 4200 mA of plate current and 1767 W where 30.0 W is the rating. No tube lives through that: check whether the meter showed mV or V, and the resistance on the sheet.',
    )
  })

  test('four times the rating is believed, and says what would be seen', () => {
    expect(overRatingText(idle({ method: overCathodeSense(0.3), screen: noScreen }), us)).toMatch(
      /plate glows red within moments: if it does not, check the drop/,
    )
    expect(overRatingText(idle({ method: overCathodeSense(0.09), screen: noScreen }), us)).not.toMatch(/glows/)
  })

  test('nothing read is written 0, without figures', () => {
    expect([voltsText(0), milliampsText(0), voltsText(0.65)]).toEqual(['0 V', '0 mA', '650 mV'])
  })

  test('currents whose difference lies inside its band are alike as far as is known, and none is called hottest', () => {
    const at = (socket: string, drop: number, side: 'A' | 'B') => ({
      side,
      idle: idle({
        socket,
        method: { ...overCathodeSense(drop), resistor: resistor(1, 0.01, socket) },
        screen: noScreen,
      }),
    })
    const [text, ...more] = balanceText(groupBalance([at('V3', 0.035, 'A'), at('V4', 0.035, 'B')]), us)
    // 1 % of 35 mA, rectangular, twice, and 0.2 mV of counts twice: 2·√(2·(0.35² + 0.2²)/3) = 0.66 mA, by hand.
    expect(text).toBe('Plate currents are alike as far as these readings tell: 0.0 ± 0.7 mA apart.')
    expect(more).toEqual([])
  })

  test('beside a dead socket nothing is compared', () => {
    const at = (socket: string, drop: number) => ({
      side: null,
      idle: idle({ socket, method: overCathodeSense(drop) }),
    })
    expect(balanceText(groupBalance([at('V3', 0.0003), at('V4', 0.035)]), us)).toEqual([])
  })

  test('an assumed screen current is called assumed, with its ±', () => {
    const [reason] = idle().estimates
    if (!reason) throw new Error('no estimate')
    expect(estimateText(reason, us)).toMatch(
      /^Screen current is assumed, not measured: 5\.4 % ± 3 % of cathode current/,
    )
  })

  test('contributions read in bench words', () => {
    const texts = idle().contributions.map(({ source }) => errorSourceText(source, uk))
    expect(texts).toEqual([
      'assumed screen current',
      'meter accuracy (bench meter)',
      'tolerance of V3 resistor',
      'last digit of the reading: V3 resistor drop',
      'last digit of the reading: V3 anode volts',
    ])
  })

  test('a lost bias supply is named only where there is one', () => {
    const grid = { kind: 'grid-positive', volts: volts(1.2) } as const
    expect(cautionText({ ...grid, bias: 'grid-supplied' }, us)).toMatch(/lost bias supply/)
    expect(cautionText({ ...grid, bias: 'cathode-resistor' }, us)).not.toMatch(/bias supply/)
  })

  test('balance names hottest and coldest', () => {
    const at = (socket: string, drop: number, side: 'A' | 'B') => ({
      side,
      idle: idle({ socket, method: overCathodeSense(drop, 1, 0), screen: noScreen }),
    })
    const texts = balanceText(groupBalance([at('V3', 0.035, 'A'), at('V4', 0.038, 'B')]), us)
    expect(texts[0]).toMatch(/^Plate currents lie 3\.00 ± 0\.\d+ mA \(8\.2 %\) apart, V4 hottest, V3 coldest\.$/)
    // One socket a side: the second statement would be the first once more.
    expect(texts).toHaveLength(1)
  })

  test('a stated limit carries its rating system', () => {
    const caution = {
      kind: 'cathode-current-over',
      value: amps(0.155),
      limit: amps(0.15),
      system: 'design-centre',
    } as const
    expect(cautionText(caution, us)).toBe('Cathode current 155 mA is above the printed 150 mA (design-centre).')
  })
})
