import * as z from 'zod/mini'
import { amount, choice, measure, requiredAmount, requiredMeasure, text, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { exactDecimal } from '@/lib/domain/money'
import { PART_KINDS, type Part } from '@/lib/domain/stock/part'
import { LARGEST_COUNT } from '@/lib/domain/stock/tube-lot'
import type { StockKit } from '../tube-schema'

export const partSchema = ({ currency, digits }: StockKit) =>
  z.object({
    id: text({ label: 'Part' }),
    version: version(),
    name: text({ label: 'Name', required: true, max: 80 }),
    kind: choice('Kind', PART_KINDS),
    value: text({ label: 'Value', max: 80 }),
    count: requiredMeasure({ label: 'Count', unit: '', min: 0, max: LARGEST_COUNT, whole: true }),
    cost: amount({ label: 'Paid', currency, digits }),
    price: requiredAmount({ label: 'Price', currency, digits }),
    reorderLevel: measure({ label: 'Reorder at', unit: '', min: 0, max: LARGEST_COUNT, whole: true }),
    location: text({ label: 'Location', max: 60 }),
  })

export const PART_BLANK: FormValues = {
  ...{ id: '', version: '0', name: '', kind: '', value: '', count: '', cost: '', price: '', reorderLevel: '' },
  location: '',
}

export const partValues = (part: Part, { digits }: StockKit): FormValues =>
  sheetValues({
    ...{ id: part.id, name: part.name, kind: part.kind, value: part.value, location: part.location },
    version: String(part.version),
    count: String(part.count),
    cost: part.cost === null ? '' : exactDecimal(part.cost, digits),
    price: exactDecimal(part.price, digits),
    reorderLevel: part.reorderLevel === null ? '' : String(part.reorderLevel),
  })

export const WAYS = ['taken', 'put-in'] as const

export const countSchema = z.object({
  partId: text({ label: 'Part' }),
  way: choice('What happened', WAYS),
  number: requiredMeasure({ label: 'How many', unit: '', min: 1, max: LARGEST_COUNT, whole: true }),
  reason: text({ label: 'Reason', required: true, max: 200 }),
})
