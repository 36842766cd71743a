'use client'
/** Boxes of a shop's basics: first run and settings. */
import { type Option, SelectField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import type { PickLists } from './pick-lists'
import { MAINS_BOUNDS, USUAL_MAINS } from './shop-fields'

type Props = {
  readonly form: ActionForm
  readonly lists: PickLists
  readonly prefix?: string /** Text of the choice not yet made. */
  readonly empty?: string
}

const PAPERS: readonly Option[] = [
  { value: 'A4', text: 'A4, 210 × 297 mm' },
  { value: 'LETTER', text: 'Letter, 8½ × 11 in' },
]

const WORDS: readonly Option[] = [
  { value: 'US', text: 'US: tube, plate, B+, safety ground' },
  { value: 'UK', text: 'UK: valve, anode, HT, safety earth' },
]

export function MoneyFields({ form, lists, prefix = '', empty }: Props) {
  return (
    <div className="fields">
      <SelectField
        form={form}
        name={`${prefix}currency`}
        label="Currency"
        options={lists.currencies}
        empty={empty}
        hint="Can be changed only until the first amount is written: a quote, a price, a payment or a spending limit."
      />
      <TextField
        form={form}
        name={`${prefix}hourlyRate`}
        label="Hourly rate"
        numeric
        hint="Before tax. Operations by the hour are charged with it."
      />
      <TextField
        form={form}
        name={`${prefix}taxName`}
        label="Name of the tax"
        hint="As it stands on your papers: VAT, Sales tax, GST."
      />
      <TextField
        form={form}
        name={`${prefix}taxMilliPercent`}
        label="Tax rate"
        unit="%"
        numeric
        hint="Up to three decimals, such as 8.875. Type 0 when none is charged."
      />
    </div>
  )
}

export function PlaceFields({ form, lists, prefix = '', empty }: Props) {
  return (
    <div className="fields">
      <TextField
        form={form}
        name={`${prefix}mainsVolts`}
        label="Mains voltage"
        unit="V"
        numeric
        list="usual-mains"
        hint={`Nominal voltage of your sockets, ${MAINS_BOUNDS.min} to ${MAINS_BOUNDS.max} V. New amplifiers start from it.`}
      />
      <datalist id="usual-mains">
        {USUAL_MAINS.map((volts) => (
          <option key={volts} value={volts} />
        ))}
      </datalist>
      <SelectField
        form={form}
        name={`${prefix}timeZone`}
        label="Time zone"
        options={lists.timeZones}
        hint="Days and times on every sheet are those of this zone."
      />
      <SelectField
        form={form}
        name={`${prefix}paper`}
        label="Paper"
        options={PAPERS}
        empty={empty}
        hint="In your printer, for receipts, quotes and sheets."
      />
      <SelectField
        form={form}
        name={`${prefix}words`}
        label="Words"
        options={WORDS}
        empty={empty}
        hint="Also how days and amounts are written."
      />
    </div>
  )
}
