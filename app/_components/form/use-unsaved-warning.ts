'use client'
/** Leaving a page with something typed and not saved asks first: by closing it, and by its own links. */
import { useEffect, useState } from 'react'
import { anyChanged } from './form-boxes'
import type { FormState } from './form-state'

const QUESTION = 'There are entries on this page that are not saved. Leave without saving them?'

/** The link that would take this window away from this page, if the click is on one. */
function leavingLink(event: MouseEvent): HTMLAnchorElement | null {
  if (event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return null
  const link = event.target instanceof Element ? event.target.closest('a') : null
  if (!link?.href || (link.target !== '' && link.target !== '_self') || link.hasAttribute('download')) return null
  const { origin, pathname, search } = new URL(link.href)
  const here = origin === location.origin && pathname === location.pathname && search === location.search
  return here ? null : link
}

export function useUnsavedWarning(
  ref: React.RefObject<HTMLFormElement | null>,
  state: FormState,
  busy: React.RefObject<boolean>,
): boolean {
  const [dirty, setDirty] = useState(false)
  // A refused sheet, or one whose rows were changed, holds entries that nobody has saved.
  const unsavedAnswer = state.attempt > 0 && state.status !== 'saved'

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new answer sets the boxes anew
  useEffect(() => {
    const form = ref.current
    if (!form) return
    const look = () => setDirty(unsavedAnswer || anyChanged(form))
    look()
    form.addEventListener('input', look)
    form.addEventListener('change', look)
    return () => {
      form.removeEventListener('input', look)
      form.removeEventListener('change', look)
    }
  }, [ref, unsavedAnswer, state])

  useEffect(() => {
    if (!dirty) return
    const warn = (event: BeforeUnloadEvent) => {
      if (!busy.current) event.preventDefault()
    }
    const ask = (event: MouseEvent) => {
      if (busy.current || !leavingLink(event) || window.confirm(QUESTION)) return
      event.preventDefault()
      event.stopPropagation()
    }
    window.addEventListener('beforeunload', warn)
    // On the window and on the way down, before a link of the page can act.
    window.addEventListener('click', ask, true)
    return () => {
      window.removeEventListener('beforeunload', warn)
      window.removeEventListener('click', ask, true)
    }
  }, [dirty, busy])

  return dirty
}
