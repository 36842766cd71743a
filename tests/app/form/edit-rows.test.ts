import { describe, expect, it, test } from 'vitest'
import { editedForm, editRows, flatRows, rowsOf } from '@/app/_components/form/edit-rows'
import { freshForm } from '@/app/_components/form/form-state'
import { MOST_ROWS } from '@/app/_components/form/form-values'

const blank = (list: string) => ({ text: `new of ${list}` })
const three = {
  version: '4',
  edit: 'x',
  'lines.0.text': 'a',
  'lines.1.text': 'b',
  'lines.2.text': 'c',
  'other.0.text': 'o',
}
const texts = (edit: string, values: Record<string, string> = three) => {
  const edited = editRows(values, edit, blank)
  return edited && rowsOf(edited, 'lines').map((row) => row.text)
}

describe('one edit', () => {
  test.each([
    ['add:lines', ['a', 'b', 'c', 'new of lines']],
    ['remove:lines:0', ['b', 'c']],
    ['remove:lines:1', ['a', 'c']],
    ['remove:lines:2', ['a', 'b']],
    ['remove:lines:3', ['a', 'b', 'c']],
    ['up:lines:1', ['b', 'a', 'c']],
    ['up:lines:0', ['a', 'b', 'c']],
    ['down:lines:1', ['a', 'c', 'b']],
    ['down:lines:2', ['a', 'b', 'c']],
    ['up:lines:9', ['a', 'b', 'c']],
  ])('%s gives %j', (edit, expected) => expect(texts(edit)).toEqual(expected))

  test.each(['', 'save', 'add', 'add:', 'burn:lines:0', 'add:lines:x', 'remove:lines:-1', 'add:li.nes'])(
    '%j is none: the form is meant to be saved',
    (edit) => expect(editRows(three, edit, blank)).toBeNull(),
  )
})

it('keeps everything else, but not the edit itself', () => {
  expect(editRows(three, 'remove:lines:0', blank)).toEqual({
    version: '4',
    'other.0.text': 'o',
    'lines.0.text': 'b',
    'lines.1.text': 'c',
  })
})

it('closes holes on the way', () => {
  expect(texts('add:lines', { 'lines.1.text': 'b', 'lines.4.text': 'e' })).toEqual(['b', 'e', 'new of lines'])
})

it('starts an empty list', () => expect(texts('add:lines', {})).toEqual(['new of lines']))

it('a list has an end', () => {
  const full = flatRows(
    'lines',
    Array.from({ length: MOST_ROWS }, () => ({ text: 'x' })),
  )
  expect(texts('add:lines', full)).toHaveLength(MOST_ROWS)
})

it('a list whose name begins like another is another', () => {
  expect(rowsOf({ 'line.0.a': '1', 'lines.0.a': '2', 'lines.x.a': '3', lines: '4' }, 'lines')).toEqual([{ a: '2' }])
})

it('rows and flat names are one another', () => {
  const rows = [
    { id: '1', 'deep.0.x': 'y' },
    { id: '2', 'deep.0.x': '' },
  ]
  expect(rowsOf(flatRows('lines', rows), 'lines')).toEqual(rows)
})

it('the form goes on unsaved, one answer further', () => {
  const before = { ...freshForm({}), attempt: 3, message: 'old', faults: { a: 'old' } }
  expect(editedForm(before, { a: '1' })).toEqual({ ...freshForm({ a: '1' }), attempt: 4 })
})
