import { describe, expect, it } from 'vitest'
import { settleSheet } from '@/lib/domain/amp/settle-sheet'
import { plainSocket, SOCKET_ROLES, type SocketDetails } from '@/lib/domain/amp/socket'
import { LAYOUT_NAMES, RECTIFIERS, usualLayout } from '@/lib/domain/amp/usual-layouts'

const output = (position: string, over: Partial<SocketDetails> = {}) => ({
  ...plainSocket(position, 'output'),
  ...over,
})
const settledOf = (outputClass: 'push-pull' | 'single-ended', rows: SocketDetails[]) => {
  const settled = settleSheet(outputClass, rows)
  if (!settled.ok) throw new Error(settled.fault.code)
  return settled.value
}

describe('positions', () => {
  it.each([
    ['V1', 'v1'],
    ['V 1', 'V1'],
    ['V1', ' V1 '],
  ])('“%s” and “%s” are one', (first, second) => {
    const settled = settleSheet('push-pull', [plainSocket(first, 'preamp'), plainSocket(second, 'output')])
    expect(settled).toEqual({ ok: false, fault: { code: 'position-twice', position: second.trim() } })
  })

  it('V1 and V10 are two', () => {
    expect(settleSheet('push-pull', [plainSocket('V1', 'preamp'), plainSocket('V10', 'preamp')]).ok).toBe(true)
  })
})

describe('values of an output socket', () => {
  const full = {
    biasKind: 'grid-supplied',
    side: 'A',
    cathodeOhms: 1,
    senseOhms: 1,
    screenOhms: 470,
    halfPrimaryOhms: 81.6,
  } as const

  it.each(SOCKET_ROLES.filter((role) => role !== 'output'))('are left out and named on a %s socket', (role) => {
    const { sockets, leftOut } = settledOf('push-pull', [output('V1', { ...full, role })])
    expect(sockets).toEqual([{ ...plainSocket('V1', role) }])
    expect(leftOut.map(({ label }) => label)).toEqual([
      'bias kind',
      'side',
      'cathode resistor',
      'sense resistor',
      'screen resistor',
      'half primary',
    ])
  })

  it('keep no side in a single-ended stage', () => {
    const { sockets, leftOut } = settledOf('single-ended', [output('V2', full)])
    expect(sockets[0]).toEqual({ ...output('V2', full), side: '' })
    expect(leftOut).toEqual([{ position: 'V2', label: 'side' }])
  })

  it('join the usual match group when none is written', () => {
    const rows = [output('V2', { matchGroup: '' }), output('V3', { matchGroup: 'reverb drive' })]
    expect(settledOf('push-pull', rows).sockets.map(({ matchGroup }) => matchGroup)).toEqual(['output', 'reverb drive'])
  })
})

describe('sharing', () => {
  it('of one cathode resistor by three, with two output sockets, is refused', () => {
    const settled = settleSheet('push-pull', [output('V3', { cathodeSharedBy: 3 }), output('V4')])
    expect(settled).toMatchObject({
      ok: false,
      fault: { code: 'shared-by-too-many', position: 'V3', count: 3, sockets: 2 },
    })
  })

  it('of half a primary by two is refused when only one socket is on side A', () => {
    const rows = [output('V3', { side: 'A', halfSharedBy: 2 }), output('V4', { side: 'B' })]
    expect(settleSheet('push-pull', rows)).toMatchObject({ ok: false, fault: { part: 'half primary', sockets: 1 } })
  })

  it('of half a primary by two stands while sides are not known', () => {
    expect(settleSheet('push-pull', [output('V3', { halfSharedBy: 2 }), output('V4')]).ok).toBe(true)
  })
})

describe('usual layouts', () => {
  const all = LAYOUT_NAMES.flatMap((name) => RECTIFIERS.map((rectifier) => ({ name, rectifier })))

  it.each(all)('$name $rectifier is a sheet that can be kept as it is', ({ name, rectifier }) => {
    const { outputClass, sockets } = usualLayout(name, rectifier)
    expect(settleSheet(outputClass, sockets)).toEqual({ ok: true, value: { sockets, leftOut: [] } })
    expect(sockets.some(({ role }) => role === 'rectifier')).toBe(rectifier === 'with-rectifier')
  })

  it('claim no type and no resistance', () => {
    for (const { name, rectifier } of all)
      for (const socket of usualLayout(name, rectifier).sockets)
        expect(socket).toMatchObject({
          typeFitted: '',
          cathodeOhms: null,
          senseOhms: null,
          screenOhms: null,
          halfPrimaryOhms: null,
        })
  })

  it('of a quad has two tubes on each half of the primary', () => {
    const outputs = usualLayout('grid-quad', 'without-rectifier').sockets.filter(({ role }) => role === 'output')
    expect(outputs.map(({ position, side, halfSharedBy }) => [position, side, halfSharedBy])).toEqual([
      ['V4', 'A', 2],
      ['V5', 'A', 2],
      ['V6', 'B', 2],
      ['V7', 'B', 2],
    ])
  })
})
