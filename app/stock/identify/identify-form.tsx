'use client'
import { useRouter } from 'next/navigation'
import { useEffect, useRef, useTransition } from 'react'
import { inWords } from '@/lib/domain/identify/identify-text'
import { OBSERVATION_KEYS, OBSERVATIONS } from '@/lib/domain/identify/knowledge/observations'
import type { NextLook } from '@/lib/domain/identify/next/look'
import type { Seen } from '@/lib/domain/identify/seen'
import type { Words } from '@/lib/domain/words'
import { ChoiceField } from './choice-field'
import styles from './identify.module.css'
import { PrintFields } from './print-fields'
import { FORM_ID, PLACE, placeOf } from './seen-query'

/** Somebody types a number: one look when the hand rests. */
const REST_MILLISECONDS = 350

function queryOf(form: HTMLFormElement): string {
  const told = [...new FormData(form)].flatMap(([name, value]) =>
    typeof value === 'string' && value.trim() !== '' ? [[name, value.trim()]] : [],
  )
  return told.length > 0 ? `${PLACE}?${new URLSearchParams(told)}` : PLACE
}

/** On a wide screen, where every group is open. */
function Jumps({ words }: { words: Words }) {
  return (
    <nav aria-label="What to look at" className={`small ${styles.jumps}`}>
      <a href={placeOf('print')}>Print and codes</a>
      {OBSERVATION_KEYS.map((key) => (
        <a key={key} href={placeOf(key)}>
          {inWords(OBSERVATIONS[key].label, words)}
        </a>
      ))}
    </nav>
  )
}

type Form = { readonly seen: Seen; readonly next: NextLook['key'] | null; readonly words: Words }

/** The boxes keep their own state; the answer comes from the server with each look, with script or without. */
export function IdentifyForm({ seen, next, words }: Form) {
  const router = useRouter()
  const [pending, startLook] = useTransition()
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined)
  useEffect(() => () => clearTimeout(waiting.current), [])
  const look = (form: HTMLFormElement) => {
    clearTimeout(waiting.current)
    waiting.current = setTimeout(
      () => startLook(() => router.replace(queryOf(form), { scroll: false })),
      REST_MILLISECONDS,
    )
  }
  return (
    <form
      action={PLACE}
      id={FORM_ID}
      autoComplete="off"
      className={`panel stack no-print ${styles.form}`}
      data-looking={pending || undefined}
      onChange={(event) => look(event.currentTarget)}
    >
      <div className="panel-head">
        <h2>What do you see?</h2>
        <span className="soft small">
          {inWords(`${OBSERVATION_KEYS.length} things to look at; none of them must be told.`, words)}
        </span>
      </div>
      <Jumps words={words} />
      <PrintFields seen={seen} />
      <div className={styles.groups}>
        {OBSERVATION_KEYS.map((key) => (
          <ChoiceField key={key} observation={key} isNext={key === next} {...{ seen, words }} />
        ))}
      </div>
      <div className="row">
        <button type="submit" className="button">
          What can it be?
        </button>
      </div>
      <p className="soft small">
        {OBSERVATIONS.heaterPins.label}: only out of the amplifier, which is discharged first.
      </p>
    </form>
  )
}
