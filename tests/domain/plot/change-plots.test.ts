/** Points of a change on the curve sheets: those of the circuit solved anew (tests/domain/circuit holds it against the truth). */
import { describe, expect, it } from 'vitest'
import type { Change } from '@/lib/domain/circuit/change/change'
import { whatIf } from '@/lib/domain/circuit/change/what-if'
import { changePlots } from '@/lib/domain/plot/change-plots'
import { plotLegend, plotNotes } from '@/lib/domain/plot/plot-text'
import { wordsFor } from '@/lib/domain/words'
import { circuitOf, trueStage } from '@/tests/domain/circuit/amp/read-amp'
import { given } from '@/tests/domain/circuit/solved'

const circuit = circuitOf(trueStage())
const US = wordsFor('US')

function sheetsOf(change: Change) {
  const found = given(whatIf(circuit, change))
  const sheets = changePlots(found, null, circuit).map(({ designation, plot }) => ({ designation, sheet: given(plot) }))
  return { found, sheets }
}
const marked = (sheet: { points: readonly { socket: string; when: string | null }[] }) =>
  sheet.points.map(({ socket, when }) => `${socket} ${when}`)

describe('a change on the curve sheet', () => {
  it('with the type staying: both states of V4 and V5, where the circuit puts them', () => {
    const { found, sheets } = sheetsOf({ gridVolts: -50 })
    expect(sheets.map(({ designation }) => designation)).toEqual(['6L6GC'])
    const [first] = sheets
    if (!first) throw new Error('no sheet')
    expect(marked(first.sheet)).toEqual(['V4 now', 'V5 now', 'V4 then', 'V5 then'])
    const then = first.sheet.points[2]
    const changed = found.sockets[0]?.changed
    expect(then?.at.across).toBe(changed?.plateToCathodeVolts.value)
    expect(then?.at.up).toBe(1000 * (changed?.plateAmps.value ?? 0))
    expect(then?.box.top).toBe(1000 * (changed?.plateAmps.high ?? 0))
  })

  it('with another type: its own curves and only the points then', () => {
    const { sheets } = sheetsOf({ tubes: { all: { kind: 'type', designation: 'KT88' } } })
    expect(sheets.map(({ designation, sheet }) => [designation, ...marked(sheet)])).toEqual([
      ['KT88', 'V4 then', 'V5 then'],
    ])
  })

  it('with another type in one socket and the other pulled: one sheet, one point', () => {
    const proposed = { kind: 'type', designation: 'EL34' } as const
    const { sheets } = sheetsOf({ tubes: { bySocket: { V4: proposed } }, pulled: 'V5' })
    expect(sheets.map(({ designation, sheet }) => [designation, ...marked(sheet)])).toEqual([['EL34', 'V4 then']])
  })

  it('never calls its points readings', () => {
    const [first] = sheetsOf({ gridVolts: -50 }).sheets
    if (!first) throw new Error('no sheet')
    const said = [...plotLegend(first.sheet, US).map(({ text }) => text), ...plotNotes(first.sheet, US)].join(' ')
    expect(said).toContain('Idle as it is now, computed')
    expect(said).toContain('Idle as it then would be, computed')
    expect(said).toContain('The points are computed, not measured.')
    expect(said).not.toMatch(/Idle as read|points are readings/)
  })
})
