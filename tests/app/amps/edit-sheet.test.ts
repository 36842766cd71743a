import { describe, expect, it } from 'vitest'
import { rowsOf } from '@/app/_components/form/edit-rows'
import { editSheet } from '@/app/amps/[ampId]/sheet/edit-sheet'

const EMPTY = { ampId: 'a1', version: '1', outputClass: 'push-pull' }
const positions = (values: Record<string, string> | null) =>
  rowsOf(values ?? {}, 'sockets').map(({ position }) => position)

describe('the buttons of the sheet', () => {
  it('an empty sheet starts with a usual layout and its kind of output stage', () => {
    const started = editSheet(
      { ...EMPTY, edit: 'layout:single-ended:with-rectifier' },
      'layout:single-ended:with-rectifier',
    )
    expect(started?.outputClass).toBe('single-ended')
    expect(rowsOf(started ?? {}, 'sockets').map(({ position, role }) => `${position} ${role}`)).toEqual([
      'V1 preamp',
      'V2 output',
      'V3 rectifier',
    ])
  })

  it('a layout never sweeps away what is there', () => {
    const one = editSheet(EMPTY, 'add:sockets') ?? {}
    expect(editSheet(one, 'layout:grid-quad:without-rectifier')).toEqual(one)
  })

  it('a socket added takes the lowest free number', () => {
    const started = editSheet(EMPTY, 'layout:cathode-pair:without-rectifier') ?? {}
    const without = editSheet(started, 'remove:sockets:1') ?? {}
    expect(positions(editSheet(without, 'add:sockets'))).toEqual(['V1', 'V3', 'V4', 'V2'])
  })

  it('no edit is none', () => {
    expect(editSheet(EMPTY, '')).toBeNull()
    expect(editSheet(EMPTY, 'layout:nonsense:with-rectifier')).toBeNull()
  })
})
