import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseTable } from '@/lib/exchange/read-table'
import { csvText, neutralised, restored, type TableColumn } from '@/lib/exchange/write-table'

const text: TableColumn<string> = { heading: 'Text', kind: 'text', cell: (row) => row }
const figure: TableColumn<string> = { heading: 'Volts', kind: 'plain', cell: () => -14 }

describe('a table as CSV', () => {
  it('has CRLF after every record and quotes only where RFC 4180 asks for them', () => {
    expect(csvText([text, figure], ['plain', 'a "b", c', 'two\r\nlines'])).toBe(
      '\ufeffText,Volts\r\nplain,-14\r\n"a ""b"", c",-14\r\n"two\r\nlines",-14\r\n',
    )
  })

  // The signs a spreadsheet takes for the start of a formula: OWASP, "CSV Injection".
  it.each(['=1+1', '+49 30 12', '-5 V', '@sum', '\t=1'])('the text %j cannot be run as a formula', (typed) => {
    expect(neutralised(typed)).toBe(`'${typed}`)
    expect(restored(neutralised(typed))).toBe(typed)
  })

  it('any text comes back as it was', () => {
    fc.assert(fc.property(fc.string(), (typed) => restored(neutralised(typed)) === typed))
  })

  it('any texts come back as they were through the file', () => {
    const typed = fc.array(
      fc.string({ minLength: 1 }).filter((each) => each.trim() !== ''),
      { minLength: 1, maxLength: 5 },
    )
    fc.assert(
      fc.property(typed, (rows) => {
        const read = parseTable(csvText([figure, text], rows).slice(1))
        if (!read.ok) throw new Error(read.fault.code)
        expect(read.value.rows.map(({ fields }) => restored(fields[1] ?? ''))).toEqual(rows)
      }),
      { numRuns: 200 },
    )
  })
})
