'use client'
import { FormMessage, HiddenField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { type ActionForm, useActionForm } from '@/app/_components/form/use-action-form'
import { capital, type Words } from '@/lib/domain/words'
import { submitShop } from './actions'
import type { PickLists } from './pick-lists'
import { MoneyFields, PlaceFields } from './shop-basics'
import { IDLE_WINDOWS } from './shop-fields'
import styles from './shop-form.module.css'
import { shopSchema } from './shop-schema'

type Props = { readonly values: FormValues; readonly lists: PickLists; readonly words: Words }

export function ShopForm({ values, lists, words }: Props) {
  const form = useActionForm(submitShop, freshForm(values), shopSchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="version" />
      <HiddenField form={form} name="base" />
      <fieldset>
        <legend>On every paper</legend>
        <AddressFields form={form} />
      </fieldset>
      <fieldset>
        <legend>Money</legend>
        <MoneyFields form={form} lists={lists} />
      </fieldset>
      <fieldset>
        <legend>Quotes and warranty</legend>
        <TermFields form={form} words={words} />
      </fieldset>
      <fieldset>
        <legend>Place and paper</legend>
        <PlaceFields form={form} lists={lists} />
      </fieldset>
      <fieldset>
        <legend>Idle windows</legend>
        <WindowFields form={form} words={words} />
      </fieldset>
      <fieldset>
        <legend>Safety limits</legend>
        <SafetyFields form={form} words={words} />
      </fieldset>
      <div className="row">
        <SubmitButton form={form}>Save settings</SubmitButton>
      </div>
    </form>
  )
}

function AddressFields({ form }: { form: ActionForm }) {
  return (
    <div className="fields">
      <TextField form={form} name="name" label="Name of the shop" />
      <TextField form={form} name="phone" label="Phone" type="tel" />
      <TextField form={form} name="email" label="E-mail" type="email" />
      <div className="wide">
        <TextField form={form} name="address" label="Postal address" lines={3} />
      </div>
    </div>
  )
}

function TermFields({ form, words }: { form: ActionForm; words: Words }) {
  return (
    <div className="fields">
      <TextField
        form={form}
        name="depositPercent"
        label="Deposit"
        unit="%"
        numeric
        hint="Share of an accepted quote asked before work. 0 for none."
      />
      <TextField form={form} name="quoteValidDays" label="Quotes stand for" unit="days" numeric />
      <TextField
        form={form}
        name="warrantyDays"
        label="Warranty"
        unit="days"
        numeric
        hint="From the day of collection."
      />
      <TextField
        form={form}
        name="recheckDays"
        label="Check again after"
        unit="days"
        numeric
        hint={`New ${words.tubes} settle; the pickup sheet asks the customer back then. 0 to leave it out.`}
      />
      <TextField
        form={form}
        name="testAgeDays"
        label={`${capital(words.tube)} tests count for`}
        unit="days"
        numeric
        hint="An older test is not used for matching."
      />
      <div className="wide">
        <TextField form={form} name="receiptTerms" label="Terms on the receipt" lines={4} />
      </div>
      <div className="wide">
        <TextField
          form={form}
          name="warrantyTerms"
          label="Warranty terms"
          lines={4}
          hint="Printed on the pickup sheet."
        />
      </div>
    </div>
  )
}

function WindowFields({ form, words }: { form: ActionForm; words: Words }) {
  return (
    <>
      <p className="soft">
        {capital(words.plate)} dissipation at idle, in percent of the rated dissipation. The figures a new shop starts
        from are common practice and have no source: they are your rule, and you may change them. Class B stages idle
        lower on purpose.
      </p>
      <div className="fields">
        {IDLE_WINDOWS.map(([name, label]) => (
          <fieldset key={name} className={styles.window}>
            <legend>{label}</legend>
            <TextField form={form} name={`${name}Low`} label="from" unit="%" numeric />
            <TextField form={form} name={`${name}High`} label="to" unit="%" numeric />
          </fieldset>
        ))}
      </div>
    </>
  )
}

function SafetyFields({ form, words }: { form: ActionForm; words: Words }) {
  return (
    <>
      <div className="caution" style={{ marginBottom: '1rem' }}>
        <strong>Check these against the rules of your own country.</strong> The figures a new shop starts from are usual
        for class I equipment after repair: EN 50678 (test after repair; EN 50699 is for the recurrent test). Other
        countries have other standards and other figures, as do class II equipment and longer leads. Your country’s
        rules and a licensed technician’s judgement come first; nothing here is law.
      </div>
      <div className="fields">
        <TextField
          form={form}
          name="earthBondMaxOhms"
          label={`${capital(words.earth)} bond, at most`}
          unit="Ω"
          numeric
          hint={`From the ${words.earth} pin of the plug to bare chassis, the lead moved during the test.`}
        />
        <TextField
          form={form}
          name="insulationMinOhms"
          label="Insulation, at least"
          unit="MΩ"
          numeric
          hint={`Both ${words.mains} poles together against ${words.earth}, 500 V DC.`}
        />
        <TextField
          form={form}
          name="leakageMaxAmps"
          label="Leakage, at most"
          unit="mA"
          numeric
          hint="Current in the protective conductor."
        />
        <TextField
          form={form}
          name="soakMinMinutes"
          label="Soak, at least"
          unit="min"
          numeric
          hint="Running before sign-off. From memory; your own rule."
        />
      </div>
    </>
  )
}
