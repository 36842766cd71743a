/** On a narrow screen always in sight: what leads, what to look at next, and the button for those without JavaScript. */
import type { Identification } from '@/lib/domain/identify/identify'
import { candidateName, inWords, shareText } from '@/lib/domain/identify/identify-text'
import type { Seen } from '@/lib/domain/identify/seen'
import type { Words } from '@/lib/domain/words'
import styles from './identify.module.css'
import { countSeen, FORM_ID, hasSeen, placeOf } from './seen-query'

type Shown = { readonly found: Identification; readonly seen: Seen; readonly words: Words }

function leadText({ ranked: [first, ...others] }: Identification): string {
  if (!first) return 'Nothing fits'
  const rest = others.length > 0 ? `, ${others.length} less likely` : ''
  return `${candidateName(first)} ${shareText(first.share)}${rest}`
}

export function LeadBar({ found, seen, words }: Shown) {
  const { next } = found
  const count = countSeen(seen)
  return (
    <aside className={`no-print ${styles.lead}`} aria-label="How it stands">
      <p>
        {hasSeen(seen) ? <a href="#answer">{leadText(found)}</a> : <span>Nothing told yet</span>}
        {count > 0 && <span className="soft small">{count === 1 ? '1 thing told' : `${count} things told`}</span>}
      </p>
      <p>
        {next && <a href={placeOf(next.key)}>Next: {inWords(next.label, words).toLowerCase()}</a>}
        <button type="submit" className="button quiet" form={FORM_ID}>
          Look
        </button>
      </p>
    </aside>
  )
}
