'use client'
/**
 * One tube on the tester. Enter goes from box to box and from the last one on
 * to the next tube, so a number pad and a scanner that ends with Enter are
 * enough; without JavaScript Enter writes the line down.
 */
import { type KeyboardEvent, useEffect, useMemo } from 'react'
import { CheckField, FormMessage, HiddenField, SubmitButton, TextField } from '@/app/_components/form/form-fields'
import { type FormValues, freshForm } from '@/app/_components/form/form-state'
import { type ActionForm, useActionForm } from '@/app/_components/form/use-action-form'
import { capital, type WordSet, wordsFor } from '@/lib/domain/words'
import { type Electrodes, HeardFields } from '../../test-fields'
import { submitLine } from './actions'
import { lineSchema, saysShort } from './line-schema'
import styles from './sheet.module.css'

type Props = {
  readonly words: WordSet
  readonly electrodes: Electrodes
  readonly values: FormValues
  /** The mark of the line being put right; null: a new line. */
  readonly correcting: string | null
}

export function LineForm({ words, electrodes, values, correcting }: Props) {
  const schema = useMemo(() => lineSchema(words), [words])
  const form = useActionForm(submitLine, freshForm(values), schema)
  useFocusOnMark(form)
  const { tube } = wordsFor(words)
  return (
    <form {...form.formProps} className={`stack ${styles.line}`} onKeyDown={onEnter}>
      <FormMessage form={form} />
      <HiddenField form={form} name="sheetId" />
      <HiddenField form={form} name="corrects" />
      <HiddenField form={form} name="offered" />
      <Readings form={form} words={words} electrodes={electrodes} />
      <details>
        <summary>Leakage, gas, noise, microphony, screen current, note</summary>
        <Further form={form} electrodes={electrodes} />
      </details>
      {correcting === null && (
        <CheckField
          form={form}
          name="takeIn"
          label={`A mark that is not in the stock is a new ${tube}: take it in without asking`}
        />
      )}
      <div className="row">
        <SubmitButton form={form}>
          {correcting === null ? `Write down, next ${tube}` : 'Put the line right'}
        </SubmitButton>
      </div>
    </form>
  )
}

function Readings({ form, words, electrodes }: Pick<Props, 'words' | 'electrodes'> & { form: ActionForm }) {
  const plate = capital(wordsFor(words).plate)
  const box = (name: string, label: string, unit: string, hint?: string) => (
    <TextField form={form} name={name} label={label} unit={unit} numeric hint={hint} />
  )
  return (
    <div className={`fields ${styles.boxes}`}>
      <TextField form={form} name="mark" label="Mark" autoFocus hint="Type or scan it." />
      <CheckField form={form} name="shorts" label="Short found: stop here" />
      {box('plateMilliamps', `${plate} current`, 'mA', 'Or s for a short.')}
      {electrodes.grid && box('gm', 'Transconductance', 'mA/V')}
      {electrodes.second && box('secondPlateMilliamps', `${plate} current, section 2`, 'mA')}
      {electrodes.second && electrodes.grid && box('secondGm', 'Transconductance, section 2', 'mA/V')}
    </div>
  )
}

function Further({ form, electrodes }: { form: ActionForm; electrodes: Electrodes }) {
  return (
    <div className="fields">
      {electrodes.screen && <TextField form={form} name="screenMilliamps" label="Screen current" unit="mA" numeric />}
      <TextField form={form} name="leakage" label="Heater to cathode" hint="Leakage, if any was seen." />
      <TextField form={form} name="gas" label="Gas" hint="If any was seen." />
      <HeardFields form={form} />
      <TextField form={form} name="testNote" label="Note on the test" />
    </div>
  )
}

const CHAIN = ['mark', 'plateMilliamps', 'gm', 'secondPlateMilliamps', 'secondGm']

function onEnter(event: KeyboardEvent<HTMLFormElement>): void {
  const box = event.target
  if (event.key !== 'Enter' || !(box instanceof HTMLInputElement) || event.nativeEvent.isComposing) return
  const form = event.currentTarget
  const field = (name: string) => form.elements.namedItem(name) as HTMLInputElement | null
  const at = CHAIN.indexOf(box.name)
  if (at < 0) return
  event.preventDefault()
  const isStopped = field('shorts')?.checked || saysShort(field('plateMilliamps')?.value ?? '')
  // A mark asked about, sent once more as it is, is meant; so is a short.
  const isMeant = box.name === 'mark' && box.value !== '' && field('offered')?.value === box.value
  const next = CHAIN.slice(at + 1)
    .map(field)
    .find((each) => each !== null)
  if (next && !isStopped && !isMeant) {
    take(next)
    return
  }
  form.requestSubmit()
  // The next mark can be scanned while this line is under way; a box touched since is left alone by the answer.
  const mark = field('mark')
  if (mark) take(mark)
}

function take(box: HTMLInputElement): void {
  box.focus()
  box.select()
}

/**
 * After a line is written down the next key goes into the mark. A refused line
 * stands in its boxes whole again: a mark scanned meanwhile must not meet the
 * readings of the one before.
 */
function useFocusOnMark({ state, formProps }: ActionForm): void {
  const { ref } = formProps
  useEffect(() => {
    if (state.attempt === 0) return
    const boxOf = (name: string) => ref.current?.elements.namedItem(name)
    if (state.status === 'refused') {
      for (const name of CHAIN) {
        const box = boxOf(name)
        if (box instanceof HTMLInputElement) box.value = state.values[name] ?? ''
      }
      return
    }
    const mark = boxOf('mark')
    if (mark instanceof HTMLInputElement && document.activeElement !== mark) mark.focus()
  }, [state, ref])
}
