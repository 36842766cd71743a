'use client'
import { useRouter } from 'next/navigation'
import { useEffect, useRef, useTransition } from 'react'
import { inWords } from '@/lib/domain/identify/identify-text'
import { OBSERVATION_KEYS, OBSERVATIONS } from '@/lib/domain/identify/knowledge/observations'
import type { Seen } from '@/lib/domain/identify/seen'
import type { Words } from '@/lib/domain/words'
import { ChoiceField } from './choice-field'
import styles from './identify.module.css'
import { PrintFields } from './print-fields'
import { PLACE } from './seen-query'

/** Somebody types a number: one look when the hand rests. */
const REST_MILLISECONDS = 350

function queryOf(form: HTMLFormElement): string {
  const told = [...new FormData(form)].flatMap(([name, value]) =>
    typeof value === 'string' && value.trim() !== '' ? [[name, value.trim()]] : [],
  )
  return told.length > 0 ? `${PLACE}?${new URLSearchParams(told)}` : PLACE
}

/** The boxes keep their own state; the answer comes from the server with each look, with script or without. */
export function IdentifyForm({ seen, words }: { seen: Seen; words: Words }) {
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
      autoComplete="off"
      className={`panel stack no-print ${styles.form}`}
      data-looking={pending || undefined}
      onChange={(event) => look(event.currentTarget)}
    >
      <h2>What do you see?</h2>
      <PrintFields seen={seen} />
      {OBSERVATION_KEYS.map((key) => (
        <ChoiceField key={key} observation={key} seen={seen} words={words} />
      ))}
      <div className={`row ${styles.bar}`}>
        <button type="submit" className="button">
          What can it be?
        </button>
        <span className="soft small">
          {inWords(`${OBSERVATION_KEYS.length} things to look at; none of them must be told.`, words)}
        </span>
      </div>
      <p className="soft small">
        {OBSERVATIONS.heaterPins.label}: only out of the amplifier, which is discharged first.
      </p>
    </form>
  )
}
