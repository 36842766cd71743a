/** Two people at one sheet: Ines has saved, the other's form comes in late. */
import { describe, expect, it } from 'vitest'
import { flatRows, type RowValues, rowsOf } from '@/app/_components/form/edit-rows'
import { freshForm } from '@/app/_components/form/form-state'
import { staleSheet } from '@/app/amps/[ampId]/sheet/merge-sheets'

const row = (id: string, position: string, over: RowValues = {}): RowValues => ({
  id,
  position,
  typeFitted: '12AX7',
  cathodeOhms: '',
  ...over,
})
const form = (version: string, rows: readonly RowValues[]) => ({ ampId: 'a1', version, ...flatRows('sockets', rows) })

const V1 = row('s1', 'V1')
const V2 = row('s2', 'V2')
const V3 = row('s3', 'V3')
const BASE = form('2', [V1, V2, V3])

function late(typedRows: readonly RowValues[], savedRows: readonly RowValues[]) {
  const typed = { ...form('2', typedRows), base: JSON.stringify(BASE) }
  const current = { ...form('3', savedRows), base: JSON.stringify(form('3', savedRows)) }
  const state = staleSheet(freshForm(BASE), typed, { current, sentence: 'Ines saved this sheet.' })
  return { state, rows: rowsOf(state.values, 'sockets'), theirs: state.theirs }
}

describe('a sheet saved by two', () => {
  it('takes boxes changed on one side only, and goes on from the saved version', () => {
    const { rows, theirs, state } = late(
      [V1, { ...V2, cathodeOhms: '470' }, V3],
      [{ ...V1, typeFitted: '12AT7' }, V2, V3],
    )
    expect(rows).toEqual([{ ...V1, typeFitted: '12AT7' }, { ...V2, cathodeOhms: '470' }, V3])
    expect(theirs).toEqual({})
    expect(state.values.version).toBe('3')
    expect(state.message).toContain('Ines saved this sheet.')
  })

  it('keeps what was typed where both changed a box, and tells the saved value beside it', () => {
    const { rows, theirs } = late([{ ...V1, cathodeOhms: '470' }, V2, V3], [{ ...V1, cathodeOhms: '250' }, V2, V3])
    expect(rows[0]?.cathodeOhms).toBe('470')
    expect(theirs).toEqual({ 'sockets.0.cathodeOhms': '250' })
  })

  it('does not put a colleague’s value onto another socket when rows were moved here', () => {
    const { rows } = late([V2, V1, V3], [{ ...V1, typeFitted: '12AT7' }, V2, V3])
    expect(rows).toEqual([V2, { ...V1, typeFitted: '12AT7' }, V3])
  })

  it('nor when a row was put in between here', () => {
    const fresh = row('', 'V9')
    const { rows, theirs } = late([V1, fresh, V2, V3], [V1, { ...V2, typeFitted: '12AT7' }, V3])
    expect(rows).toEqual([V1, fresh, { ...V2, typeFitted: '12AT7' }, V3])
    expect(theirs).toEqual({})
  })

  it('keeps a socket the colleague added, beside one added here', () => {
    const [mine, hers] = [row('', 'V4', { cathodeOhms: '100' }), row('s9', 'V5')]
    const { rows } = late([V1, V2, V3, mine], [V1, V2, V3, hers])
    expect(rows).toEqual([V1, V2, V3, mine, hers])
  })

  it('lets go a socket the colleague took out, unless something was typed into it here', () => {
    expect(late([V1, V2, V3], [V1, V3]).rows).toEqual([V1, V3])
    const typed = { ...V2, cathodeOhms: '470' }
    expect(late([V1, typed, V3], [V1, V3]).rows).toEqual([V1, { ...typed, id: '' }, V3])
  })

  it('leaves out what was taken out here', () => {
    expect(late([V1, V3], [V1, { ...V2, typeFitted: '12AT7' }, V3]).rows).toEqual([V1, V3])
  })

  it('a second late save compares with the sheet as saved last', () => {
    const { state } = late([V1, V3], [V1, V2, V3])
    expect(rowsOf(JSON.parse(state.values.base ?? '{}'), 'sockets')).toEqual([V1, V2, V3])
  })
})
