/** What lots and parts share: a count, a price and a place, under a version. */
import { requiredMeasure, text, version } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import { exactDecimal, type Money } from '@/lib/domain/money'
import { LARGEST_COUNT } from '@/lib/domain/stock/tube-lot'
import { priceFields, type StockKit } from './tube-schema'

export const countedFields = (kit: StockKit) => ({
  id: text({ label: 'Sheet' }),
  version: version(),
  count: requiredMeasure({ label: 'Count', unit: '', min: 0, max: LARGEST_COUNT, whole: true }),
  ...priceFields(kit),
})

export const COUNTED_BLANK: FormValues = { id: '', version: '0', count: '', cost: '', price: '', location: '' }

type Counted = {
  readonly id: string
  readonly version: number
  readonly count: number
  readonly cost: Money | null
  readonly price: Money
  readonly location: string
}

export const countedValues = ({ id, version, count, cost, price, location }: Counted, { digits }: StockKit) => ({
  ...{ id, location },
  version: String(version),
  count: String(count),
  cost: cost === null ? '' : exactDecimal(cost, digits),
  price: exactDecimal(price, digits),
})
