'use client'
import { SelectField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { BASES, PIN_BOXES } from './own-type-schema'
import styles from './types.module.css'

const OPTIONS = BASES.map((value) => ({ value, text: value === 'miniature-7' ? 'miniature, 7 pins' : value }))
const NINTH = 9

/** What handbooks write at a pin; anything else may be typed too. */
const ELECTRODES = ['a', 'g1', 'g2', 'g3', 'k', 'k + g3', 'k + beam plates', 'h', 'f', 'nc', 'ic', 'a (unit 1)']

export function PinsSection({ form }: { form: ActionForm }) {
  return (
    <section className="panel stack">
      <h2>Base, pins and heater</h2>
      <div className="fields">
        <SelectField form={form} name="tubeBase" label="Base" options={OPTIONS} empty="Choose" />
        <TextField form={form} name="basing" label="Basing" hint="Such as 7AC; empty when not known." />
        <TextField form={form} name="heaterVolts" label="Heater voltage" unit="V" numeric />
        <TextField form={form} name="heaterAmps" label="Heater current" unit="A" numeric hint="450 mA is 0.45 A." />
      </div>
      <fieldset>
        <legend>Pins, seen from below</legend>
        <p className="soft">
          a, g1, g2, g3, k, h or f; nc for nothing, ic for an inner connection; “a (unit 2)” for the second unit of a
          twin. All empty: not known.
        </p>
        <div className={styles.pins}>
          {PIN_BOXES.map((pin) => (
            <TextField
              key={pin}
              form={form}
              name={`pin${pin}`}
              label={`Pin ${pin}`}
              list="electrodes"
              hint={pin === NINTH ? 'Noval and novar.' : undefined}
            />
          ))}
        </div>
        <datalist id="electrodes">
          {ELECTRODES.map((electrode) => (
            <option key={electrode} value={electrode} />
          ))}
        </datalist>
      </fieldset>
    </section>
  )
}
