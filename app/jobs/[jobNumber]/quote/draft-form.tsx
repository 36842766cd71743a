'use client'
/** The draft: written, worked out as one types, kept, and sent. */
import Link from 'next/link'
import { useMemo, useState } from 'react'
import {
  FormMessage,
  HiddenField,
  type Option,
  SelectField,
  SubmitButton,
  TextField,
} from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { typedValues } from '@/app/_components/form/form-values'
import { type ActionForm, type FormAction, useActionForm } from '@/app/_components/form/use-action-form'
import { formatMoney, minorDigits } from '@/lib/domain/money'
import { labourWord } from '@/lib/domain/quote/labour-word'
import { capital, type WordSet, wordsFor } from '@/lib/domain/words'
import { draftFigures } from './draft-figures'
import { DrawnNote, type PartChoice } from './drawn-note'
import { LineList, TubeList } from './line-list'
import { type FiguresTerms, QuoteFigures } from './quote-figures'
import { quoteSchema } from './quote-schema'

export type DraftProps = {
  /** Bound to its job on the server: bound here, it would be another one at every drawing of the page. */
  readonly action: FormAction
  readonly jobNumber: string
  readonly values: FormValues
  readonly terms: FiguresTerms
  readonly wordSet: WordSet
  readonly operations: readonly Option[]
  readonly parts: readonly PartChoice[]
  readonly hasReadings: boolean
  /** Empty: the quote can only be handed over. */
  readonly mailTo: string
  readonly customerName: string
}

export function DraftForm(props: DraftProps) {
  const { action, jobNumber, values, terms, wordSet, operations, parts, hasReadings } = props
  const words = wordsFor(wordSet)
  const rules = useMemo(() => ({ currency: terms.currency, digits: minorDigits(terms.currency) }), [terms.currency])
  const schema = useMemo(() => quoteSchema(rules), [rules])
  const form = useActionForm(action, freshForm(values), schema)
  const [typed, setTyped] = useState<{ attempt: number; values: FormValues } | null>(null)
  const now = typed?.attempt === form.state.attempt ? typed.values : form.state.values
  const { amounts, totals, unread } = draftFigures(now, rules, terms.taxMilliPercent)
  const amountOf = (row: string) => {
    const amount = amounts[row]
    return amount === null || amount === undefined ? '…' : formatMoney(amount, terms.currency, words.locale)
  }
  const lists = { form, currency: terms.currency, amountOf }
  return (
    <form
      {...form.formProps}
      className="columns"
      onInput={(event) =>
        setTyped({ attempt: form.state.attempt, values: typedValues(new FormData(event.currentTarget)) })
      }
    >
      <div className="stack">
        <FormMessage form={form} />
        {['version', 'base', 'findingsBefore'].map((name) => (
          <HiddenField key={name} form={form} name={name} />
        ))}
        <Findings form={form} hasReadings={hasReadings} />
        <LineList {...lists} list="labour" title={labourWord(words)} units={['h', 'flat', 'set']}>
          <SelectField
            form={form}
            name="operation"
            label="Usual operation"
            options={operations}
            empty="none: write it freely"
          />
          <AddButton list="labour">Add {labourWord(words).toLowerCase()}</AddButton>
        </LineList>
        <LineList
          {...lists}
          list="parts"
          title="Parts"
          units={['pc', 'set', 'm']}
          noteOf={(id) => <DrawnNote part={parts.find((part) => part.id === id)} values={now} />}
        >
          <SelectField
            form={form}
            name="part"
            label="Part of the drawers"
            options={parts.map(({ id, option }) => ({ value: id, text: option }))}
            empty="none: write it freely"
          />
          <AddButton list="parts">Add a part</AddButton>
        </LineList>
        <TubeList {...lists} title={capital(words.tubes)}>
          <Link className="button quiet" href={`/jobs/${jobNumber}/tubes`}>
            Choose {words.tubes} from stock
          </Link>
        </TubeList>
        <LineList {...lists} list="fees" title="Fees and credits" units={['flat', 'set', 'h']}>
          <AddButton list="fees">Add a fee or credit</AddButton>
          <span className="soft small">
            Matching fee, rush surcharge; a bench fee already paid goes in below nothing, such as −40.00.
          </span>
        </LineList>
      </div>
      <div className="stack">
        <section className="panel" aria-label="Sums">
          <h2>What it comes to</h2>
          <QuoteFigures totals={totals} terms={terms} words={words} unread={unread} />
          <SubmitButton form={form} quiet>
            Work out and keep the draft
          </SubmitButton>
        </section>
        <section className="panel stack" aria-label="Terms">
          <TextField form={form} name="validUntil" label="Valid until the end of" type="date" />
          <TextField
            form={form}
            name="depositPercent"
            label="Deposit"
            unit="%"
            numeric
            hint="Of the total; empty or 0 for none."
          />
          <TextField form={form} name="note" label="Note to the customer" lines={3} />
        </section>
        <SendPanel form={form} {...props} />
      </div>
    </form>
  )
}

function AddButton({ list, children }: { list: string; children: React.ReactNode }) {
  return (
    <button type="submit" className="button quiet" formNoValidate name="edit" value={`add:${list}`}>
      {children}
    </button>
  )
}

function Findings({ form, hasReadings }: { form: ActionForm; hasReadings: boolean }) {
  return (
    <fieldset>
      <legend>What the bench found</legend>
      <div className="stack">
        <TextField
          form={form}
          name="findings"
          label="Findings, in sentences"
          lines={5}
          hint="Printed on the quote; each line becomes a paragraph."
        />
        {hasReadings ? (
          <div className="row">
            <button type="submit" className="button quiet" formNoValidate name="edit" value="propose:findings">
              Propose sentences from the readings
            </button>
            <span className="soft small">They join what is written; look at them before they go out.</span>
          </div>
        ) : (
          <p className="soft small">With readings before the work, sentences can be proposed here.</p>
        )}
      </div>
    </fieldset>
  )
}

function SendPanel({ form, mailTo, customerName, wordSet }: DraftProps & { form: ActionForm }) {
  return (
    <section className="panel stack" aria-label="Send">
      <h2>To the customer</h2>
      {mailTo === '' ? (
        <p>
          {customerName} has no e-mail address on file. Print the quote and hand it over; the answer is then taken in
          the shop.
        </p>
      ) : (
        <p>By mail to {mailTo}, with the quote attached.</p>
      )}
      <p className="soft small">
        What stands here is kept first. From then on the quote is not edited, only revised, and its{' '}
        {wordsFor(wordSet).tubes} are held to the end of its last day.
      </p>
      {mailTo !== '' && (
        <SubmitButton form={form} name="edit" value="send:mail">
          Send by mail
        </SubmitButton>
      )}
      <SubmitButton form={form} name="edit" value="send:hand-over" quiet={mailTo !== ''}>
        Print and hand over
      </SubmitButton>
    </section>
  )
}
