/** The limits of the choice: a plain form of the address, the same with and without JavaScript. */
import Link from 'next/link'
import type { Money } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { capital, wordsFor } from '@/lib/domain/words'
import { limitsSchema } from './limits-schema'

export type Limits = {
  readonly age: number | null
  readonly cap: Money | null
  readonly over: boolean
  readonly one: boolean
  /** Where the figures that are compared come from, where there is a choice. */
  readonly at: 'amp' | 'test-point'
  /** Instrument that readings are carried over to; empty: the one that most were read on. */
  readonly on: string
  readonly typed: { readonly age: string; readonly cap: string }
  readonly faults: readonly { readonly name: string; readonly sentence: string }[]
}

type Query = Record<string, string | string[] | undefined>

const LONGEST_NAME = 120

const one = (value: string | string[] | undefined) => (typeof value === 'string' ? value : undefined)

/** Without a query the shop's own test age stands. */
export function readLimits(query: Query, shop: Shop): Limits {
  const typed = {
    age: one(query.age) ?? (query.cap === undefined ? String(shop.testAgeDays) : ''),
    cap: one(query.cap) ?? '',
  }
  const parsed = limitsSchema(shop.currency).safeParse({ ...typed, over: one(query.over), one: one(query.one) })
  const flags = { over: one(query.over) === 'on', one: one(query.one) === 'on' }
  const at = one(query.at) === 'test-point' ? 'test-point' : 'amp'
  const on = (one(query.on) ?? '').trim().slice(0, LONGEST_NAME)
  if (parsed.success) return { ...parsed.data, at, on, typed, faults: [] }
  const faults = parsed.error.issues.map(({ path, message }) => ({ name: path.join('.'), sentence: message }))
  return { age: null, cap: null, ...flags, at, on, typed, faults }
}

type FormProps = {
  readonly action: string
  readonly limits: Limits
  readonly shop: Shop
  readonly weightsHref: string
  /** That a correction is known of. */
  readonly instruments: readonly string[]
}

export function LimitsForm({ action, limits, shop, weightsHref, instruments }: FormProps) {
  const words = wordsFor(shop.words)
  const faultOf = (name: string) => limits.faults.find((fault) => fault.name === name)?.sentence
  return (
    <form action={action} className="panel stack">
      <h3>Limits</h3>
      <div className="fields">
        <LimitBox
          name="age"
          label="Test not older than"
          unit="days"
          value={limits.typed.age}
          fault={faultOf('age')}
          hint="Empty: any age."
        />
        <LimitBox
          name="cap"
          label="Price of the set at most"
          unit={shop.currency}
          value={limits.typed.cap}
          fault={faultOf('cap')}
          hint="Empty: no limit."
        />
        <LimitTick
          name="over"
          on={limits.over}
          label={`Take ${words.tubes} beyond their printed voltages`}
          hint={`Many guitar amplifiers exceed them and the better old ${words.tubes} stand it: common practice, at your judgement.`}
        />
        <LimitTick
          name="one"
          on={limits.one}
          label="One designation in a set"
          hint={`Leaves out sets that mix variants of the family.`}
        />
        <LimitTick
          name="at"
          value="test-point"
          on={limits.at === 'test-point'}
          label="Compare at the test point"
          hint={`Else by the idle predicted in this amplifier, where its circuit is known.`}
        />
        {instruments.length > 0 && <InstrumentChoice instruments={instruments} chosen={limits.on} />}
      </div>
      <p className="row">
        <button type="submit" className="button quiet">
          Look again
        </button>
        <span className="soft">
          {capital(words.tubes)} at different test points are compared only by what is predicted; on different
          instruments also where <Link href="/settings/instruments/corrections">reference {words.tubes}</Link> were read
          on both. The yardsticks are 5 mA and 10 %: common practice.{' '}
          <Link href={weightsHref}>How sets are weighed</Link>
        </span>
      </p>
    </form>
  )
}

function InstrumentChoice({ instruments, chosen }: { instruments: readonly string[]; chosen: string }) {
  return (
    <div className="field">
      <label htmlFor="on">Compare readings as on</label>
      <select id="on" name="on" defaultValue={instruments.includes(chosen) ? chosen : ''} aria-describedby="on-hint">
        <option value="">the one most used</option>
        {instruments.map((name) => (
          <option key={name}>{name}</option>
        ))}
      </select>
      <p className="field-hint" id="on-hint">
        Those read on another are carried over, with the doubt of the correction.
      </p>
    </div>
  )
}

export function LimitBox({
  name,
  label,
  unit,
  value,
  fault,
  hint,
}: {
  name: string
  label: string
  unit: string
  value: string
  fault?: string
  hint: string
}) {
  return (
    <div className="field" data-fault={fault ? '' : undefined}>
      <label htmlFor={name}>{label}</label>
      <div className="field-box">
        <input
          id={name}
          name={name}
          inputMode="decimal"
          defaultValue={value}
          aria-invalid={fault ? true : undefined}
          aria-describedby={`${name}-hint`}
        />
        {unit !== '' && <span className="field-unit">{unit}</span>}
      </div>
      <p className={fault ? 'field-fault' : 'field-hint'} id={`${name}-hint`}>
        {fault ?? hint}
      </p>
    </div>
  )
}

type TickProps = {
  readonly name: string
  readonly on: boolean
  readonly label: string
  readonly hint: string
  readonly value?: string
}

export function LimitTick({ name, on, label, hint, value }: TickProps) {
  return (
    <div className="field field-check">
      <label>
        <input type="checkbox" name={name} value={value} defaultChecked={on} />
        <span>{label}</span>
      </label>
      <p className="field-hint">{hint}</p>
    </div>
  )
}
