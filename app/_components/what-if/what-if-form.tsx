'use client'
/**
 * The panel's form. It is a plain form whose answer is another address of the page; with
 * JavaScript the same answer is worked out in the browser as one types, and the address
 * follows. The code that computes is fetched when a box is first touched.
 */
import { useRouter } from 'next/navigation'
import { type ReactNode, startTransition, useCallback, useEffect, useRef, useState } from 'react'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { PlotLoad } from '@/lib/domain/plot/load-path'
import { type WordSet, wordsFor } from '@/lib/domain/words'
import type { StockedAnswers } from './asked-change'
import type { WhatIfAnswer } from './what-if-answer'
import { WhatIfBoxes, type WhatIfLists } from './what-if-boxes'
import { type WhatIfTyped, whatIfTyped } from './what-if-typed'

type Props = {
  /** Path of the page. */
  readonly action: string
  /** Sent along, as others of the page's questions stand in the same address. */
  readonly group: string
  readonly circuit: AmpCircuit
  readonly typed: WhatIfTyped
  readonly faults: WhatIfAnswer['faults']
  readonly stocked: StockedAnswers
  readonly load: PlotLoad | null
  readonly lists: WhatIfLists
  readonly wordSet: WordSet
  /** As the server worked it out. */
  readonly children: ReactNode
}

/** Null when it cannot be fetched: the button then asks the server, as without JavaScript. */
const compute = () => import('./what-if-answer').catch(() => null)

const typedIn = (form: HTMLFormElement): WhatIfTyped => whatIfTyped([...new FormData(form)])

/** A tube's mark is looked up, and a refusal said, when one has stopped typing: half a word is not wrong yet. */
const PAUSE_MS = 500

function addressOf({ action, group }: Pick<Props, 'action' | 'group'>, typed: WhatIfTyped): string {
  const query = new URLSearchParams({ group, ...typed })
  return `${action}?${query}#what-if`
}

function emptyBoxes(form: HTMLFormElement): void {
  for (const box of form.elements) {
    if (box instanceof HTMLInputElement && box.type !== 'hidden') box.value = ''
    else if (box instanceof HTMLSelectElement) box.selectedIndex = 0
  }
}

export function WhatIfForm(props: Props) {
  const { action, group, circuit, typed, faults, stocked, load, lists, wordSet, children } = props
  const words = wordsFor(wordSet)
  const router = useRouter()
  const ref = useRef<HTMLFormElement>(null)
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const touched = useRef(false)
  const [live, setLive] = useState<WhatIfAnswer | null>(null)
  const [computes, setComputes] = useState(false)

  const answer = useCallback(async () => {
    const code = await compute()
    const form = ref.current
    if (!code || !form) return
    touched.current = true
    const now = typedIn(form)
    window.history.replaceState(null, '', addressOf({ action, group }, now))
    const found = code.whatIfAnswer({ circuit, typed: now, stocked, load, words: wordsFor(wordSet) })
    const show = () => startTransition(() => setLive(found))
    clearTimeout(timer.current)
    setComputes(true)
    if (found.waiting) timer.current = setTimeout(() => router.refresh(), PAUSE_MS)
    else if (Object.keys(found.faults).length > 0) timer.current = setTimeout(show, PAUSE_MS)
    else show()
  }, [action, group, circuit, stocked, load, wordSet, router])

  // What was typed before the script came, what the browser put back, and what the stock book has answered since.
  useEffect(() => {
    const form = ref.current
    if (form && (touched.current || JSON.stringify(typedIn(form)) !== JSON.stringify(typed))) void answer()
  }, [answer, typed])
  useEffect(() => () => clearTimeout(timer.current), [])

  return (
    <>
      <form
        ref={ref}
        action={`${action}#what-if`}
        className="stack no-print"
        onFocus={() => void compute()}
        onInput={() => void answer()}
        onSubmit={(event) => {
          // Until the code is here the server answers.
          if (!computes) return
          event.preventDefault()
          void answer()
        }}
      >
        <input type="hidden" name="group" value={group} />
        <WhatIfBoxes circuit={circuit} typed={typed} faults={(live ?? { faults }).faults} lists={lists} words={words} />
        <div className="row">
          <button type="submit" className="button">
            Work it out
          </button>
          <a
            className="button quiet"
            href={addressOf(props, {})}
            onClick={(event) => {
              if (!computes || !ref.current) return
              event.preventDefault()
              emptyBoxes(ref.current)
              void answer()
            }}
          >
            Back to how it is
          </a>
        </div>
      </form>
      {live ? live.view : children}
    </>
  )
}
