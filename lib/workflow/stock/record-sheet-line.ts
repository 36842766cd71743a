/**
 * One tube of a test sheet: found by its mark, or taken in as a new one of the
 * sheet's type; its reading written down as a test record, or an earlier line
 * of the sheet put right. All of it is saved or none.
 */
import { changesBetween, shown } from '@/lib/domain/history/changes'
import type { Result } from '@/lib/domain/result'
import type { Shop } from '@/lib/domain/shop/shop'
import type { SheetLine, TestSheet } from '@/lib/domain/stock/sheet/test-sheet'
import type { TestEntry } from '@/lib/domain/stock/test-entry'
import type { Tube } from '@/lib/domain/stock/tube'
import { readMark } from '@/lib/domain/stock/tube-mark'
import { testShown } from '@/lib/domain/stock/tube-text'
import { foldedDesignation } from '@/lib/domain/tube/folded-designation'
import { wordsFor } from '@/lib/domain/words'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { findTestSheet, listSheetLines, removeSheetLine } from '@/lib/store/test-sheet'
import { findTube, findTubeByMark } from '@/lib/store/tube'
import { refuse, refusing, type Step } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'
import { recordTest, shopOf } from './add-tube-test'
import { addTube, nextMark } from './keep-tube'

export type SheetLineInput = {
  readonly sheetId: string
  /** As typed or scanned. */
  readonly mark: string
  readonly reading: Pick<TestEntry, 'sections' | 'shorts' | 'leakage' | 'gas' | 'noise' | 'microphony' | 'note'>
  /** A mark that is not in the stock is a new tube; an empty one takes the next free mark. */
  readonly takeIn: boolean
  /** Id of the test record this line replaces. Null: a new line. */
  readonly corrects: string | null
}

export type WrittenLine = { readonly tubeId: string; readonly mark: string; readonly isNew: boolean }

export function recordSheetLine(step: Step, input: SheetLineInput): Promise<Result<WrittenLine, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const sheet = await findTestSheet(input.sheetId, tx)
      if (!sheet) return refuse({ code: 'not-found', what: 'This test sheet' })
      const shop = await shopOf(tx)
      const { others, struck } = await withoutCorrected(tx, step, shop, sheet, input.corrects)
      const { tube, isNew } = await tubeOnTester(tx, step, shop, sheet, input)
      if (others.some(({ tubeId }) => tubeId === tube.id))
        return refuse({ code: 'sheet-tested-already', mark: tube.mark })
      await recordTest(tx, step, shop, tube, entryOf(sheet, input, struck), sheet.id)
      return { tubeId: tube.id, mark: tube.mark, isNew }
    }),
  )
}

function entryOf(sheet: TestSheet, { reading }: SheetLineInput, struck: SheetLine | null): TestEntry {
  const { day, instrumentName, plateVoltage, screenVoltage, gridVoltage } = sheet
  // An older line that is put right in another box was still not asked about microphony by itself.
  const microphony = reading.microphony === '' && struck?.test.microphony === null ? null : reading.microphony
  return { ...reading, microphony, day, instrumentName, plateVoltage, screenVoltage, gridVoltage }
}

/** The lines of the sheet but the one being put right, which goes. */
async function withoutCorrected(
  tx: Tx,
  { actor, now }: Step,
  shop: Shop,
  sheet: TestSheet,
  corrects: string | null,
): Promise<{ readonly others: readonly SheetLine[]; readonly struck: SheetLine | null }> {
  const lines = await listSheetLines(sheet.id, tx)
  if (corrects === null) return { others: lines, struck: null }
  const line = lines.find(({ test }) => test.id === corrects)
  if (!line) return refuse({ code: 'not-found', what: 'The line to be corrected' })
  await removeSheetLine(tx, sheet.id, line)
  const words = wordsFor(shop.words)
  const changes = changesBetween(testShown(line.test, '', words), shown([]))
  const note = { at: now, person: actor.name, subject: 'tube', subjectId: line.tubeId } as const
  await writeHistory(tx, { ...note, did: 'Test struck out on its sheet, to be corrected', changes })
  return { others: lines.filter((each) => each !== line), struck: line }
}

type OnTester = { readonly tube: Pick<Tube, 'id' | 'mark' | 'designation'>; readonly isNew: boolean }

async function tubeOnTester(
  tx: Tx,
  step: Step,
  shop: Shop,
  sheet: TestSheet,
  { mark: typed, takeIn }: SheetLineInput,
): Promise<OnTester> {
  const { designation } = sheet
  if (typed.trim() === '' && !takeIn) return refuse({ code: 'sheet-mark-missing' })
  const mark = typed.trim() === '' ? await nextMark(tx) : readMark(typed)
  if (mark === null)
    return refuse({ code: 'tubes-refused', faults: [{ code: 'not-a-mark', field: 'mark', typed, row: null }] })
  const tube = await findTubeByMark(mark, tx)
  if (!tube) {
    if (!takeIn) return refuse({ code: 'sheet-mark-unknown', mark, designation })
    return { tube: await takenIn(tx, step, shop, sheet, mark), isNew: true }
  }
  if (foldedDesignation(tube.designation) !== foldedDesignation(designation))
    return refuse({ code: 'sheet-other-type', mark, designation: tube.designation, wanted: designation })
  if (tube.whereabouts !== 'in-stock')
    return refuse({ code: 'sheet-not-in-stock', mark, whereabouts: tube.whereabouts })
  return { tube, isNew: false }
}

async function takenIn(tx: Tx, step: Step, shop: Shop, sheet: TestSheet, mark: string): Promise<Tube> {
  const { designation, condition, location, price, cost } = sheet
  const details = { mark, designation, condition, location, price, cost, acquired: '', construction: '' }
  const tube = await findTube(await addTube(tx, step, shop, details, null), tx)
  if (!tube) throw new Error(`Tube ${mark} was taken in and is not there`)
  return tube
}
