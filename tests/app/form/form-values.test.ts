import { describe, expect, it } from 'vitest'
import { MOST_ROWS, nestedValues, typedValues } from '@/app/_components/form/form-values'

function form(entries: Record<string, string | Blob>): FormData {
  const data = new FormData()
  for (const [name, value] of Object.entries(entries)) data.append(name, value)
  return data
}

describe('what was typed', () => {
  it('is text by name; files and the framework’s own fields stay out', () => {
    const sent = form({ name: ' Ines ', $ACTION_KEY: 'k', '$ACTION_1:0': '{}', photo: new Blob(['x']) })
    expect(typedValues(sent)).toEqual({ name: ' Ines ' })
  })

  it('has one character for a line break, as it was in the box', () => {
    expect(typedValues(form({ address: 'Lane 1\r\nTown\rHere' }))).toEqual({ address: 'Lane 1\nTown\nHere' })
  })

  it('takes the last of two with one name', () => {
    const sent = form({ side: 'A' })
    sent.append('side', 'B')
    expect(typedValues(sent)).toEqual({ side: 'B' })
  })

  it.each(['__proto__', 'a.__proto__.b', 'constructor.prototype.x', 'a.constructor', '', '.a', 'a..b', 'a b', '1a'])(
    'leaves out the name %j',
    (name) => expect(typedValues(form({ [name]: 'x', ok: 'y' }))).toEqual({ ok: 'y' }),
  )

  it('leaves out a row no form of ours has', () => {
    const sent = form({ [`rows.${MOST_ROWS - 1}.a`]: 'last', [`rows.${MOST_ROWS}.a`]: 'x', 'rows.99999999999.a': 'x' })
    expect(typedValues(sent)).toEqual({ [`rows.${MOST_ROWS - 1}.a`]: 'last' })
  })
})

describe('nested', () => {
  it('names with points become objects, names with numbers rows in their order', () => {
    const values = {
      name: 'n',
      'customer.phone': 'p',
      'sockets.1.role': 'output',
      'sockets.0.role': 'preamp',
      'sockets.1.id': '',
    }
    expect(nestedValues(values)).toEqual({
      name: 'n',
      customer: { phone: 'p' },
      sockets: [{ role: 'preamp' }, { role: 'output', id: '' }],
    })
  })

  it('the tenth row comes after the second', () => {
    const values = Object.fromEntries(
      Array.from({ length: 12 }, (_, index) => [`rows.${11 - index}.a`, String(11 - index)]),
    )
    expect(nestedValues(values)).toEqual({ rows: Array.from({ length: 12 }, (_, index) => ({ a: String(index) })) })
  })

  it('a hole stays a hole, so that later rows keep their names', () => {
    expect(nestedValues({ 'rows.2.a': 'c' })).toEqual({ rows: [undefined, undefined, { a: 'c' }] })
  })

  it('rows within rows', () => {
    expect(nestedValues({ 'tubes.0.sections.1.gm': '5' })).toEqual({ tubes: [{ sections: [undefined, { gm: '5' }] }] })
  })

  it('cannot reach the machinery of objects', () => {
    nestedValues({ '__proto__.reached': 'x', 'constructor.prototype.reached': 'x' })
    expect(({} as Record<string, unknown>).reached).toBeUndefined()
  })
})
