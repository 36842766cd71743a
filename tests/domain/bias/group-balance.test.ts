import { describe, expect, test } from 'vitest'
import { type GroupMember, groupBalance } from '@/lib/domain/bias/group-balance'
import { volts } from '@/lib/domain/units'
import { idle, overCathodeSense, resistor } from './reading-fixture'

const screen = { kind: 'triode-strapped' } as const

function member(socket: string, side: 'A' | 'B' | null, milliamps: number): GroupMember {
  const method = { ...overCathodeSense(milliamps / 1000, 1, 0), resistor: resistor(1, 0, `${socket} sense`) }
  return { side, idle: idle({ socket, method, screen }) }
}

describe('balance of an output group', () => {
  const quad = [member('V3', 'A', 35), member('V4', 'A', 37), member('V5', 'B', 38), member('V6', 'B', 40)]

  test('35, 37, 38 and 40 mA spread by 5 mA, 13.3 % of the mean of 37.5 mA', () => {
    const { spread } = groupBalance(quad)
    expect(1000 * (spread?.amps.value ?? 0)).toBeCloseTo(5, 9)
    expect(spread?.percent.value).toBeCloseTo(13.333, 3)
    expect([spread?.hottest, spread?.coldest]).toEqual(['V6', 'V3'])
  })

  test('side A at 36 mA a tube stands 3 mA under side B at 39 mA', () => {
    expect(1000 * (groupBalance(quad).sides?.amps.value ?? 0)).toBeCloseTo(-3, 9)
  })

  test('the shared gain of one meter cancels: 5 mA apart is known better than either current', () => {
    const { spread } = groupBalance(quad)
    const each = idle({ method: overCathodeSense(0.04, 1, 0), screen }).plateAmps
    // Counts of both readings: 0.2 mV/√3 each, √2 together, and 0.5 % of 5 mA.
    const expected = Math.hypot((0.0002 * Math.SQRT2) / Math.sqrt(3), (0.005 * 0.005) / Math.sqrt(3))
    expect(spread?.amps.standardUncertainty).toBeCloseTo(expected, 12)
    expect(spread?.amps.standardUncertainty).toBeLessThan(each.standardUncertainty * Math.SQRT2)
  })

  test('two tubes on one cathode resistor: neither spread nor sides can be told', () => {
    const method = { kind: 'cathode-bias', drop: volts(12.5), resistor: resistor(125), sharedBy: 2 } as const
    const amp = { bias: 'cathode-resistor' } as const
    const pair: GroupMember[] = [
      { side: 'A', idle: idle({ socket: 'V3', method }, amp) },
      { side: 'B', idle: idle({ socket: 'V4', method }, amp) },
    ]
    expect(groupBalance(pair)).toEqual({ spread: null, fromSum: true, sides: null })
  })

  test('two in parallel on each half primary: the sides can be told, the sockets cannot', () => {
    const half = (socket: string, side: 'A' | 'B', drop: number): GroupMember => {
      const method = {
        kind: 'half-primary-drop',
        drop: volts(drop),
        resistor: resistor(40, 0, `half ${side}`),
        sharedBy: 2,
        possibleWarmingCelsius: 0,
      } as const
      return { side, idle: idle({ socket, method, cathodeVoltage: volts(0) }) }
    }
    const { spread, sides } = groupBalance([
      half('V3', 'A', 3.2),
      half('V4', 'A', 3.2),
      half('V5', 'B', 2.8),
      half('V6', 'B', 2.8),
    ])
    expect(spread).toBeNull()
    expect(1000 * (sides?.amps.value ?? 0)).toBeCloseTo(5, 9)
    expect(sides?.amps.plusMinus).toBeLessThan(0.0002)
  })

  test('a single socket has no spread', () => {
    expect(groupBalance([member('V3', null, 35)])).toEqual({ spread: null, fromSum: false, sides: null })
  })
})
