import { describe, expect, test } from 'vitest'
import type { IdleContext, SocketReading } from '@/lib/domain/bias/idle-reading'
import { amps, volts } from '@/lib/domain/units'
import { idle, overCathodeSense, variant } from './reading-fixture'

const kinds = (given: Partial<SocketReading>, amp: Partial<IdleContext> = {}) =>
  idle(given, amp).cautions.map(({ kind }) => kind)

describe('cautions', () => {
  test('425 V and 35 mA on a 6L6GC call for none', () => {
    expect(kinds({ screenVoltage: volts(420), gridVoltage: volts(-40) })).toEqual([])
  })

  test('a 6V6GT at 420 V plate and 400 V screen is above 315 V and 285 V printed, design-centre', () => {
    const { cautions } = idle({ variant: variant('6V6GT'), plateVoltage: volts(420), screenVoltage: volts(400) })
    expect(cautions).toMatchObject([
      { kind: 'plate-volts-over', limit: 315, system: 'design-centre' },
      { kind: 'screen-volts-over', limit: 285, system: 'design-centre' },
    ])
  })

  test('plate volts count from the cathode: 320 V to chassis on a 20 V cathode is within 315 V', () => {
    const method = {
      kind: 'cathode-bias',
      drop: volts(20),
      resistor: overCathodeSense(0, 500).resistor,
      sharedBy: 1,
    } as const
    const given = { variant: variant('6V6GT'), plateVoltage: volts(320), method }
    expect(kinds(given, { bias: 'cathode-resistor' })).toEqual([])
  })

  test('155 mA of cathode current on an EL34 is above 150 mA', () => {
    expect(kinds({ variant: variant('EL34'), plateVoltage: volts(100), method: overCathodeSense(0.155) })).toEqual([
      'cathode-current-over',
    ])
  })

  test('9 mA at 300 V is 2.7 W on the screen of an EL84, above 2 W', () => {
    const screen = { kind: 'stated', current: amps(0.009), standardUncertainty: amps(0) } as const
    const given = { variant: variant('EL84'), plateVoltage: volts(250), screenVoltage: volts(300), screen }
    expect(kinds(given)).toEqual(['screen-dissipation-over'])
  })

  test('a grid at +0.6 V is cautioned, at +0.05 V it is the zero of the meter', () => {
    const amp = { bias: 'cathode-resistor' } as const
    const given = { cathodeVoltage: volts(22), screenVoltage: volts(300) }
    expect(kinds({ ...given, gridVoltage: volts(0.6) }, amp)).toEqual(['grid-positive'])
    expect(kinds({ ...given, gridVoltage: volts(0.05) }, amp)).toEqual([])
  })

  test('a supplied grid at −20 mV has lost its supply; at −8 V, as in small pentodes, it has not', () => {
    expect(kinds({ gridVoltage: volts(-0.02) })).toEqual(['grid-supply-lost'])
    expect(kinds({ gridVoltage: volts(-8) })).toEqual([])
  })

  test('4.98 V on the plate with 42 mA is a slipped point or a lost supply, not a tube to run hotter', () => {
    const lost = idle({ plateVoltage: volts(4.98), method: overCathodeSense(0.042) })
    expect(lost.cautions.map(({ kind }) => kind)).toEqual(['plate-volts-lost'])
  })

  test('3 V on the screen of a plate at 498 V is named, 150 V is not', () => {
    const low = { plateVoltage: volts(498), screenVoltage: volts(3) }
    expect(kinds(low)).toEqual(['screen-not-above-cathode'])
    expect(kinds({ ...low, screenVoltage: volts(150) })).toEqual([])
  })

  test('0.042 mV typed for 0.042 V across 1 Ω: 42 mV would be usual, so the slip is offered; 0.4 mV has none', () => {
    expect(idle({ method: overCathodeSense(0.000042) }).cautions).toMatchObject([
      { kind: 'dead-socket', asVolts: expect.closeTo(0.042, 9) },
    ])
    expect(idle({ method: overCathodeSense(0.0004) }).cautions).toMatchObject([{ kind: 'dead-socket', asVolts: null }])
  })

  test('0.9 mA is a dead socket, and a screen at 0 V is named', () => {
    expect(kinds({ method: overCathodeSense(0.0009), screenVoltage: volts(0) })).toEqual([
      'screen-not-above-cathode',
      'dead-socket',
    ])
  })

  test('123 V at the wall is 5.1 % above a marked 117 V and cautioned; 120 V is 2.6 % and is not', () => {
    const amp = { markedMainsVoltage: volts(117) }
    expect(idle({}, { ...amp, wallVoltage: volts(123) }).cautions).toMatchObject([{ kind: 'wall-high' }])
    expect(idle({}, { ...amp, wallVoltage: volts(120) }).cautions).toEqual([])
  })

  test('1100 V is beyond an ordinary meter', () => {
    expect(kinds({ variant: variant('KT77'), plateVoltage: volts(1100) })).toEqual(['above-meter-range'])
  })
})
