import { LAYOUT_NAMES, layoutText } from '@/lib/domain/amp/usual-layouts'
import type { Words } from '@/lib/domain/words'
import styles from './sheet.module.css'

/** For an empty sheet: usual line-ups, to be corrected by what is really there. */
export function LayoutChoices({ words }: { words: Words }) {
  return (
    <section aria-labelledby="layouts" className="stack">
      <div>
        <h2 id="layouts">Start with a usual layout</h2>
        <p className="soft">
          It fills in positions, roles and sides. Types and resistor values stay empty: read and measure them on this
          amplifier.
        </p>
      </div>
      <ul className={styles.layouts}>
        {LAYOUT_NAMES.map((name) => (
          <li key={name}>
            <strong>{layoutText(name)}</strong>
            <span className="row">
              <Choice value={`layout:${name}:with-rectifier`}>with {words.tube} rectifier</Choice>
              <Choice value={`layout:${name}:without-rectifier`}>without</Choice>
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}

const Choice = ({ value, children }: { value: string; children: React.ReactNode }) => (
  <button type="submit" className="button quiet" formNoValidate name="edit" value={value}>
    {children}
  </button>
)
