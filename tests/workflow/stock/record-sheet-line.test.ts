import { describe, expect, it } from 'vitest'
import type { Day } from '@/lib/domain/calendar'
import { money } from '@/lib/domain/money'
import { volts } from '@/lib/domain/units'
import { db } from '@/lib/store/database'
import { listHistoryOf } from '@/lib/store/history'
import { listSheetLines, listTestSheets } from '@/lib/store/test-sheet'
import { findTube, findTubeByMark, listTests } from '@/lib/store/tube'
import { recordSheetLine, type SheetLineInput } from '@/lib/workflow/stock/record-sheet-line'
import { type NewTestSheet, startTestSheet } from '@/lib/workflow/stock/start-test-sheet'
import { freshDatabase } from '@/tests/support/fresh-database'
import { atBench, atCounter } from '@/tests/support/person-at-work'
import { openStockedShop, section, tubeInStock } from '@/tests/support/stocked-shop'

freshDatabase()
await openStockedShop()

const head: NewTestSheet = {
  ...({ designation: '6L6GC', instrumentName: 'Bench tester 1', day: '2031-05-06' as Day, sections: 1 } as const),
  ...{ plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-14) },
  ...({ condition: 'used-tested', location: 'Drawer 9', price: money(3000), cost: null } as const),
}

async function aSheet(): Promise<string> {
  const started = await startTestSheet(atBench(), head)
  if (!started.ok) throw new Error(JSON.stringify(started.fault))
  return started.value
}

const NOTHING_SEEN = { leakage: '', gas: '', noise: '', microphony: '', note: '' }
const reading = (milliamps: number | null) => ({
  ...NOTHING_SEEN,
  sections: milliamps === null ? [section(null)] : [section(milliamps, 6)],
  shorts: milliamps === null,
})

const line = (sheetId: string, mark: string, over: Partial<SheetLineInput> = {}) =>
  recordSheetLine(atBench(), { sheetId, mark, reading: reading(70), takeIn: false, corrects: null, ...over })

describe('a line of a test sheet', () => {
  it('is a test of the tube with that mark, at the point of the sheet', async () => {
    const [id, sheetId] = [await tubeInStock({ mark: 'A-1' }, null), await aSheet()]
    expect(await line(sheetId, 'a 1')).toMatchObject({ ok: true, value: { tubeId: id, mark: 'A-1', isNew: false } })
    expect(await listTests(id)).toMatchObject([{ instrumentName: 'Bench tester 1', gridVoltage: -14, shorts: false }])
    expect(await listSheetLines(sheetId)).toMatchObject([{ mark: 'A-1' }])
  })

  it('with a mark nobody knows asks first, and takes a new one in when that is meant', async () => {
    const sheetId = await aSheet()
    expect(await line(sheetId, 'A-50')).toMatchObject({
      ok: false,
      fault: { code: 'sheet-mark-unknown', mark: 'A-50' },
    })
    expect(await findTubeByMark('A-50')).toBeNull()
    expect(await line(sheetId, 'A-50', { takeIn: true })).toMatchObject({ ok: true, value: { isNew: true } })
    expect(await findTubeByMark('A-50')).toMatchObject({ designation: '6L6GC', location: 'Drawer 9', price: 3000 })
  })

  it('a new one whose reading is refused is not taken in', async () => {
    const sheetId = await aSheet()
    const refused = await line(sheetId, 'A-51', { takeIn: true, reading: { ...reading(null), shorts: false } })
    expect(refused).toMatchObject({
      ok: false,
      fault: { code: 'tubes-refused', faults: [{ code: 'current-missing' }] },
    })
    expect(await findTubeByMark('A-51')).toBeNull()
  })

  it('a short stops the test of that tube: a reading beside it is refused', async () => {
    const sheetId = await aSheet()
    await tubeInStock({ mark: 'A-2' }, null)
    const both = { ...reading(70), shorts: true }
    expect(await line(sheetId, 'A-2', { reading: both })).toMatchObject({
      fault: { faults: [{ code: 'reading-with-shorts' }, { code: 'reading-with-shorts' }] },
    })
    expect(await line(sheetId, 'A-2', { reading: reading(null) })).toMatchObject({ ok: true })
  })

  it('another type, one that is sold, and one that stands there already are refused', async () => {
    const sheetId = await aSheet()
    await tubeInStock({ mark: 'A-3', designation: 'EL34' }, null)
    await tubeInStock({ mark: 'A-4' }, null)
    expect(await line(sheetId, 'A-3')).toMatchObject({ fault: { code: 'sheet-other-type', designation: 'EL34' } })
    expect(await line(sheetId, 'A-4')).toMatchObject({ ok: true })
    expect(await line(sheetId, 'A-4')).toMatchObject({ fault: { code: 'sheet-tested-already', mark: 'A-4' } })
  })

  it('put right, takes the place of the wrong one, also on the tube it belonged to', async () => {
    const sheetId = await aSheet()
    const [wrong, right] = [await tubeInStock({ mark: 'A-5' }, null), await tubeInStock({ mark: 'A-6' }, null)]
    await line(sheetId, 'A-5')
    const [written] = await listSheetLines(sheetId)
    const corrects = written?.test.id ?? ''
    expect(await line(sheetId, 'A-6', { corrects, reading: reading(64) })).toMatchObject({ ok: true })
    expect(await listTests(wrong)).toEqual([])
    expect(await listTests(right)).toMatchObject([{ sections: [{ plateCurrent: 0.064 }] }])
    expect((await listHistoryOf('tube', wrong)).map(({ did }) => did)).toContain(
      'Test struck out on its sheet, to be corrected',
    )
  })

  it('keeps microphony beside noise; an older line put right in another box is not said to have been asked about it', async () => {
    const sheetId = await aSheet()
    const id = await tubeInStock({ mark: 'A-8' }, null)
    const heard = { ...reading(70), noise: 'hiss', microphony: 'slight' }
    await line(sheetId, 'A-8', { reading: heard })
    expect(await listTests(id)).toMatchObject([{ noise: 'hiss', microphony: 'slight' }])
    await db().tubeTest.updateMany({ where: { tubeId: id }, data: { microphony: null } })
    const corrects = async () => (await listSheetLines(sheetId))[0]?.test.id ?? ''
    await line(sheetId, 'A-8', { corrects: await corrects(), reading: { ...reading(66), noise: 'hiss' } })
    expect(await listTests(id)).toMatchObject([
      { noise: 'hiss', microphony: null, sections: [{ plateCurrent: 0.066 }] },
    ])
    await line(sheetId, 'A-8', { corrects: await corrects(), reading: { ...heard, microphony: 'none' } })
    expect(await listTests(id)).toMatchObject([{ noise: 'hiss', microphony: 'none' }])
  })

  it('belongs to a technician', async () => {
    const sheetId = await aSheet()
    const id = await tubeInStock({ mark: 'A-7' }, null)
    const input = { sheetId, mark: 'A-7', reading: reading(70), takeIn: false, corrects: null }
    expect(await recordSheetLine(atCounter(), input)).toMatchObject({ fault: { code: 'not-your-duty' } })
    expect(await findTube(id)).not.toBeNull()
    expect(await listTests(id)).toEqual([])
  })
})

describe('the head of a test sheet', () => {
  it('without grid volts of a tube that has a grid is refused at once', async () => {
    const before = (await listTestSheets()).length
    const refused = await startTestSheet(atBench(), { ...head, gridVoltage: null })
    expect(refused).toMatchObject({ fault: { faults: [{ code: 'point-missing', field: 'gridVolts' }] } })
    expect(await listTestSheets()).toHaveLength(before)
  })

  it('two sections of a type that has one are refused', async () => {
    expect(await startTestSheet(atBench(), { ...head, sections: 2 })).toMatchObject({
      fault: { faults: [{ code: 'one-section-only', field: 'sections' }] },
    })
  })
})
