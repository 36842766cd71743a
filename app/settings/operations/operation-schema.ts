import * as z from 'zod/mini'
import { depending } from '@/app/_components/form/depending'
import { after, box, choice, flag, requiredAmount, text, thousandths } from '@/app/_components/form/fields'
import type { FormValues } from '@/app/_components/form/form-state'
import { exactDecimal, minorDigits } from '@/lib/domain/money'
import type { Operation } from '@/lib/store/operation'

const nothing = () => box(() => null)

export const operationSchema = (currency: string) =>
  depending(({ charged }) =>
    after(
      z.object({
        id: text({ label: 'Operation' }),
        name: text({ label: 'Name', required: true, max: 120 }),
        charged: choice('Charged', ['hours', 'flat']),
        milliHours: charged === 'flat' ? nothing() : thousandths({ label: 'Hours', min: 1, max: 200_000 }),
        flatPrice:
          charged === 'flat'
            ? requiredAmount({ label: 'Flat price', currency, digits: minorDigits(currency) })
            : nothing(),
        retired: flag(),
      }),
      ({ id, name, milliHours, flatPrice, retired }) => ({
        id: id || null,
        details: { name, milliHours, flatPrice, active: !retired },
      }),
    ),
  )

export function operationValues(operation: Operation | null, currency: string): FormValues {
  if (!operation) return { id: '', name: '', charged: 'hours', milliHours: '', flatPrice: '', retired: '' }
  const { id, name, milliHours, flatPrice, active } = operation
  return {
    id,
    name,
    charged: flatPrice === null ? 'hours' : 'flat',
    milliHours: milliHours === null ? '' : String(milliHours / 1000),
    flatPrice: flatPrice === null ? '' : exactDecimal(flatPrice, minorDigits(currency)),
    retired: active ? '' : 'on',
  }
}
