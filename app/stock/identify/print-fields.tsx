/** What is written on the bottle. */
import type { Seen } from '@/lib/domain/identify/seen'
import styles from './identify.module.css'
import { NO_DATE, NO_PRINT, TEXTS } from './seen-query'

type Box = { readonly name: keyof typeof TEXTS; readonly label: string; readonly hint: string }

const BOXES: readonly Box[] = [
  { name: 'print', label: 'Type as printed or etched', hint: '6V6GT, EL34/6CA7, JAN-6L6WGB: with every letter.' },
  { name: 'codes', label: 'Service numbers and source code', hint: 'VT-107A, CV511, 188; with commas between.' },
  { name: 'date', label: 'Date code', hint: '188-5-32, 5-32, or etched: I61 B0D3.' },
  { name: 'other', label: 'Other marks', hint: 'Maker, country, colour of the print. Kept as text.' },
]

function Absent({ name, label, checked }: { name: string; label: string; checked: boolean }) {
  return (
    <div className="field-check">
      <label>
        <input type="checkbox" name={name} value="1" defaultChecked={checked} />
        {label}
      </label>
    </div>
  )
}

export function PrintFields({ seen }: { seen: Seen }) {
  return (
    <fieldset className={styles.print} id="print-fields">
      <legend>On the glass and the base</legend>
      <div className="fields">
        {BOXES.map(({ name, label, hint }) => (
          <div className="field" key={name}>
            <label htmlFor={name}>{label}</label>
            <input
              id={name}
              name={name}
              defaultValue={seen[name]}
              maxLength={TEXTS[name]}
              aria-describedby={`${name}-hint`}
              autoCapitalize="characters"
              spellCheck={false}
            />
            <p className="field-hint" id={`${name}-hint`}>
              {hint}
            </p>
          </div>
        ))}
      </div>
      <div className="row">
        <Absent name={NO_PRINT} label="No number can be read" checked={seen.skipped.includes('print')} />
        <Absent name={NO_DATE} label="No date code" checked={seen.skipped.includes('date')} />
      </div>
    </fieldset>
  )
}
