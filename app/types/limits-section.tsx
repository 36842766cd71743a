'use client'
import { SelectField, TextField } from '@/app/_components/form/form-fields'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { ratingSystemText } from '@/lib/domain/bias/bias-text'
import { limitName } from '@/lib/domain/tube/figure-names'
import { OWN_LIMITS } from '@/lib/domain/tube/own/own-type-shown'
import { RATING_SYSTEMS, ratingSystemMeaning } from '@/lib/domain/tube/rating-system'
import { type WordSet, wordsFor } from '@/lib/domain/words'

export function LimitsSection({ form, words: set }: { form: ActionForm; words: WordSet }) {
  const words = wordsFor(set)
  const systems = RATING_SYSTEMS.map((value) => ({ value, text: ratingSystemText(value) }))
  return (
    <section className="panel stack">
      <h2>Limits</h2>
      <p className="soft">
        What its sheet prints, of one {words.tube} or one unit of a twin. Empty: not printed. A limit left out cannot be
        checked.
      </p>
      <div className="fields">
        <SelectField form={form} name="system" label="Rating system" options={systems} empty="Choose" />
        {OWN_LIMITS.map(({ key, unit }) => (
          <TextField key={key} form={form} name={key} label={limitName(key, words).label} unit={unit} numeric />
        ))}
      </div>
      <details>
        <summary>What the rating systems mean</summary>
        <dl className="facts">
          {RATING_SYSTEMS.map((system) => (
            <div key={system} style={{ display: 'contents' }}>
              <dt>{ratingSystemText(system)}</dt>
              <dd>{ratingSystemMeaning(system, words)}</dd>
            </div>
          ))}
        </dl>
      </details>
    </section>
  )
}
