import { expect, it } from 'vitest'
import { type Label, renderLabels } from '@/lib/documents/labels'
import { USUAL_LABEL_SHEETS } from '@/lib/domain/stock/label/label-sheet'
import { readPdf } from '@/tests/support/pdf-text'

const NOW = new Date('2031-05-06T09:30:00Z')
const label = (number: number): Label => ({
  ...{ mark: `T-${number}`, designation: '6L6GC', address: `http://shop.example/stock/${number}` },
  lines: ['72 mA, 5.9 mA/V', 'at 250 / 250 / −14 V', '6 May 2031'],
})
const order = (id: string, start: number, count: number) => {
  const sheet = USUAL_LABEL_SHEETS.find((each) => each.id === id)
  if (!sheet) throw new Error(`no sheet ${id}`)
  return {
    sheet,
    start,
    labels: Array.from({ length: count }, (_, at) => label(at + 1)),
    shopName: 'Shop',
    language: 'en-GB' as const,
  }
}

it('from place 23 of 24 the third label stands first on the second page', async () => {
  const { pages } = await readPdf(await renderLabels(order('usual-a4-24', 23, 3), { createdAt: NOW }))
  expect(pages.map(({ text }) => text.match(/T-\d+/g))).toEqual([['T-1', 'T-2'], ['T-3']])
  const [first, second] = pages
  // 7.2 mm of margin, 1.6 mm inside it: the code; the words begin right of it, within the first label of 63.5 mm.
  const mark = second?.words.find(({ text }) => text === 'T-3')
  expect(mark?.x).toBeGreaterThan((7.2 + 1.6) * (72 / 25.4))
  expect((mark?.x ?? 0) + (mark?.width ?? 0)).toBeLessThan((7.2 + 63.5) * (72 / 25.4))
  expect(first?.width).toBeCloseTo(595.28, 0)
})

it('a single label is a page of its own size with all of its words, and the address in its code', async () => {
  const { pages, tagged } = await readPdf(await renderLabels(order('usual-single', 1, 2), { createdAt: NOW }))
  expect(pages).toHaveLength(2)
  expect(pages[0]?.width).toBeCloseTo((62 * 72) / 25.4, 1)
  for (const words of ['T-1', '6L6GC', '72 mA, 5.9 mA/V', '6 May 2031']) expect(pages[0]?.text).toContain(words)
  expect(pages[0]?.alternatives[0]).toContain('http://shop.example/stock/1')
  expect(tagged).toBe(true)
})

it('words stay within the smallest label', async () => {
  const { sheet, ...rest } = order('usual-a4-65', 1, 65)
  const { pages } = await readPdf(await renderLabels({ sheet, ...rest }, { createdAt: NOW }))
  const right = (column: number) =>
    (sheet.marginLeft + column * (sheet.labelWidth + sheet.gapAcross) + sheet.labelWidth) * (72 / 25.4)
  const words = pages[0]?.words.filter(({ text }) => text.trim() !== '') ?? []
  expect(words.length).toBeGreaterThanOrEqual(65 * 5)
  for (const { x, width } of words) {
    const column = Math.floor((x / (72 / 25.4) - sheet.marginLeft) / (sheet.labelWidth + sheet.gapAcross))
    expect(x + width).toBeLessThanOrEqual(right(column) + 0.1)
  }
})
