/** A plain form of the address, the same with and without JavaScript. */
import type { Words } from '@/lib/domain/words'
import type { SetsLimits } from './sets-limits'

export function SetsLimitsForm({ limits, words }: { readonly limits: SetsLimits; readonly words: Words }) {
  return (
    <form action="/stock/sets" className="panel no-print">
      <h2>What counts as a set</h2>
      <div className="fields">
        <Box name="milliamps" label={`Difference in ${words.plate} current`} unit="mA" limits={limits} />
        <Box name="percent" label="Difference in transconductance" unit="%" limits={limits} />
        <Box name="age" label="Test not older than" unit="days" limits={limits} hint="Empty: any age." />
        <Box
          name="level"
          label="Order again below"
          unit="pairs"
          limits={limits}
          hint="A type with fewer pairs is pointed out. Empty: none is."
        />
      </div>
      <p className="row">
        <button type="submit" className="button quiet">
          Count again
        </button>
        <span className="soft">5 mA and 10 %: common practice, no source.</span>
      </p>
    </form>
  )
}

type BoxProps = {
  readonly name: keyof SetsLimits['typed']
  readonly label: string
  readonly unit: string
  readonly limits: SetsLimits
  readonly hint?: string
}

function Box({ name, label, unit, limits, hint }: BoxProps) {
  const fault = limits.faults.get(name)
  const note = fault ?? hint
  return (
    <div className="field" data-fault={fault ? '' : undefined}>
      <label htmlFor={name}>{label}</label>
      <div className="field-box">
        <input
          id={name}
          name={name}
          inputMode="decimal"
          defaultValue={limits.typed[name]}
          aria-invalid={fault ? true : undefined}
          aria-describedby={note ? `${name}-note` : undefined}
        />
        <span className="field-unit">{unit}</span>
      </div>
      {note && (
        <p className={fault ? 'field-fault' : 'field-hint'} id={`${name}-note`}>
          {note}
        </p>
      )}
    </div>
  )
}
