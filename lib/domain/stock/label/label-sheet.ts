/**
 * A sheet of labels, or a single label: where each of them lies on the page.
 * Millimetres from the upper left corner, rows downwards, counted from 1 along
 * the first row.
 */
export type LabelSheetDetails = {
  readonly name: string
  readonly pageWidth: number
  readonly pageHeight: number
  readonly rows: number
  readonly columns: number
  readonly marginLeft: number
  readonly marginTop: number
  readonly labelWidth: number
  readonly labelHeight: number
  /** From the right edge of one to the left edge of the next. */
  readonly gapAcross: number
  readonly gapDown: number
  readonly active: boolean
}

export type LabelSheet = LabelSheetDetails & { readonly id: string; readonly version: number }

export type LabelPlace = { readonly page: number; readonly x: number; readonly y: number }

/** Room for a printed edge: a sheet cut a hair too large is no fault. */
const HAIR = 0.5

export type LabelSheetFault = { readonly field: 'columns' | 'rows'; readonly needs: number; readonly has: number }

export function labelSheetFaults(sheet: LabelSheetDetails): LabelSheetFault[] {
  const across = sheet.marginLeft + sheet.columns * sheet.labelWidth + (sheet.columns - 1) * sheet.gapAcross
  const down = sheet.marginTop + sheet.rows * sheet.labelHeight + (sheet.rows - 1) * sheet.gapDown
  const faults: LabelSheetFault[] = []
  if (across > sheet.pageWidth + HAIR) faults.push({ field: 'columns', needs: across, has: sheet.pageWidth })
  if (down > sheet.pageHeight + HAIR) faults.push({ field: 'rows', needs: down, has: sheet.pageHeight })
  return faults
}

export function labelSheetFaultText({ field, needs, has }: LabelSheetFault): string {
  const what = field === 'columns' ? ['Columns', 'width', 'across'] : ['Rows', 'height', 'down']
  return `${what[0]}: labels, gaps and margin take ${Number(needs.toFixed(1))} mm ${what[2]}, and the ${what[1]} of the page is ${has} mm.`
}

export const labelsOnSheet = ({ rows, columns }: Pick<LabelSheetDetails, 'rows' | 'columns'>): number => rows * columns

/** Of the label `index` from 0, when the first `start - 1` places of the first page are used up. */
export function labelPlace(sheet: LabelSheetDetails, start: number, index: number): LabelPlace {
  const at = start - 1 + index
  const page = Math.floor(at / labelsOnSheet(sheet))
  const onPage = at % labelsOnSheet(sheet)
  const column = onPage % sheet.columns
  const row = Math.floor(onPage / sheet.columns)
  return {
    page,
    x: sheet.marginLeft + column * (sheet.labelWidth + sheet.gapAcross),
    y: sheet.marginTop + row * (sheet.labelHeight + sheet.gapDown),
  }
}

const usual = (id: string, details: Omit<LabelSheetDetails, 'active'>): LabelSheet => ({
  ...details,
  active: true,
  id,
  version: 0,
})

const A4 = { pageWidth: 210, pageHeight: 297 } as const
const LETTER = { pageWidth: 215.9, pageHeight: 279.4 } as const

/** Sizes sold everywhere, from memory; the shop writes its own down beside them. */
export const USUAL_LABEL_SHEETS: readonly LabelSheet[] = [
  usual('usual-a4-24', {
    name: 'A4, 24 labels of 63.5 × 33.9 mm',
    ...A4,
    ...{ rows: 8, columns: 3, marginLeft: 7.2, marginTop: 12.9, labelWidth: 63.5, labelHeight: 33.9 },
    ...{ gapAcross: 2.5, gapDown: 0 },
  }),
  usual('usual-a4-65', {
    name: 'A4, 65 labels of 38.1 × 21.2 mm',
    ...A4,
    ...{ rows: 13, columns: 5, marginLeft: 4.75, marginTop: 10.7, labelWidth: 38.1, labelHeight: 21.2 },
    ...{ gapAcross: 2.5, gapDown: 0 },
  }),
  usual('usual-letter-30', {
    name: 'Letter, 30 labels of 66.7 × 25.4 mm',
    ...LETTER,
    ...{ rows: 10, columns: 3, marginLeft: 4.8, marginTop: 12.7, labelWidth: 66.7, labelHeight: 25.4 },
    ...{ gapAcross: 3.1, gapDown: 0 },
  }),
  usual('usual-single', {
    name: 'Single label, 62 × 29 mm',
    ...{ pageWidth: 62, pageHeight: 29, rows: 1, columns: 1, marginLeft: 0, marginTop: 0 },
    ...{ labelWidth: 62, labelHeight: 29, gapAcross: 0, gapDown: 0 },
  }),
]
