import { describe, expect, test } from 'vitest'
import { paperText } from '@/lib/documents/paper-text'
import { renderPdf } from '@/lib/documents/pdf'
import { pickupPaper } from '@/lib/documents/pickup-sheet'
import { plotBlock } from '@/lib/documents/plot-block'
import { samplePickup, sampleUnrepaired } from '@/lib/documents/samples'
import { wordsFor } from '@/lib/domain/words'
import { readPdf } from '../support/pdf-text'
import { crowdedPickup } from './crowded-samples'

const blocks = [...samplePickup('US').plots, ...crowdedPickup().plots].map((sheet) => plotBlock(sheet, wordsFor('US')))

describe('plate curves on the pickup sheet', () => {
  test('every place of the drawing is a share of the frame, 0 to 1', () => {
    expect(blocks.length).toBe(3)
    for (const block of blocks) {
      const places = [
        ...block.curves.flatMap(({ line }) => line),
        ...(block.limit?.line ?? []),
        ...(block.limit?.region ?? []),
        ...block.load,
        ...block.marks.flatMap(({ at, box }) => [at, ...box]),
      ]
      expect(places.length).toBeGreaterThan(50)
      expect(places.flat().every((share) => share >= 0 && share <= 1)).toBe(true)
    }
  })

  test('no more than 8 curves, the hottest of the sheet among them', () => {
    blocks.forEach(({ curves }, i) => {
      const hottest = [...samplePickup('US').plots, ...crowdedPickup().plots][i]?.whole.curves.at(-1)
      expect(curves.length).toBeLessThanOrEqual(8)
      expect(curves.at(-1)?.label).toBe(String(hottest?.gridVolts).replace('-', '−'))
    })
  })

  test('V3 and V4 stand on it before the work as open marks, after it as filled ones', () => {
    expect(blocks[0]?.marks.map(({ shape }) => shape)).toEqual(['open', 'open', 'filled', 'filled'])
    // 48.2 and 61.5 mA lie within 8 % of the frame's 180 mA, 38.9 and 38.3 mA as well: a tag for each round.
    expect(blocks[0]?.names.map(({ label }) => label)).toEqual(['V3, V4 before', 'V3, V4 after'])
  })

  test('the PDF carries the drawing in sentences, and so does the plain text', async () => {
    const paper = pickupPaper(samplePickup('US'))
    const pdf = await readPdf(await renderPdf(paper, { createdAt: new Date('2026-10-08T17:05:00Z') }))
    const said = pdf.pages.flatMap(({ alternatives }) => alternatives).join(' ')
    expect(said).toContain('V4 before idles at 418 V and 61.5 mA')
    expect(said).toContain('V4 after idles at 425 V and 38.3 mA')
    expect(paperText(paper)).toContain('V3 after idles at 425 V and 38.9 mA')
  })

  test('returned unrepaired: only what was read before the work', () => {
    const names = pickupPaper(sampleUnrepaired('US')).blocks.flatMap((block) =>
      block.type === 'plot' ? block.names : [],
    )
    expect(names.map(({ label }) => label)).toEqual(['V3, V4 before'])
  })
})
