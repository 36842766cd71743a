import * as z from 'zod/mini'
import { after, flag, refuseAt, requiredMeasure, text, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { type LabelSheet, labelSheetFaults, labelSheetFaultText } from '@/lib/domain/stock/label/label-sheet'

const length = (label: string, min: number, max: number) => requiredMeasure({ label, unit: 'mm', min, max })
const count = (label: string, max: number) => requiredMeasure({ label, unit: '', min: 1, max, whole: true })

export const labelSheetSchema = after(
  z.object({
    id: text({ label: 'Sheet' }),
    version: version(),
    name: text({ label: 'Name', required: true, max: 60 }),
    pageWidth: length('Page width', 15, 420),
    pageHeight: length('Page height', 10, 600),
    rows: count('Rows', 60),
    columns: count('Columns', 20),
    marginLeft: length('Left margin', 0, 100),
    marginTop: length('Top margin', 0, 100),
    labelWidth: length('Label width', 15, 420),
    labelHeight: length('Label height', 8, 600),
    gapAcross: length('Gap across', 0, 50),
    gapDown: length('Gap down', 0, 50),
    retired: flag(),
  }),
  ({ id, version: saved, retired, ...sizes }, context) => {
    const details = { ...sizes, active: !retired }
    for (const fault of labelSheetFaults(details)) refuseAt(context, labelSheetFaultText(fault), [fault.field])
    return { id: id || null, version: saved, details }
  },
)

export const SIZES = [
  ['pageWidth', 'Page width', 'mm'],
  ['pageHeight', 'Page height', 'mm'],
  ['rows', 'Rows', ''],
  ['columns', 'Columns', ''],
  ['labelWidth', 'Label width', 'mm'],
  ['labelHeight', 'Label height', 'mm'],
  ['marginLeft', 'Left margin', 'mm'],
  ['marginTop', 'Top margin', 'mm'],
  ['gapAcross', 'Gap across', 'mm'],
  ['gapDown', 'Gap down', 'mm'],
] as const

export function labelSheetValues(sheet: LabelSheet | null): FormValues {
  if (!sheet)
    return {
      id: '',
      version: '0',
      name: '',
      retired: '',
      rows: '1',
      columns: '1',
      gapAcross: '0',
      gapDown: '0',
      marginLeft: '0',
      marginTop: '0',
    }
  return sheetValues({
    ...{ id: sheet.id, version: String(sheet.version), name: sheet.name, retired: sheet.active ? '' : 'on' },
    ...Object.fromEntries(SIZES.map(([name]) => [name, String(sheet[name])])),
  })
}
