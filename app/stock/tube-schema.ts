import * as z from 'zod/mini'
import { amount, choice, requiredAmount, text, version } from '@/app/_components/form/fields'
import { type FormValues, sheetValues } from '@/app/_components/form/form-state'
import { exactDecimal, minorDigits } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { TUBE_CONDITIONS, type Tube } from '@/lib/domain/stock/tube'
import type { WordSet } from '@/lib/domain/words'
import { furtherFields, furtherValues } from './further-schema'

/** What the forms of the stock need to know of the shop: plain values, so that they reach the browser. */
export type StockKit = { readonly currency: string; readonly digits: number; readonly words: WordSet }

export const stockKit = ({ currency, words }: Shop): StockKit => ({ currency, digits: minorDigits(currency), words })

export const priceFields = ({ currency, digits }: StockKit) => ({
  location: text({ label: 'Location', max: 60 }),
  cost: amount({ label: 'Paid', currency, digits }),
  price: requiredAmount({ label: 'Price', currency, digits }),
})

/** All but the mark: what the tubes of a delivery share. */
export const sharedFields = (kit: StockKit) => ({
  designation: text({ label: 'Type', required: true, max: 40 }),
  condition: choice('Condition', TUBE_CONDITIONS),
  acquired: text({ label: 'How it came', max: 200 }),
  construction: text({ label: 'Construction', max: 300 }),
  ...priceFields(kit),
})

export const detailFields = (kit: StockKit) => ({ mark: text({ label: 'Mark', max: 40 }), ...sharedFields(kit) })

export const tubeSchema = (kit: StockKit) =>
  z.object({ id: text({ label: 'Piece' }), version: version(), ...detailFields(kit), ...furtherFields() })

export const SHARED_BLANK: FormValues = {
  designation: '',
  condition: '',
  acquired: '',
  construction: '',
  location: '',
  cost: '',
  price: '',
}

export function tubeValues(tube: Tube, { digits }: StockKit): FormValues {
  const { id, mark, designation, condition, acquired, construction, location, cost, price } = tube
  return sheetValues({
    ...{ id, mark, designation, condition, acquired, construction, location },
    version: String(tube.version),
    cost: cost === null ? '' : exactDecimal(cost, digits),
    price: exactDecimal(price, digits),
    ...furtherValues(tube.further),
  })
}
