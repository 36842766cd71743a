import * as z from 'zod/mini'
import { choice, measure, requiredMeasure, text } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { PART_KINDS, type Part } from '@/lib/domain/stock/part'
import { LARGEST_COUNT } from '@/lib/domain/stock/tube-lot'
import { COUNTED_BLANK, countedFields, countedValues } from '../counted-schema'
import type { StockKit } from '../tube-schema'

export const partSchema = (kit: StockKit) =>
  z.object({
    ...countedFields(kit),
    name: text({ label: 'Name', required: true, max: 80 }),
    kind: choice('Kind', PART_KINDS),
    value: text({ label: 'Value', max: 80 }),
    reorderLevel: measure({ label: 'Reorder at', unit: '', min: 0, max: LARGEST_COUNT, whole: true }),
  })

export const PART_BLANK: FormValues = {
  ...COUNTED_BLANK,
  ...{ name: '', kind: '', value: '', reorderLevel: '' },
}

export const partValues = (part: Part, kit: StockKit): FormValues =>
  sheetValues({
    ...countedValues(part, kit),
    ...{ name: part.name, kind: part.kind, value: part.value },
    reorderLevel: part.reorderLevel === null ? '' : String(part.reorderLevel),
  })

export const WAYS = ['taken', 'put-in'] as const

export const countSchema = z.object({
  partId: text({ label: 'Part' }),
  way: choice('What happened', WAYS),
  number: requiredMeasure({ label: 'How many', unit: '', min: 1, max: LARGEST_COUNT, whole: true }),
  reason: text({ label: 'Reason', required: true, max: 200 }),
})
