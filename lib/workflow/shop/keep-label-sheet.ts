/** Writes the sizes of a sheet of labels down, or corrects them. Whoever keeps the shop does. */
import { type Change, changesBetween, type Shown, shown } from '@/lib/domain/history/changes'
import type { Result } from '@/lib/domain/result'
import { type LabelSheetDetails, labelSheetFaults } from '@/lib/domain/stock/label/label-sheet'
import { inTransaction } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { createLabelSheet, findLabelSheet, saveLabelSheet } from '@/lib/store/label-sheet'
import { allowed, refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

export type LabelSheetInput = {
  readonly id: string | null
  readonly version: number
  readonly details: LabelSheetDetails
}

const sheetShown = (sheet: LabelSheetDetails): Shown =>
  shown([
    ['Name', sheet.name],
    ['Page', `${sheet.pageWidth} × ${sheet.pageHeight} mm`],
    ['Labels', `${sheet.rows} rows of ${sheet.columns}`],
    ['Label', `${sheet.labelWidth} × ${sheet.labelHeight} mm`],
    ['Margin', `${sheet.marginLeft} mm left, ${sheet.marginTop} mm top`],
    ['Gap', `${sheet.gapAcross} mm across, ${sheet.gapDown} mm down`],
    ['In use', sheet.active ? 'yes' : 'no'],
  ])

export function keepLabelSheet(
  step: Step,
  { id, version, details }: LabelSheetInput,
): Promise<Result<string, StepFault>> {
  return refusing(() =>
    inTransaction(async (tx) => {
      const duty = allowed(step, 'keep-shop')
      if (!duty.ok) return refuse(duty.fault)
      const [fault] = labelSheetFaults(details)
      if (fault) return refuse({ code: 'labels-off-page', fault })
      const note = (subjectId: string, did: string, changes: readonly Change[], saved: number) =>
        writeHistory(tx, {
          ...{ at: step.now, person: step.actor.name, subjectId, did, changes, version: saved },
          subject: 'labels',
        })
      if (id === null) {
        const created = await createLabelSheet(tx, details)
        await note(created, 'Label sheet written down', changesBetween(shown([]), sheetShown(details)), 1)
        return created
      }
      const before = await findLabelSheet(id, tx)
      if (!before) return refuse({ code: 'not-found', what: 'This label sheet' })
      if (!(await saveLabelSheet(tx, id, version, details))) return refuse(await stale(tx, 'labels', id, version))
      await note(id, 'Label sheet corrected', changesBetween(sheetShown(before), sheetShown(details)), version + 1)
      return id
    }),
  )
}
