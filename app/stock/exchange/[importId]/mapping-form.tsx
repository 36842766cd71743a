'use client'
import { useMemo } from 'react'
import { FormMessage, HiddenField, SelectField, SubmitButton } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { submitOrder } from './actions'
import { mappingSchema } from './mapping-schema'

const MODE_OPTIONS = [
  { value: 'all', text: 'All or nothing: one bad row keeps all out' },
  { value: 'good', text: 'Good rows only: bad ones go into a file to correct' },
]

type Props = {
  readonly values: FormValues
  readonly headings: readonly string[]
  /** First rows, as they stand. */
  readonly rows: readonly (readonly string[])[]
  readonly options: readonly { readonly value: string; readonly text: string }[]
}

export function MappingForm({ values, headings, rows, options }: Props) {
  const schema = useMemo(() => mappingSchema(options.map(({ value }) => value)), [options])
  const form = useActionForm(submitOrder, freshForm(values), schema)
  return (
    <form {...form.formProps} className="stack">
      <FormMessage form={form} />
      <HiddenField form={form} name="importId" />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section className="table-scroll" tabIndex={0} aria-label="The first rows and what their columns mean">
        <table>
          <thead>
            <tr>
              {headings.map((heading, place) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a column is its place
                <th key={place} style={{ minWidth: '9.5rem' }}>
                  {heading || `column ${place + 1}`}
                  <SelectField
                    form={form}
                    name={`columns.${place}.means`}
                    label={`What column ${heading || place + 1} means`}
                    options={options}
                    empty="passed over"
                    bare
                  />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, line) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row of a file is its place
              <tr key={line}>
                {headings.map((_, place) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a column is its place
                  <td key={place}>{row[place]}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <SelectField form={form} name="mode" label="What to do with bad rows" options={MODE_OPTIONS} />
      <div className="row">
        <SubmitButton form={form}>Take them in</SubmitButton>
      </div>
    </form>
  )
}
