'use client'
import { FormMessage, HiddenField, SelectField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { type ActionForm, useActionForm } from '@/app/_components/form/use-action-form'
import { SUPPLY_BOUNDS, type SupplyNumber } from '@/lib/domain/amp/supply-bounds'
import { SCREEN_FEEDS } from '@/lib/domain/amp/supply-facts'
import { screenFeedWord } from '@/lib/domain/amp/supply-shown'
import type { Words } from '@/lib/domain/words'
import { submitSupply } from './actions'
import { SILICON, supplySchema } from './supply-schema'

type Props = { readonly values: FormValues; readonly words: Words; readonly rectifiers: readonly string[] }

export function SupplyForm({ values, words, rectifiers }: Props) {
  const form = useActionForm(submitSupply, freshForm(values), supplySchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      {['ampId', 'version', 'base'].map((name) => (
        <HiddenField key={name} form={form} name={name} />
      ))}
      <p className="soft">
        As measured, else as marked. What is not known stays empty: the bench then says what it has to assume.
      </p>
      <SupplySide form={form} words={words} rectifiers={rectifiers} />
      <BiasSide form={form} words={words} />
      <div className="row">
        <SubmitButton form={form}>Save supply and bias</SubmitButton>
      </div>
    </form>
  )
}

type BoxProps = {
  readonly form: ActionForm
  readonly name: SupplyNumber
  readonly hint?: string
}

function Box({ form, name, hint }: BoxProps) {
  const { label, unit } = SUPPLY_BOUNDS[name]
  return <TextField form={form} name={name} label={label} unit={unit} numeric {...(hint ? { hint } : {})} />
}

function SupplySide({ form, words, rectifiers }: { form: ActionForm } & Omit<Props, 'values'>) {
  const feeds = SCREEN_FEEDS.map((feed) => ({ value: feed, text: screenFeedWord(feed, words) }))
  const kinds = [SILICON, ...rectifiers].map((type) => ({ value: type, text: type }))
  return (
    <fieldset>
      <legend>{words.supply} supply</legend>
      <div className="fields">
        <SelectField form={form} name="rectifierType" label="Rectifier" options={kinds} empty="not known" />
        <Box
          form={form}
          name="openSupplyVolts"
          hint={`At the reservoir, output ${words.tubes} out, ${words.mains} as marked. It stands far above the working volts.`}
        />
        <Box
          form={form}
          name="sourceOhms"
          hint="What it sags by: read the reservoir at two currents; volts lost over amperes gained, less what a rectifier accounts for."
        />
        <Box form={form} name="reservoirMicrofarads" hint="The first capacitor after the rectifier." />
        <Box form={form} name="dischargeOhms" hint="The bleeder across it, else the resistor of your discharge lead." />
        <SelectField form={form} name="screenFeed" label="Screens fed" options={feeds} empty="not known" />
        <Box
          form={form}
          name="ultralinearTapPercent"
          hint={`With screens on taps: turns from ${words.supply} to the tap, of the half primary.`}
        />
        <Box
          form={form}
          name="screenDropperOhms"
          hint="Choke or resistor between reservoir and screen node; 0 for none."
        />
        <Box form={form} name="heaterWindingVolts" hint={`Of the winding that feeds the output ${words.tubes}.`} />
        <Box form={form} name="heaterWindingAmps" hint="As marked on the transformer or in its list." />
      </div>
    </fieldset>
  )
}

function BiasSide({ form, words }: { form: ActionForm; words: Words }) {
  return (
    <fieldset>
      <legend>Grid side of the output stage</legend>
      <div className="fields">
        <Box
          form={form}
          name="gridSupplyVolts"
          hint="Negative, against chassis, where the grid leaks meet. Leave empty with cathode resistors."
        />
        <Box form={form} name="gridColdestVolts" hint="The most negative the adjustment gives." />
        <Box form={form} name="gridHottestVolts" hint="The least negative the adjustment gives." />
        <Box form={form} name="gridLeakOhms" hint={`Of each output ${words.tube}.`} />
      </div>
    </fieldset>
  )
}
