import { describe, expect, test } from 'vitest'
import { plainSocket, type Socket } from '@/lib/domain/amp/socket'
import { benchResult } from '@/lib/domain/bench/bench-result'
import { groupDemand, socketsFor } from '@/lib/domain/bench/group-demand'
import type { ReadingSet, SocketEntry } from '@/lib/domain/bench/reading-set'
import { ohms } from '@/lib/domain/units'
import { BENCH_SHOP } from '@/tests/support/bench-shop'

const socket = (position: string, side: Socket['side']): Socket => ({
  ...plainSocket(position, 'output'),
  id: position,
  place: 0,
  side,
})

const sided = (name: string, side: 'A' | 'B' | null) => ({ name, side })

describe('which tube goes into which socket', () => {
  test('side A tubes meet side A sockets, whatever the chassis order', () => {
    const sockets = [socket('V4', 'A'), socket('V5', 'B'), socket('V6', 'A'), socket('V7', 'B')]
    const tubes = [sided('a1', 'A'), sided('a2', 'A'), sided('b1', 'B'), sided('b2', 'B')]
    expect(socketsFor(tubes, sockets).map(({ tube, position }) => [tube.name, position])).toEqual([
      ['a1', 'V4'],
      ['a2', 'V6'],
      ['b1', 'V5'],
      ['b2', 'V7'],
    ])
  })

  test('without sides on the sheet the chassis order decides', () => {
    const tubes = [sided('one', 'A'), sided('two', 'B')]
    const placed = socketsFor(tubes, [socket('V4', ''), socket('V5', '')])
    expect(placed.map(({ position }) => position)).toEqual(['V4', 'V5'])
  })

  test('no socket is given twice and none is left over', () => {
    const sockets = [socket('V1', 'A'), socket('V2', 'A'), socket('V3', 'B'), socket('V4', 'B')]
    const tubes = [sided('a', 'B'), sided('b', 'B'), sided('c', 'A'), sided('d', 'A')]
    expect(new Set(socketsFor(tubes, sockets).map(({ position }) => position)).size).toBe(4)
  })
})

describe('what the tubes of a set must stand', () => {
  const amp = { id: 'a', customerId: 'c', make: 'Test', model: 'One', serial: '', mainsVolts: 230, version: 1 } as const
  const details = {
    ...amp,
    protectionClass: 'I',
    fuse: '',
    outputClass: 'push-pull',
    plateLoadOhms: null,
    note: '',
  } as const
  const sockets = (['A', 'B'] as const).map(
    (side, place): Socket => ({
      ...plainSocket(`V${place}`, 'output', '6550'),
      id: `V${place}`,
      place,
      side,
      biasKind: 'grid-supplied',
      senseOhms: 1,
      screenOhms: 1000,
    }),
  )
  const nothing = { cathodeVolts: null, screenVolts: null, gridVolts: null, halfDropVolts: null } as const
  const entry = (socketId: string, milliamps: number): SocketEntry => ({
    ...nothing,
    ...{ socketId, method: 'cathode-sense', plateVolts: 655, screenDropVolts: 2, senseDropVolts: milliamps / 1000 },
  })
  const demandAt = (...milliamps: readonly [number, number]) => {
    const set: ReadingSet = {
      ...{ id: 's', jobId: 'j', phase: 'before', takenAt: new Date('2026-03-01T10:00:00Z'), takenBy: 'Somebody' },
      ...{ instrumentId: 'm', instrumentName: 'Meter', calibratedOn: null, wallVolts: 230, warmupMinutes: 15 },
      ...{ signalState: 'no signal', resistorTolerancePercent: 1, copperWarmingCelsius: 0, note: '', version: 1 },
      meter: { id: 'Meter', percentOfReading: 0.5, counts: 2, displayCounts: 6000, inputResistance: ohms(1e7) },
      entries: milliamps.map((read, place) => entry(`V${place}`, read)),
    }
    const sheet = { amp: details, sockets }
    const demand = groupDemand(sheet, 'output', benchResult(sheet, set, BENCH_SHOP), BENCH_SHOP)
    if (!demand.ok) throw new Error(demand.fault.code)
    return demand.value
  }

  test('45 and 40 mA at 655 V in a 35 W type: one too hot, so all are set anew, to 65 % or 22.75 W', () => {
    // 40 − 2 = 38 mA × 655 V = 24.9 W is uncertain at 71 %, and would not be left so.
    const { demand, tooHotNow } = demandAt(45, 40)
    expect(tooHotNow).toBe(true)
    expect(demand.idlePlateDissipation).toBeCloseTo(22.75, 6)
  })

  test('40 mA alone, 71 % and not certainly too hot, is set anew as well: nobody would leave it there', () => {
    const { demand, tooHotNow } = demandAt(40, 36)
    expect(tooHotNow).toBe(true)
    expect(demand.idlePlateDissipation).toBeCloseTo(22.75, 6)
  })

  test('37 and 36 mA at 655 V: within, so the 22.9 W that were read are what a tube must stand', () => {
    const { demand, tooHotNow } = demandAt(37, 36)
    expect(tooHotNow).toBe(false)
    // (655 − 0.037) V × (37 − 2) mA, by hand.
    expect(demand.idlePlateDissipation).toBeCloseTo(22.924, 3)
  })
})
