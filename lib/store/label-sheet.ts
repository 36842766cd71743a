import { type LabelSheet, type LabelSheetDetails, USUAL_LABEL_SHEETS } from '@/lib/domain/stock/label/label-sheet'
import { db, type Tx } from './database'

/** The shop's own first, then those sold everywhere; retired ones only when asked for. */
export async function listLabelSheets(withRetired = false): Promise<LabelSheet[]> {
  const where = withRetired ? {} : { active: true }
  const own = await db().labelSheet.findMany({ where, orderBy: { name: 'asc' } })
  return [...own, ...USUAL_LABEL_SHEETS]
}

export async function findLabelSheet(id: string, tx: Tx = db()): Promise<LabelSheet | null> {
  return USUAL_LABEL_SHEETS.find((sheet) => sheet.id === id) ?? (await tx.labelSheet.findUnique({ where: { id } }))
}

export async function createLabelSheet(tx: Tx, details: LabelSheetDetails): Promise<string> {
  return (await tx.labelSheet.create({ data: details, select: { id: true } })).id
}

/** False when somebody saved since `version`. */
export async function saveLabelSheet(
  tx: Tx,
  id: string,
  version: number,
  details: LabelSheetDetails,
): Promise<boolean> {
  const data = { ...details, version: version + 1 }
  return (await tx.labelSheet.updateMany({ where: { id, version }, data })).count === 1
}
