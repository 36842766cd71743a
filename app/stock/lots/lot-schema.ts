import * as z from 'zod/mini'
import { amount, choice, requiredAmount, requiredMeasure, text, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { exactDecimal } from '@/lib/domain/money'
import { TUBE_CONDITIONS } from '@/lib/domain/stock/tube'
import { LARGEST_COUNT, type TubeLot } from '@/lib/domain/stock/tube-lot'
import type { StockKit } from '../tube-schema'

export const lotSchema = ({ currency, digits }: StockKit) =>
  z.object({
    id: text({ label: 'Lot' }),
    version: version(),
    designation: text({ label: 'Type', required: true, max: 40 }),
    condition: choice('Condition', TUBE_CONDITIONS),
    count: requiredMeasure({ label: 'Count', unit: '', min: 0, max: LARGEST_COUNT, whole: true }),
    cost: amount({ label: 'Paid', currency, digits }),
    price: requiredAmount({ label: 'Price', currency, digits }),
    location: text({ label: 'Location', max: 60 }),
    note: text({ label: 'Note', max: 300 }),
  })

export const LOT_BLANK: FormValues = {
  ...{ id: '', version: '0', designation: '', condition: 'as-found', count: '', cost: '', price: '', location: '' },
  note: '',
}

export const lotValues = (lot: TubeLot, { digits }: StockKit): FormValues =>
  sheetValues({
    ...{ id: lot.id, designation: lot.designation, condition: lot.condition, location: lot.location, note: lot.note },
    version: String(lot.version),
    count: String(lot.count),
    cost: lot.cost === null ? '' : exactDecimal(lot.cost, digits),
    price: exactDecimal(lot.price, digits),
  })

export const takeOutSchema = z.object({ lotId: text({ label: 'Lot' }), mark: text({ label: 'Mark', max: 40 }) })
