'use client'
import { SelectField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { MICROPHONY_SCALE } from '@/lib/domain/stock/microphony'
import { fieldLabel } from '@/lib/domain/stock/tube-fault'
import { capital, wordsFor } from '@/lib/domain/words'
import styles from './stock.module.css'
import type { StockKit } from './tube-schema'

type Props = { readonly form: ActionForm; readonly kit: StockKit }

/** Which electrodes a test of this type can have; unknown types may have all. */
export type Electrodes = { readonly screen: boolean; readonly grid: boolean; readonly second: boolean }

export const ALL_ELECTRODES: Electrodes = { screen: true, grid: true, second: true }

const SHORTS_OPTIONS = [
  { value: 'none', text: 'None found' },
  { value: 'found', text: 'Short found: stop here' },
]

export function SettingFields({
  form,
  kit,
  electrodes = ALL_ELECTRODES,
}: Props & { readonly electrodes?: Electrodes }) {
  const words = wordsFor(kit.words)
  return (
    <>
      <div className="fields">
        <TextField form={form} name="day" label={fieldLabel('day', words)} type="date" />
        <TextField
          form={form}
          name="instrumentName"
          label="Instrument"
          list="tube-testers"
          hint="Others compare only through shop references."
        />
      </div>
      <fieldset>
        <legend>Test point, against cathode</legend>
        <div className="fields">
          <TextField form={form} name="plateVolts" label={fieldLabel('plateVolts', words)} unit="V" numeric />
          {electrodes.screen && (
            <TextField form={form} name="screenVolts" label="Screen volts" unit="V" numeric hint="Empty for triodes." />
          )}
          {electrodes.grid && (
            <TextField
              form={form}
              name="gridVolts"
              label="Grid volts"
              unit="V"
              placeholder="−"
              hint="With its minus: -14. Empty for rectifiers."
            />
          )}
        </div>
      </fieldset>
    </>
  )
}

export function HeardFields({ form }: { readonly form: ActionForm }) {
  return (
    <>
      <TextField form={form} name="noise" label="Noise" hint="Hum, hiss." />
      <TextField
        form={form}
        name="microphony"
        label="Microphony"
        list="microphony-scale"
        hint={`Tapped while it works: ${MICROPHONY_SCALE.join(', ')}, or your own words.`}
      />
      <datalist id="microphony-scale">
        {MICROPHONY_SCALE.map((grade) => (
          <option key={grade} value={grade} />
        ))}
      </datalist>
    </>
  )
}

export function NoteFields({ form }: { readonly form: ActionForm }) {
  return (
    <div className="fields">
      <TextField form={form} name="leakage" label="Heater to cathode" hint="Leakage, if any was seen." />
      <TextField form={form} name="gas" label="Gas" hint="If any was seen." />
      <HeardFields form={form} />
      <TextField form={form} name="testNote" label="Note on the test" />
    </div>
  )
}

/** Shorts first: when one is found, the rest is drawn pale and left empty. */
export function TestFields({ form, kit, electrodes = ALL_ELECTRODES }: Props & { readonly electrodes?: Electrodes }) {
  const words = wordsFor(kit.words)
  const plate = capital(words.plate)
  return (
    <div className={`stack ${styles.test}`}>
      <div className={`fields ${styles.shorts}`}>
        <SelectField
          form={form}
          name="shorts"
          label="Shorts"
          options={SHORTS_OPTIONS}
          hint="Looked for first. A short stops the test: no current is asked for."
        />
      </div>
      <SettingFields form={form} kit={kit} electrodes={electrodes} />
      <fieldset className={styles.readings}>
        <legend>Readings</legend>
        <div className="fields">
          <TextField form={form} name="plateMilliamps" label={`${plate} current`} unit="mA" numeric />
          {electrodes.grid && (
            <TextField
              form={form}
              name="gm"
              label="Transconductance"
              unit="mA/V"
              numeric
              hint="5500 µmho is 5.5 mA/V."
            />
          )}
          {electrodes.screen && (
            <TextField form={form} name="screenMilliamps" label="Screen current" unit="mA" numeric />
          )}
          {electrodes.second && (
            <TextField
              form={form}
              name="secondPlateMilliamps"
              label={`${plate} current, section 2`}
              unit="mA"
              numeric
              hint="Twins only."
            />
          )}
          {electrodes.second && electrodes.grid && (
            <TextField form={form} name="secondGm" label="Transconductance, section 2" unit="mA/V" numeric />
          )}
        </div>
      </fieldset>
      <NoteFields form={form} />
    </div>
  )
}
