'use client'
/** Where it lies, what is asked for it and what was paid: of all that is kept in stock. */
import { TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import type { StockKit } from './tube-schema'

export function PriceFields({ form, kit }: { readonly form: ActionForm; readonly kit: StockKit }) {
  return (
    <>
      <TextField form={form} name="location" label="Location" hint="Drawer, shelf or box." />
      <TextField form={form} name="price" label="Price" unit={kit.currency} numeric hint="For one, before tax." />
      <TextField
        form={form}
        name="cost"
        label="Paid"
        unit={kit.currency}
        numeric
        hint="For one; empty when not known."
      />
    </>
  )
}
