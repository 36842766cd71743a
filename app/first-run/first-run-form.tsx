'use client'
import { FormMessage, type Option, SelectField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { type ActionForm, useActionForm } from '@/app/_components/form/use-action-form'
import type { PickLists } from '@/app/settings/pick-lists'
import { MoneyFields, PlaceFields } from '@/app/settings/shop-basics'
import { SHORTEST_PASS_PHRASE } from '@/lib/domain/person/password'
import { ROLES } from '@/lib/domain/person/role'
import { submitFirstRun } from './actions'
import { firstRunSchema } from './first-run-schema'

const ROLE_OPTIONS: readonly Option[] = ROLES.map((role) => ({ value: role, text: role }))

export function FirstRunForm({ values, lists }: { values: FormValues; lists: PickLists }) {
  const form = useActionForm(submitFirstRun, freshForm(values), firstRunSchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <fieldset>
        <legend>You</legend>
        <p className="soft">
          The first person keeps the shop: settings, and the list of people. Others are added later, in Settings; nobody
          can sign themselves up.
        </p>
        <PersonFields form={form} />
      </fieldset>
      <fieldset>
        <legend>The shop</legend>
        <TextField form={form} name="shop.name" label="Name of the shop" hint="At the head of every page and paper." />
      </fieldset>
      <fieldset>
        <legend>Money</legend>
        <MoneyFields form={form} lists={lists} prefix="shop." empty="Choose…" />
      </fieldset>
      <fieldset>
        <legend>Place and paper</legend>
        <PlaceFields form={form} lists={lists} prefix="shop." empty="Choose…" />
      </fieldset>
      <div className="row">
        <SubmitButton form={form}>Open the shop</SubmitButton>
      </div>
    </form>
  )
}

function PersonFields({ form }: { form: ActionForm }) {
  return (
    <div className="fields">
      <TextField
        form={form}
        name="person.name"
        label="Your name"
        autoFocus
        autoComplete="name"
        hint="As it stands on what you sign."
      />
      <SelectField
        form={form}
        name="person.role"
        label="Your work"
        options={ROLE_OPTIONS}
        hint="Technicians take readings and sign safety lines. Both do the counter."
      />
      <TextField
        form={form}
        name="person.signInName"
        label="Sign-in name"
        autoComplete="username"
        hint="Short. Capitals make no difference."
      />
      <TextField
        form={form}
        name="person.passPhrase"
        label="Pass phrase"
        type="password"
        autoComplete="new-password"
        hint={`At least ${SHORTEST_PASS_PHRASE} characters; a few words are good. Nobody can look it up again.`}
      />
      <TextField
        form={form}
        name="person.passPhraseAgain"
        label="Pass phrase again"
        type="password"
        autoComplete="new-password"
      />
    </div>
  )
}
