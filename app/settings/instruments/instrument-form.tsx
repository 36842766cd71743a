'use client'
import { CheckField, SelectField, SheetHead, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { type ActionForm, useActionForm } from '@/app/_components/form/use-action-form'
import { INSTRUMENT_KINDS } from '@/lib/domain/shop/instrument'
import { submitInstrument } from './actions'
import { instrumentSchema } from './instrument-schema'

/** `tube` is the shop's word for it. */
export function InstrumentForm({ values, tube }: { values: FormValues; tube: string }) {
  const form = useActionForm(submitInstrument, freshForm(values), instrumentSchema)
  const kinds = INSTRUMENT_KINDS.map((kind) => ({ value: kind, text: kind.replace('tube', tube) }))
  return (
    <form {...form.formProps} className="stack">
      <SheetHead form={form} />
      <div className="fields">
        <TextField
          form={form}
          name="name"
          label="Name"
          hint="Your own word for it, as it is to stand beside the readings."
        />
        <SelectField form={form} name="kind" label="Kind" options={kinds} />
        <TextField
          form={form}
          name="calibratedOn"
          label="Calibrated on"
          type="date"
          hint="Leave empty when it never was, or nobody knows."
        />
      </div>
      <fieldset>
        <legend>Of a meter</legend>
        <MeterFields form={form} />
      </fieldset>
      {form.valueOf('id') !== '' && (
        <CheckField
          form={form}
          name="retired"
          label="Retired"
          hint="No longer offered for new readings. What was measured with it stays."
        />
      )}
      <div className="row">
        <SubmitButton form={form}>Save instrument</SubmitButton>
      </div>
    </form>
  )
}

function MeterFields({ form }: { form: ActionForm }) {
  return (
    <>
      <p className="soft">
        From its data sheet, DC volts. The uncertainty beside every computed result comes from these figures, also for
        readings already taken with it: a meter with other figures is written down as another instrument.
      </p>
      <div className="fields">
        <TextField form={form} name="accuracyPercent" label="Accuracy, ±" unit="% of reading" numeric />
        <TextField form={form} name="accuracyCounts" label="and ±" unit="counts" numeric hint="Of the last digit." />
        <TextField
          form={form}
          name="displayCounts"
          label="Display"
          unit="counts"
          numeric
          hint="6000 for one that goes to 5999."
        />
        <TextField
          form={form}
          name="inputOhms"
          label="Input resistance"
          unit="MΩ"
          numeric
          hint="10 MΩ is usual for a digital meter; look it up."
        />
      </div>
    </>
  )
}
