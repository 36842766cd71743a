import { describe, expect, it } from 'vitest'
import { delimiterOf, parseTable, readTable } from '@/lib/exchange/read-table'

const bytes = (text: string) => new TextEncoder().encode(text)
const fields = (text: string) => {
  const read = parseTable(text)
  if (!read.ok) throw new Error(read.fault.code)
  return [read.value.headings, ...read.value.rows.map((row) => row.fields)]
}

// The examples of RFC 4180, section 2, by their number there.
describe('the records of RFC 4180', () => {
  it('1: each record on a line of its own, ended by CRLF', () => {
    expect(fields('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ])
  })
  it('2: the last record may have no line break', () => {
    expect(fields('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ])
  })
  it('3: a header line stands first', () => {
    expect(fields('field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')[0]).toEqual(
      Array(3).fill('field_name'),
    )
  })
  it('5: fields in quotes', () => {
    expect(fields('"aaa","bbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ])
  })
  it('6: a line break and a comma within quotes belong to the field', () => {
    expect(fields('h,i,j\r\n"aaa","b \r\nbb","c,cc"\r\nzzz,yyy,xxx')[1]).toEqual(['aaa', 'b \r\nbb', 'c,cc'])
  })
  it('7: a quote within quotes is doubled', () => {
    expect(fields('h,i,j\r\n"aaa","b""bb","ccc"')[1]).toEqual(['aaa', 'b"bb', 'ccc'])
  })
})

describe('a file of another program', () => {
  it.each([
    ['a comma', ',', 'Mark,Type,Price\nT-1,EL34,"1,5"'],
    ['a semicolon', ';', 'Mark;Type;"Price, for one"\nT-1;EL34;1,5'],
    ['a tab', '\t', 'Mark\tType\tPrice\nT-1\tEL34\t1,5'],
  ])('with %s between fields is told from its first record', (_, sign, text) => {
    expect(delimiterOf(text)).toBe(sign)
    expect(fields(text)[1]).toEqual(['T-1', 'EL34', expect.stringContaining('1,5')])
  })

  it('with a byte order mark has the same first heading as without', () => {
    const read = (text: string) => readTable(bytes(text))
    expect(read('\ufeffMark,Type\nT-1,EL34')).toEqual(read('Mark,Type\nT-1,EL34'))
  })

  it('rows keep the number a spreadsheet gives them, empty ones between are passed over', () => {
    const read = parseTable('Mark,Type\nT-1,EL34\n\n,\nT-2,EL84\n')
    expect(read.ok && read.value.rows.map(({ number }) => number)).toEqual([2, 5])
  })

  it.each([
    ['nothing', bytes(''), 'table-empty'],
    ['an accent that is not UTF-8', new Uint8Array([0x52, 0xf6, 0x68, 0x2c, 0x61, 0x0a]), 'table-not-utf-8'],
    ['a quote that never closes', bytes('a,b\n"c,d\n'), 'table-quote-open'],
    ['one column', bytes('Mark\nT-1\n'), 'table-one-column'],
  ])('%s is refused by name', (_, file, code) => {
    expect(readTable(file)).toMatchObject({ ok: false, fault: { code } })
  })
})
