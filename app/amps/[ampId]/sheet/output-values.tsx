'use client'
/**
 * The second line of an output socket. The style sheet shows it for that role
 * alone, with and without a script; on other roles its values are not kept.
 */
import { SelectField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { BIAS_KINDS, biasKindWord, USUAL_MATCH_GROUP } from '@/lib/domain/amp/socket'
import { capital, type Words } from '@/lib/domain/words'
import styles from './sheet.module.css'

const BIAS_OPTIONS = BIAS_KINDS.map((kind) => ({ value: kind, text: biasKindWord(kind) }))
const SIDE_OPTIONS = [
  { value: 'A', text: 'side A' },
  { value: 'B', text: 'side B' },
]

export function OutputValues({ form, at, words }: { form: ActionForm; at: string; words: Words }) {
  const ohms = { form, unit: 'Ω', numeric: true } as const
  return (
    <div className={styles.output}>
      <div className={styles.bias}>
        <SelectField
          form={form}
          name={`${at}.biasKind`}
          label="Bias kind"
          options={BIAS_OPTIONS}
          empty="not known yet"
        />
      </div>
      <div className={styles.side}>
        <SelectField form={form} name={`${at}.side`} label="Side" options={SIDE_OPTIONS} empty="not known" />
      </div>
      <TextField form={form} name={`${at}.matchGroup`} label="Match group" placeholder={USUAL_MATCH_GROUP} />
      <TextField {...ohms} name={`${at}.senseOhms`} label="Sense resistor" hint="In this cathode alone." />
      <TextField {...ohms} name={`${at}.cathodeOhms`} label="Cathode resistor" />
      <TextField form={form} name={`${at}.cathodeSharedBy`} label={`${capital(words.tubes)} sharing it`} numeric />
      <TextField {...ohms} name={`${at}.screenOhms`} label="Screen resistor" />
      <TextField {...ohms} name={`${at}.halfPrimaryOhms`} label="Half primary" hint="Cold. Single-ended: all of it." />
      <TextField form={form} name={`${at}.halfSharedBy`} label={`${capital(words.tubes)} on it`} numeric />
    </div>
  )
}
