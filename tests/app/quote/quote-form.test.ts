import { describe, expect, it } from 'vitest'
import type { FormValues } from '@/app/_components/form/form-state'
import { readValues } from '@/app/_components/form/read-form'
import { draftFigures } from '@/app/jobs/[jobNumber]/quote/draft-figures'
import { quoteSchema, quoteValues } from '@/app/jobs/[jobNumber]/quote/quote-schema'
import { writtenQuote } from '@/app/jobs/[jobNumber]/quote/written-quote'
import type { Day } from '@/lib/domain/calendar'
import { money } from '@/lib/domain/money'
import type { Quote } from '@/lib/domain/quote/quote'

const USD = { currency: 'USD', digits: 2 }
const YEN = { currency: 'JPY', digits: 0 }

const row = (list: string, over: FormValues = {}): FormValues =>
  Object.fromEntries(
    Object.entries({
      id: '',
      text: 'Set idle current',
      thousandths: '1,25',
      unit: 'h',
      unitPrice: '90',
      taxable: 'on',
      ...over,
    }).map(([key, value]) => [`${list}.0.${key}`, value]),
  )

const form = (over: FormValues = {}): FormValues => ({
  version: '1',
  validUntil: '2031-05-27',
  depositPercent: '30',
  note: '',
  findings: '',
  findingsBefore: '',
  ...over,
})

const read = (values: FormValues, rules = USD) => readValues(quoteSchema(rules), values)
const faultsOf = (values: FormValues, rules = USD) => {
  const result = read(values, rules)
  return result.ok ? {} : result.faults
}

describe('the boxes of a quote', () => {
  it('read comma and point, and an unticked box as not taxed', () => {
    const { 'labour.0.taxable': _ticked, ...values } = form(row('labour', { unitPrice: '90.5' }))
    expect(read(values)).toMatchObject({
      ok: true,
      value: { labour: [{ id: null, thousandths: 1250, unitPrice: 9050, taxable: false }], depositPercent: 30 },
    })
  })

  it.each([
    [
      { thousandths: '' },
      'labour.0.thousandths',
      'Set idle current: quantity is empty. Type a number between 0.001 and 9999.',
    ],
    [{ thousandths: '0' }, 'labour.0.thousandths', 'Set idle current: quantity: 0 is outside 0.001 to 9999.'],
    [{ unitPrice: '' }, 'labour.0.unitPrice', 'Set idle current: unit price is empty. Type an amount in USD.'],
    [
      { unitPrice: '-1' },
      'labour.0.unitPrice',
      'Set idle current: unit price: -1.00 USD is too low. The least is 0.00 USD.',
    ],
    [
      { unitPrice: '3.855' },
      'labour.0.unitPrice',
      'Set idle current: unit price: “3.855” has more than 2 decimals, and USD has 2.',
    ],
    [{ text: '' }, 'labour.0.text', 'Labour line 1: what it is for is empty. Please fill it in.'],
  ])('%o is refused at %s with the line, the value and the bound', (over, name, sentence) => {
    expect(faultsOf(form(row('labour', over)))).toEqual({ [name]: sentence })
  })

  it('a credit is a fee below nothing; a part is not', () => {
    expect(read(form(row('fees', { unitPrice: '−40' })))).toMatchObject({
      ok: true,
      value: { fees: [{ unitPrice: -4000 }] },
    })
    expect(Object.keys(faultsOf(form(row('parts', { unitPrice: '-40' }))))).toEqual(['parts.0.unitPrice'])
  })

  it('a line that draws a part is counted in whole pieces; one written freely is not', () => {
    const half = { text: 'Fuse', thousandths: '1,5', unit: 'pc' }
    expect(faultsOf(form(row('parts', { ...half, partId: 'fuse' })))).toEqual({
      'parts.0.thousandths': 'Fuse: quantity must be a whole number, as the drawer counts pieces.',
    })
    expect(faultsOf(form(row('parts', { ...half, partId: '' })))).toEqual({})
  })

  it('yen have no decimals', () => {
    expect(faultsOf(form(row('labour', { unitPrice: '900.5' })), YEN)['labour.0.unitPrice']).toContain('JPY has none')
  })

  it('an empty deposit is none; 12.5 % and 101 % are refused; the last day is needed', () => {
    expect(read(form({ depositPercent: '' }))).toMatchObject({ ok: true, value: { depositPercent: 0 } })
    expect(faultsOf(form({ depositPercent: '12.5' })).depositPercent).toContain('must be a whole number')
    expect(faultsOf(form({ depositPercent: '101' })).depositPercent).toContain('between 0 and 100 %')
    expect(faultsOf(form({ validUntil: '' })).validUntil).toContain('Valid until is empty')
  })
})

describe('a quote put into its boxes and read again', () => {
  const line = { unit: 'h', taxable: true, tubeId: null, socketPosition: null, partId: null, doneAt: null, doneBy: '' }
  const quote = {
    version: 4,
    validUntil: '2031-05-27' as Day,
    depositPercent: 30,
    note: 'Two lines,\nsecond',
    lines: [
      { ...line, id: 'a', kind: 'labour', text: 'Set idle', thousandths: 1250, unitPrice: money(9000) },
      {
        ...line,
        id: 'b',
        kind: 'tube',
        text: '6L6GC, mark T-1',
        thousandths: 1000,
        unitPrice: money(4500),
        tubeId: 't',
        socketPosition: 'V3',
      },
      {
        ...{ ...line, id: 'd', kind: 'part', text: 'Fuse, T 2 A', thousandths: 2000, unit: 'pc', unitPrice: money(80) },
        partId: 'fuse',
      },
      { ...line, id: 'c', kind: 'fee', text: 'Credit', thousandths: 1000, unitPrice: money(-4000), taxable: false },
    ],
  } as unknown as Quote

  it('is the same quote, the tube by its line alone', () => {
    const result = read(quoteValues(quote, 'V3 is hot.', 2))
    if (!result.ok) throw new Error(JSON.stringify(result.faults))
    const plain = { unit: 'h', partId: null }
    expect(writtenQuote(result.value)).toEqual({
      version: 4,
      validUntil: '2031-05-27',
      depositPercent: 30,
      note: 'Two lines,\nsecond',
      findings: { before: 'V3 is hot.', text: 'V3 is hot.' },
      lines: [
        { ...plain, id: 'a', kind: 'labour', text: 'Set idle', thousandths: 1250, unitPrice: 9000, taxable: true },
        {
          ...{ id: 'd', kind: 'part', text: 'Fuse, T 2 A', thousandths: 2000, unit: 'pc', unitPrice: 80 },
          ...{ taxable: true, partId: 'fuse' },
        },
        { ...plain, id: 'c', kind: 'fee', text: 'Credit', thousandths: 1000, unitPrice: -4000, taxable: false },
      ],
      tubes: [{ id: 'b', unitPrice: 4500, taxable: true }],
    })
  })

  it('line ends of a browser’s text box are no change of the findings', () => {
    const values = { ...quoteValues(quote, 'one\ntwo', 2), findings: 'one\r\ntwo', findingsBefore: 'one\r\ntwo' }
    const result = read(values)
    expect(result.ok && writtenQuote(result.value).findings).toEqual({ before: 'one\ntwo', text: 'one\ntwo' })
  })
})

describe('the sums beside the boxes', () => {
  it('leave out a line that cannot be read yet, and say how many', () => {
    const values = form({ ...row('labour'), ...row('parts', { unitPrice: '' }) })
    const { amounts, unread, totals } = draftFigures(values, USD, 8875)
    expect(amounts).toEqual({ 'labour.0': 11_250, 'parts.0': null })
    expect(unread).toBe(1)
    // 112.50 × 0.08875 = 9.984375; 30 % of 122.48 is 36.744.
    expect(totals).toMatchObject({ subtotal: 11_250, tax: 998, total: 12_248, deposit: 3675 })
  })

  it('a deposit that cannot be read yet counts as none', () => {
    expect(draftFigures(form({ ...row('labour'), depositPercent: '3o' }), USD, 0).totals.deposit).toBe(0)
  })
})
