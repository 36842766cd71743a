import { describe, expect, test } from 'vitest'
import type { Block, Paper } from '@/lib/documents/paper'
import { paperLines } from '@/lib/documents/paper-text'
import { renderPdf } from '@/lib/documents/pdf'
import { pickupPaper } from '@/lib/documents/pickup-sheet'
import { quotePaper } from '@/lib/documents/quote-paper'
import { receiptPaper } from '@/lib/documents/receipt'
import { samplePickup, sampleQuote, sampleReceipt, sampleUnrepaired, sampleWorkOrder } from '@/lib/documents/samples'
import { workOrderPaper } from '@/lib/documents/work-order'
import { cutWords, overprinted, type ReadPdf, readPdf, squeezed } from '../support/pdf-text'
import { crowdedPickup, crowdedQuote, crowdedReceipt, crowdedWorkOrder } from './crowded-samples'

const createdAt = new Date('2026-10-08T17:05:00Z')
const MARGIN = 48
const render = (paper: Paper): Promise<Uint8Array> => renderPdf(paper, { createdAt })
const readings = new Map<Paper, Promise<ReadPdf>>()
/** Each paper is drawn and read once for all that is asked of it. */
function read(paper: Paper): Promise<ReadPdf> {
  const reading = readings.get(paper) ?? render(paper).then(readPdf)
  readings.set(paper, reading)
  return reading
}

const usual: Record<string, Paper> = {
  'receipt, US': receiptPaper(sampleReceipt('US')),
  'receipt, UK': receiptPaper(sampleReceipt('UK')),
  'quote, US': quotePaper(sampleQuote('US')),
  'quote, UK': quotePaper(sampleQuote('UK')),
  'work order, US': workOrderPaper(sampleWorkOrder('US')),
  'work order, UK': workOrderPaper(sampleWorkOrder('UK')),
  'pickup sheet, US': pickupPaper(samplePickup('US')),
  'pickup sheet, UK': pickupPaper(samplePickup('UK')),
  'unrepaired, US': pickupPaper(sampleUnrepaired('US')),
  'unrepaired, UK': pickupPaper(sampleUnrepaired('UK')),
}
const crowded: Record<string, Paper> = {
  'crowded receipt': receiptPaper(crowdedReceipt()),
  'crowded quote': quotePaper(crowdedQuote()),
  'crowded work order': workOrderPaper(crowdedWorkOrder()),
  'crowded pickup sheet': pickupPaper(crowdedPickup()),
}
const turned = Object.fromEntries(
  Object.entries(crowded).map(([name, paper]): [string, Paper] => [`${name}, Letter`, { ...paper, size: 'LETTER' }]),
)

/** Every value of the paper, cell by cell, as it must stand in the PDF. */
function spoken(paper: Paper): string[] {
  return paper.blocks.flatMap(spokenBlock)
}

function spokenBlock(block: Block): string[] {
  switch (block.type) {
    case 'heading':
    case 'paragraph':
    case 'note':
      return [block.text]
    case 'facts':
      return block.items.flatMap(({ label, value }) => [label, value])
    case 'table':
      return [
        ...block.columns.map(({ label }) => label),
        ...block.groups.flatMap(({ label, rows }) => [
          label,
          ...rows.flatMap(({ cells, detail }) => [...cells, detail ?? '']),
        ]),
        ...block.totals.flatMap(({ label, value }) => [label, value]),
      ]
    case 'cautions':
      return [block.title, ...block.items]
    case 'checklist':
      return block.items.flatMap(({ text, detail, ticked }) => [text, detail, ticked ? '☑' : '☐'])
    case 'sign-off':
      return block.lines.flatMap(({ line, limit, value, instrument, name, time, result }) => [
        line,
        limit,
        value,
        instrument,
        name,
        time,
        result,
      ])
    case 'signatures':
      return block.lines.flatMap(({ label, name, date }) => [label, name, date])
    case 'qr':
      return [block.caption]
    case 'plot':
      return [
        block.title,
        block.acrossTitle,
        ...[...block.acrossTicks, ...block.upTicks, ...block.curves].map(({ label }) => label),
        ...block.legend.map(({ text }) => text),
      ]
    case 'chassis':
      return [block.caption, ...block.sockets.flatMap(({ position, lines }) => [position, ...lines])]
  }
}

/** Long values may break over lines and pages: their words must be there, in order, with nothing lost within a page. */
function lost(paper: Paper, pdf: ReadPdf): string[] {
  const pages = pdf.pages.map(({ text }) => squeezed(text))
  const all = squeezed(pdf.text)
  const stands = (value: string): boolean => {
    const text = squeezed(value)
    if (all.includes(text)) return true
    // Broken by a page end: a head on one page, the rest on the next.
    return pages.some((page, i) => {
      const next = pages[i + 1] ?? ''
      for (let cut = text.length - 1; cut > 0; cut--)
        if (page.includes(text.slice(0, cut)) && next.includes(text.slice(cut))) return true
      return false
    })
  }
  return spoken(paper).filter((value) => value.trim() !== '' && !stands(value))
}

describe.each(Object.entries({ ...usual, ...crowded, ...turned }))('%s', (_name, paper) => {
  test('every value of the paper is in the PDF, inside the margins, over nothing, at 8.5 points or more', async () => {
    const pdf = await read(paper)
    expect(lost(paper, pdf)).toEqual([])
    expect(cutWords(pdf, MARGIN)).toEqual([])
    expect(overprinted(pdf)).toEqual([])
    expect(Math.min(...pdf.pages.flatMap(({ words }) => words.map(({ size }) => size)))).toBeGreaterThanOrEqual(8.49)
  })
  test('each page carries its number and no page is empty', async () => {
    const { pages } = await read(paper)
    pages.forEach((page, i) => {
      expect(page.text).toContain(`page ${i + 1} of ${pages.length}`)
      expect(page.words.length).toBeGreaterThan(5)
    })
  })
  test('drawn twice, once from its stored JSON, it has the same bytes', async () => {
    const [first, second] = [await render(paper), await render(JSON.parse(JSON.stringify(paper)) as Paper)]
    expect(Buffer.from(first).equals(Buffer.from(second))).toBe(true)
  })
})

describe('size, language and tags', () => {
  // ISO 216: A4 is 210 × 297 mm; ANSI Y14.1: Letter is 8.5 × 11 inches. 72 points to the inch.
  test('A4 is 595.28 × 841.89 points, Letter 612 × 792', async () => {
    const [a4] = (await read(receiptPaper(sampleReceipt('UK')))).pages
    const [letter] = (await read(receiptPaper(sampleReceipt('US')))).pages
    expect(a4?.width).toBeCloseTo((210 / 25.4) * 72, 1)
    expect(a4?.height).toBeCloseTo((297 / 25.4) * 72, 1)
    expect([letter?.width, letter?.height]).toEqual([8.5 * 72, 11 * 72])
  })
  test('title, language, date and the mark of a tagged file are set', async () => {
    const pdf = await read(quotePaper(sampleQuote('UK')))
    expect(pdf).toMatchObject({ title: 'Quote Q-1047-0 rev. 1', language: 'en-GB', tagged: true })
    expect(pdf.created).toContain('20261008170500')
    expect((await read(quotePaper(sampleQuote('US')))).language).toBe('en-US')
  })
  test('headings, lists, table heads and cells, and figures with words carry their tags', async () => {
    const pdf = await read(workOrderPaper(sampleWorkOrder('US')))
    const tags = new Set(pdf.pages.flatMap((page) => page.tags))
    for (const tag of [
      'Document',
      'H1',
      'H2',
      'P',
      'BlockQuote',
      'L',
      'LI',
      'Lbl',
      'LBody',
      'Table',
      'TR',
      'TH',
      'TD',
      'Figure',
    ])
      expect(tags).toContain(tag)
    const alternatives = pdf.pages.flatMap((page) => page.alternatives)
    expect(alternatives).toContain('QR code: Job 1047-0, https://bench.lanternstreet.example/jobs/1047-0')
    expect(
      alternatives.some((text) => text.startsWith('Chassis from above') && text.includes('V3: 6L6GC, fit LS-0412')),
    ).toBe(true)
  })
  test('the usual receipt is one page, the usual quote and work order two', async () => {
    for (const words of ['US', 'UK'] as const) {
      expect((await read(receiptPaper(sampleReceipt(words)))).pages).toHaveLength(1)
      expect((await read(quotePaper(sampleQuote(words)))).pages).toHaveLength(2)
      expect((await read(workOrderPaper(sampleWorkOrder(words)))).pages).toHaveLength(2)
    }
  })
})

describe('page breaks', () => {
  test('a quote of 54 lines repeats the head of its table on each page the table reaches', async () => {
    const pdf = await read(crowded['crowded quote'] as Paper)
    const withRows = pdf.pages.filter(({ text }) => text.includes('123,456'))
    expect(withRows.length).toBeGreaterThan(2)
    for (const page of withRows) expect(squeezed(page.text)).toContain('ItemQuantityUnitUnitpriceAmount')
  })
  test('no row of the quote is split: its figures stand on the page of its text', async () => {
    const pdf = await read(crowded['crowded quote'] as Paper)
    for (let i = 1; i < 9; i++) {
      const pages = pdf.pages.filter(({ text }) => squeezed(text).includes(`Operation${i},withwords`))
      expect(pages).toHaveLength(1)
      expect(squeezed(pages[0]?.text ?? '')).toContain('columnandmore')
    }
  })
  test('every one of 14 sockets keeps before and after on one page', async () => {
    const pdf = await read(crowded['crowded pickup sheet'] as Paper)
    for (let i = 1; i <= 14; i++) {
      const on = (when: string): number =>
        pdf.pages.findIndex(({ text }) => squeezed(text).includes(`V${i}6L6GC${when}`))
      expect(on('before')).toBeGreaterThanOrEqual(0)
      expect(on('after')).toBe(on('before'))
    }
  })
  test('a heading is never the last thing on a page', async () => {
    for (const paper of Object.values({ ...usual, ...crowded })) {
      const headings = new Set(paper.blocks.flatMap((block) => (block.type === 'heading' ? [block.text] : [])))
      for (const { words } of (await read(paper)).pages) {
        const body = words.filter(({ y }) => y > 40)
        const lowest = body.reduce((low, word) => (word.y < low.y ? word : low), body[0] as (typeof body)[number])
        expect(headings.has(lowest.text)).toBe(false)
      }
    }
  })
  test('a signature is never alone on a page', async () => {
    for (const paper of Object.values({ ...usual, ...crowded })) {
      const last = (await read(paper)).pages.at(-1)
      expect(last?.words.length).toBeGreaterThan(10)
    }
  })
})

test('characters no line can carry are taken out and do not move the rest', async () => {
  const paper = receiptPaper({
    ...sampleReceipt('US'),
    fault: 'Hum\tat\u0000 50 Hz\u200b, \u202eworse warm\u202c',
    receivedBy: 'Dara\nQuennell',
  })
  const pdf = await read(paper)
  expect(squeezed(pdf.text)).toContain(squeezed('Hum at 50 Hz , worse warm'))
  expect(paperLines(paper).length).toBeGreaterThan(10)
})
