/** One version that it can be, with the reasons behind. */
import Link from 'next/link'
import type { Candidate } from '@/lib/domain/identify/identify'
import {
  candidateName,
  inWords,
  serviceText,
  shareText,
  sourceText,
  versionText,
  weightText,
} from '@/lib/domain/identify/identify-text'
import { yearsText } from '@/lib/domain/identify/likely-years'
import type { Reason } from '@/lib/domain/identify/reason'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { Words } from '@/lib/domain/words'
import styles from './identify.module.css'
import { StateTag } from './state-tag'

type Entry = {
  readonly candidate: Candidate
  readonly words: Words
  readonly catalogue: TubeCatalogue
  readonly thisYear: number
  readonly stock: string
  /** Its reasons are unfolded from the start. */
  readonly isOpen: boolean
}

function ratingText(designation: string, catalogue: TubeCatalogue): string | null {
  const variant = findTubeType(designation, catalogue)
  const watts = variant?.ratings?.plateWatts
  if (!variant?.ratings || !watts) return null
  const standIn = variant.ratingsStandIn ? `, the ${variant.designation} standing in` : ''
  return `${watts.value} W, ${variant.ratings.system.replace('-', ' ')}${standIn}`
}

function Reasons({ head, reasons, words }: { head: string; reasons: readonly Reason[]; words: Words }) {
  if (reasons.length === 0) return null
  return (
    <>
      <h4>{head}</h4>
      <ul className="tight">
        {reasons.map((reason) => (
          <li key={`${reason.about} ${reason.told}`}>
            <strong>{inWords(reason.about, words)}</strong>: {inWords(reason.told, words)}{' '}
            <span className="num">{weightText(reason.weight)}</span>
            {reason.why.map((why) => (
              <span key={why.sentence} className={`small ${styles.why}`}>
                {inWords(why.sentence, words)} <span className="soft">({sourceText(why)})</span>
              </span>
            ))}
          </li>
        ))}
      </ul>
    </>
  )
}

function Facts({ candidate, catalogue, thisYear, words }: Omit<Entry, 'stock' | 'isOpen'>) {
  const { version, services, years } = candidate
  if (!version) return <p className="small">Something that neither the handbook nor the shop has written down.</p>
  const rating = ratingText(version.designation, catalogue)
  const services3 = services.filter(({ share }) => share >= 0.02 * candidate.share).slice(0, 3)
  return (
    <dl className={`facts small ${styles.facts}`}>
      <dt>Version</dt>
      <dd>{versionText(version)}</dd>
      <dt>Service</dt>
      <dd>{services3.map((one) => `${serviceText(one)} (${shareText(one.share)})`).join('; ')}</dd>
      <dt>Years</dt>
      <dd>{yearsText(years, thisYear)}</dd>
      {rating && <dt>{inWords('%Plate rating', words)}</dt>}
      {rating && <dd>{rating}</dd>}
    </dl>
  )
}

export function CandidateEntry(entry: Entry) {
  const { candidate, words, stock, isOpen } = entry
  const name = candidateName(candidate)
  const hasReasons = candidate.reasonsFor.length + candidate.reasonsAgainst.length + candidate.yearHints.length > 0
  return (
    <li className={styles.candidate}>
      <div className="row spread">
        <h3>
          {name} <StateTag state={candidate.state} />
        </h3>
        <span className="num">{shareText(candidate.share)}</span>
      </div>
      <meter className={styles.meter} min={0} max={1} value={candidate.share} aria-hidden="true" />
      <Facts {...entry} />
      {hasReasons && (
        <details open={isOpen}>
          <summary>Reasons</summary>
          <Reasons head="For it" reasons={candidate.reasonsFor} words={words} />
          <Reasons head="Against it" reasons={candidate.reasonsAgainst} words={words} />
          <Reasons head="On its years" reasons={candidate.yearHints} words={words} />
        </details>
      )}
      <Link className="no-print" href={stock}>
        Take this into stock<span className="sr-only"> as {name}</span>
      </Link>
    </li>
  )
}
