import { describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import { depending, typedText } from '@/app/_components/form/depending'
import { requiredAmount, rows, text } from '@/app/_components/form/fields'
import { freshForm } from '@/app/_components/form/form-state'
import { newPassPhrase, sameAgain } from '@/app/_components/form/pass-phrase-fields'
import { faultsMessage, readForm, readValues } from '@/app/_components/form/read-form'

const schema = z.object({
  name: text({ label: 'Name', required: true }),
  lines: rows(z.object({ text: text({ label: 'Line', required: true }) })),
})

function form(entries: Record<string, string>): FormData {
  const data = new FormData()
  for (const [name, value] of Object.entries(entries)) data.append(name, value)
  return data
}

describe('a submitted form', () => {
  it('gives the values read, and as typed', () => {
    const read = readForm(schema, freshForm({}), form({ name: ' Ines ', 'lines.1.text': 'x' }))
    expect(read).toEqual({
      ok: true,
      value: { name: 'Ines', lines: [{ text: 'x' }] },
      values: { name: ' Ines ', 'lines.1.text': 'x' },
    })
  })

  it('comes back with everything typed, one sentence beside each box, and what a colleague saved', () => {
    const before = { ...freshForm({}), attempt: 2, theirs: { name: 'Odo' } }
    const read = readForm(schema, before, form({ name: '', 'lines.0.text': '', other: 'kept' }))
    expect(read.ok || read.state).toEqual({
      status: 'refused',
      attempt: 3,
      message: 'Not saved: 2 fields need another look. Name is empty. Please fill it in.',
      values: { name: '', 'lines.0.text': '', other: 'kept' },
      faults: { name: 'Name is empty. Please fill it in.', 'lines.0.text': 'Line is empty. Please fill it in.' },
      theirs: { name: 'Odo' },
    })
  })

  it('one fault is one field', () =>
    expect(faultsMessage({ a: 'It is.' })).toBe('Not saved: one field needs another look. It is.'))
})

describe('a schema that depends on another box', () => {
  const price = depending((typed) => {
    const currency = typedText(typed, 'currency')
    return z.object({
      currency: text({ label: 'Currency' }),
      price: requiredAmount({ label: 'Price', currency, digits: currency === 'JPY' ? 0 : 2 }),
    })
  })

  it('reads by what stands there', () => {
    expect(readValues(price, { currency: ' JPY ', price: '12' })).toEqual({
      ok: true,
      value: { currency: 'JPY', price: 12 },
    })
    expect(readValues(price, { currency: 'EUR', price: '12' })).toEqual({
      ok: true,
      value: { currency: 'EUR', price: 1200 },
    })
  })

  it('tells its faults at their own boxes, also inside another schema', () => {
    const read = readValues(z.object({ shop: price, name: text({ label: 'Name', required: true }) }), {
      'shop.currency': 'JPY',
      'shop.price': '1,5',
      name: '',
    })
    expect(read).toEqual({
      ok: false,
      faults: {
        'shop.price': 'Price: “1,5” has decimals, and JPY has none.',
        name: 'Name is empty. Please fill it in.',
      },
    })
  })
})

describe('a new pass phrase', () => {
  const pair = depending((typed) =>
    z.object({ first: newPassPhrase('The pass phrase'), again: sameAgain('The second', typedText(typed, 'first')) }),
  )
  const faultsOf = (first: string, again: string) => {
    const read = readValues(pair, { first, again })
    return read.ok ? [] : Object.keys(read.faults)
  }

  // Ten characters at least: the shop's rule, above the eight of NIST SP 800-63B, 5.1.1.2.
  it.each([
    ['ten chars!', 'ten chars!', []],
    ['nine char', 'nine char', ['first']],
    ['ten chars!', 'ten chars?', ['again']],
    ['ten chars!', '', ['again']],
    [' ten chars! ', 'ten chars!', []],
    ['x'.repeat(200), 'x'.repeat(200), []],
    ['x'.repeat(201), 'x'.repeat(201), ['first']],
    ['ÄÖÜ❤️ẞßéè', 'ÄÖÜ❤️ẞßéè', ['first']],
  ])('%j and %j: faults at %j', (first, again, faults) => expect(faultsOf(first, again)).toEqual(faults))
})
