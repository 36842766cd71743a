'use client'
import {
  CheckField,
  FormMessage,
  HiddenField,
  type Option,
  SelectField,
  SubmitButton,
  TextField,
} from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { type ActionForm, useActionForm } from '@/app/_components/form/use-action-form'
import { SHORTEST_PASS_PHRASE } from '@/lib/domain/person/password'
import { ROLES } from '@/lib/domain/person/role'
import { submitGivenPassPhrase, submitNewPerson, submitPerson } from './actions'
import { givenPassPhraseSchema, newPersonSchema, newPersonValues, personSchema } from './person-schema'

const ROLE_OPTIONS: readonly Option[] = ROLES.map((role) => ({ value: role, text: role }))

export function NewPersonForm() {
  const form = useActionForm(submitNewPerson, freshForm(newPersonValues), newPersonSchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <div className="fields">
        <NameAndRole form={form} />
        <TextField
          form={form}
          name="signInName"
          label="Sign-in name"
          hint="Short. Capitals make no difference. It cannot be changed later."
        />
        <PassPhrasePair form={form} />
      </div>
      <KeepsShopField form={form} />
      <div className="row">
        <SubmitButton form={form}>Add to the shop</SubmitButton>
      </div>
    </form>
  )
}

export function PersonForm({ values }: { values: FormValues }) {
  const form = useActionForm(submitPerson, freshForm(values), personSchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="id" />
      <div className="fields">
        <NameAndRole form={form} />
      </div>
      <KeepsShopField form={form} />
      <CheckField
        form={form}
        name="active"
        label="May sign in"
        hint="Take the tick away when somebody leaves: every screen of theirs is signed out. What they signed keeps their name."
      />
      <div className="row">
        <SubmitButton form={form}>Save</SubmitButton>
      </div>
    </form>
  )
}

export function GivenPassPhraseForm({ personId }: { personId: string }) {
  const form = useActionForm(submitGivenPassPhrase, freshForm({ id: personId }), givenPassPhraseSchema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="id" />
      <div className="fields">
        <PassPhrasePair form={form} />
      </div>
      <div className="row">
        <SubmitButton form={form} quiet>
          Give a new pass phrase
        </SubmitButton>
      </div>
    </form>
  )
}

const NameAndRole = ({ form }: { form: ActionForm }) => (
  <>
    <TextField form={form} name="name" label="Name" hint="As it stands on what they sign." />
    <SelectField
      form={form}
      name="role"
      label="Work"
      options={ROLE_OPTIONS}
      hint="Technicians take readings and sign safety lines. Both do the counter."
    />
  </>
)

const KeepsShopField = ({ form }: { form: ActionForm }) => (
  <CheckField
    form={form}
    name="keepsShop"
    label="Keeps the shop"
    hint="May change settings, operations and people. Somebody always must."
  />
)

const PassPhrasePair = ({ form }: { form: ActionForm }) => (
  <>
    <TextField
      form={form}
      name="passPhrase"
      label="Pass phrase"
      type="password"
      autoComplete="new-password"
      hint={`At least ${SHORTEST_PASS_PHRASE} characters. They can change it themselves in Settings.`}
    />
    <TextField
      form={form}
      name="passPhraseAgain"
      label="Pass phrase again"
      type="password"
      autoComplete="new-password"
    />
  </>
)
