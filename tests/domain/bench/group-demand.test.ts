import { describe, expect, test } from 'vitest'
import { plainSocket, type Socket } from '@/lib/domain/amp/socket'
import { socketsFor } from '@/lib/domain/bench/group-demand'

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
