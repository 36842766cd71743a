'use client'
/** Looks up as one types; without JavaScript the button does the same. */
import { useRouter } from 'next/navigation'
import { useEffect, useRef, useState } from 'react'

type Props = {
  readonly action: string
  readonly name: string
  readonly value: string
  readonly label: string
  /** More buttons of the same form: they take along what is typed. */
  readonly children?: React.ReactNode
}

export function LiveSearch({ action, name, value, label, children }: Props) {
  const router = useRouter()
  const [typed, setTyped] = useState(value)
  const shown = useRef(value)
  useEffect(() => {
    if (typed === shown.current) return
    const wait = setTimeout(() => {
      shown.current = typed
      router.replace(`${action}?${name}=${encodeURIComponent(typed)}`, { scroll: false })
    }, 200)
    return () => clearTimeout(wait)
  }, [typed, action, name, router])
  return (
    <form action={action} className="row">
      <div className="field" style={{ flex: '1 1 20rem' }}>
        <label htmlFor={name}>{label}</label>
        <input
          id={name}
          name={name}
          type="search"
          autoComplete="off"
          // biome-ignore lint/a11y/noAutofocus: the counter begins by typing here
          autoFocus
          defaultValue={value}
          onChange={(event) => setTyped(event.target.value)}
        />
      </div>
      <button type="submit" className="button quiet" style={{ alignSelf: 'end' }}>
        Look up
      </button>
      {children}
    </form>
  )
}
