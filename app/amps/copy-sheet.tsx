'use client'
/** Offered while a sheet is empty: the sheets of the same model that are already here. */
import { FormMessage, HiddenField, SubmitButton } from '@/app/_components/form/form-fields'
import { freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import type { ListedAmp } from '@/lib/store/amp'
import { submitCopy } from './actions'
import { copySchema } from './copy-schema'

type Onto = { readonly id: string; readonly version: number }

export function CopySheet({ onto, from }: { onto: Onto; from: readonly ListedAmp[] }) {
  if (from.length === 0) return null
  return (
    <section className="stack" aria-labelledby="same-model">
      <div>
        <h3 id="same-model">Same model on file</h3>
        <p className="soft">Types, places and values are copied, marks are not. Check the values on this one.</p>
      </div>
      {from.map((amp) => (
        <CopyButton key={amp.id} onto={onto} from={amp} />
      ))}
    </section>
  )
}

function CopyButton({ onto, from }: { onto: Onto; from: ListedAmp }) {
  const start = { ampId: onto.id, version: String(onto.version), fromAmpId: from.id }
  const form = useActionForm(submitCopy, freshForm(start), copySchema)
  const serial = from.serial === '' ? 'no serial' : `serial ${from.serial}`
  return (
    <form {...form.formProps} className="row">
      <FormMessage form={form} />
      {['ampId', 'version', 'fromAmpId'].map((name) => (
        <HiddenField key={name} form={form} name={name} />
      ))}
      <SubmitButton form={form} quiet>
        Same model, {serial}: copy its sheet
      </SubmitButton>
      <span className="soft small">
        {from.socketCount} sockets · {from.ownerName}
      </span>
    </form>
  )
}
