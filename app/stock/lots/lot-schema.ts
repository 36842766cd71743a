import * as z from 'zod/mini'
import { choice, text } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { TUBE_CONDITIONS } from '@/lib/domain/stock/tube'
import type { TubeLot } from '@/lib/domain/stock/tube-lot'
import { COUNTED_BLANK, countedFields, countedValues } from '../counted-schema'
import type { StockKit } from '../tube-schema'

export const lotSchema = (kit: StockKit) =>
  z.object({
    ...countedFields(kit),
    designation: text({ label: 'Type', required: true, max: 40 }),
    condition: choice('Condition', TUBE_CONDITIONS),
    note: text({ label: 'Note', max: 300 }),
  })

export const LOT_BLANK: FormValues = {
  ...COUNTED_BLANK,
  ...{ designation: '', condition: 'as-found', note: '' },
}

export const lotValues = (lot: TubeLot, kit: StockKit): FormValues =>
  sheetValues({
    ...countedValues(lot, kit),
    ...{ designation: lot.designation, condition: lot.condition, note: lot.note },
  })

export const takeOutSchema = z.object({ lotId: text({ label: 'Lot' }), mark: text({ label: 'Mark', max: 40 }) })
