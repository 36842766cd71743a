import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { rowsOf } from '@/app/_components/form/edit-rows'
import { freshForm, sheetValues } from '@/app/_components/form/form-state'
import { mergeTyped, staleForm } from '@/app/_components/form/merge-typed'

describe('one box', () => {
  // base, typed here, saved meanwhile → in the box, told beside it
  test.each([
    ['a', 'a', 'a', 'a', undefined],
    ['a', 'b', 'a', 'b', undefined],
    ['a', 'a', 'c', 'c', undefined],
    ['a', 'b', 'b', 'b', undefined],
    ['a', 'b', 'c', 'b', 'c'],
    ['a', 'b', '', 'b', ''],
    ['', 'b', 'c', 'b', 'c'],
    ['a', '', 'c', '', 'c'],
    ['a', 'a', '', '', undefined],
  ])('base %j, typed %j, saved %j: %j, told %j', (base, typed, saved, box, told) => {
    const merged = mergeTyped({ name: base }, { name: typed }, { name: saved })
    expect(merged.values.name).toBe(box)
    expect(merged.theirs.name).toBe(told)
  })

  it('an unticked box sends nothing and counts as changed', () => {
    expect(mergeTyped({ old: 'on' }, {}, { old: 'on' }).theirs).toEqual({})
    expect(mergeTyped({ old: '' }, { old: 'on' }, { old: '' }).values).toEqual({ old: 'on' })
    expect(mergeTyped({ old: 'on' }, { old: 'on' }, { old: '' }).values.old).toBe('')
  })

  it('its version and its base are no boxes', () => {
    const merged = mergeTyped({ version: '1', base: 'x' }, { version: '1', base: 'x' }, { version: '2', base: 'y' })
    expect(merged).toEqual({ values: { version: '1', base: 'x' }, theirs: {} })
  })
})

const names = ['a', 'b', 'c', 'd']
const sheet = fc.record(Object.fromEntries(names.map((name) => [name, fc.constantFrom('', '1', '2')]))) as fc.Arbitrary<
  Record<string, string>
>

test('nothing typed is ever lost, and nothing saved goes untold', () => {
  fc.assert(
    fc.property(sheet, sheet, sheet, (base, typed, saved) => {
      const { values, theirs } = mergeTyped(base, typed, saved)
      for (const name of names) {
        if (typed[name] !== base[name]) expect(values[name]).toBe(typed[name])
        if (values[name] !== saved[name] && saved[name] !== base[name]) expect(theirs[name]).toBe(saved[name])
      }
    }),
  )
})

test('whoever typed nothing sees what was saved; with nothing saved meanwhile all stays as typed', () => {
  fc.assert(
    fc.property(sheet, sheet, (base, other) => {
      expect(mergeTyped(base, base, other)).toEqual({ values: other, theirs: {} })
      expect(mergeTyped(base, other, base)).toEqual({ values: other, theirs: {} })
    }),
  )
})

type Row = Record<string, string>
const flat = (rows: Row[]) =>
  Object.fromEntries(
    rows.flatMap((row, place) => Object.entries(row).map(([key, value]) => [`rows.${place}.${key}`, value])),
  )
const merge = (base: Row[], typed: Row[], saved: Row[]) => mergeTyped(flat(base), flat(typed), flat(saved))

const a = { id: '1', text: 'a' }
const b = { id: '2', text: 'b' }

describe('rows with ids', () => {
  it('untouched here: the saved rows are taken whole', () => {
    const saved = [b, { id: '3', text: 'c' }]
    expect(merge([a, b], [a, b], saved)).toEqual({ values: flat(saved), theirs: {} })
  })

  it('touched here only: they stay', () => {
    const typed = [b, a, { id: '', text: 'new' }]
    expect(merge([a, b], typed, [a, b])).toEqual({ values: flat(typed), theirs: {} })
  })

  it('moved here and corrected there: the correction follows the row', () => {
    const corrected = { id: '2', text: 'B' }
    expect(merge([a, b], [b, a], [a, corrected])).toEqual({ values: flat([corrected, a]), theirs: {} })
  })

  it('moved there and corrected here: the correction follows the row to where it stands now', () => {
    const corrected = { id: '2', text: 'B' }
    const added = { id: '', text: 'new' }
    expect(merge([a, b], [a, corrected, added], [b, a])).toEqual({ values: flat([corrected, a, added]), theirs: {} })
  })

  it('moved by both: they stand as moved here', () => {
    const [c, d] = [
      { id: '3', text: 'c' },
      { id: '4', text: 'd' },
    ]
    expect(merge([a, b, c, d], [d, a, b, c], [b, a, c, d]).values).toEqual(flat([d, a, b, c]))
  })

  it('a row changed by both keeps what was typed and tells the rest beside it, wherever it stands', () => {
    const mine = { id: '2', text: 'mine' }
    const merged = merge([a, b], [{ id: '', text: 'new' }, mine, a], [a, { id: '2', text: 'theirs' }])
    expect(merged.values).toEqual(flat([{ id: '', text: 'new' }, mine, a]))
    expect(merged.theirs).toEqual({ 'rows.1.text': 'theirs' })
  })

  it('a row added there joins the end', () => {
    const added = { id: '3', text: 'c' }
    expect(merge([a], [{ ...a, text: 'mine' }], [a, added]).values).toEqual(flat([{ ...a, text: 'mine' }, added]))
  })

  it('a row taken out there goes here too, unless it was changed here: then it stays as a new one', () => {
    const mine = { ...a, text: 'mine' }
    expect(merge([a, b], [mine, b], [a]).values).toEqual(flat([mine]))
    expect(merge([a, b], [mine, b], [b]).values).toEqual(flat([{ id: '', text: 'mine' }, b]))
  })

  it('a row taken out here stays out', () => {
    expect(merge([a, b], [{ ...b, text: 'mine' }], [a, b]).values).toEqual(flat([{ ...b, text: 'mine' }]))
    expect(merge([a, b], [b], [{ ...a, text: 'theirs' }, b]).values).toEqual(flat([b]))
  })

  it('boxes outside the rows are merged all the same', () => {
    const merged = mergeTyped(
      { note: '', ...flat([a]) },
      { note: '', ...flat([{ ...a, text: 'm' }]) },
      { note: 'n', ...flat([a, b]) },
    )
    expect(merged.values.note).toBe('n')
  })
})

test('however rows are moved and corrected by two, each row keeps its own text, once, and a move of one alone stands', () => {
  const ids = ['1', '2', '3', '4', '5']
  const order = fc.shuffledSubarray(ids, { minLength: ids.length })
  const corrected = fc.subarray(ids)
  fc.assert(
    fc.property(order, order, corrected, corrected, (mine, theirs, fixedHere, fixedThere) => {
      const was = ids.map((id) => ({ id, text: id }))
      const here = mine.map((id) => ({ id, text: fixedHere.includes(id) ? `${id} mine` : id }))
      const there = theirs.map((id) => ({ id, text: fixedThere.includes(id) ? `${id} theirs` : id }))
      const rows = rowsOf(merge(was, here, there).values, 'rows')
      const moved = (sequence: readonly string[]) => sequence.join() !== ids.join()
      expect(rows.map(({ id }) => id)).toEqual(moved(mine) ? mine : theirs)
      const textOf = (id: string) =>
        fixedHere.includes(id) ? `${id} mine` : fixedThere.includes(id) ? `${id} theirs` : id
      for (const { id = '', text } of rows) expect(text).toBe(textOf(id))
    }),
  )
})

describe('rows without ids', () => {
  it('are matched by their place', () => {
    const merged = merge(
      [{ n: '1' }, { n: '2' }],
      [{ n: '1' }, { n: 'mine' }, { n: 'new' }],
      [{ n: 'theirs' }, { n: '2' }],
    )
    expect(merged).toEqual({ values: flat([{ n: 'theirs' }, { n: 'mine' }, { n: 'new' }]), theirs: {} })
  })
  it('are left as typed when some went', () => {
    const typed = [{ n: 'mine' }]
    expect(merge([{ n: '1' }, { n: '2' }], typed, [{ n: '1' }, { n: 'theirs' }])).toEqual({
      values: flat(typed),
      theirs: {},
    })
  })
})

describe('the form after somebody else’s save', () => {
  const opened = sheetValues({ id: '1', version: '1', name: 'old', phone: '1' })
  const current = sheetValues({ id: '1', version: '2', name: 'theirs', phone: '2' })
  const typed = { ...opened, name: 'mine' }
  const state = staleForm({ ...freshForm(opened), attempt: 1 }, typed, { current, sentence: 'Odo saved this sheet.' })

  it('is refused, one answer further, with the sentence', () => {
    expect(state).toMatchObject({ status: 'refused', attempt: 2, faults: {} })
    expect(state.message).toContain('Odo saved this sheet.')
  })

  it('holds what was typed, takes what was not touched, tells what differs', () => {
    expect(state.values).toMatchObject({ name: 'mine', phone: '2' })
    expect(state.theirs).toEqual({ name: 'theirs' })
  })

  it('starts from the saved sheet: the next save is a save of that version', () => {
    expect(state.values.version).toBe('2')
    expect(JSON.parse(state.values.base ?? '')).toEqual({ id: '1', version: '2', name: 'theirs', phone: '2' })
  })

  it('a third save in between is told against the second', () => {
    const third = sheetValues({ id: '1', version: '3', name: 'theirs', phone: '3' })
    const again = staleForm(state, state.values, { current: third, sentence: 'Odo again.' })
    expect(again.values).toMatchObject({ name: 'mine', phone: '3', version: '3' })
    expect(again.theirs).toEqual({})
  })

  it.each(['', 'no json', '[]', '{"name":7}', 'null'])(
    'a base of %j is not believed; what the form held before is',
    (base) => {
      const doubted = staleForm(freshForm(opened), { ...typed, base }, { current, sentence: '' })
      expect(doubted.values).toMatchObject({ name: 'mine', phone: '2' })
    },
  )
})
