/** Under a socket where current was found in more than one way: whether the ways agree, and whom to suspect if not. */
import type { Comparison, CrossCheck, Way } from '@/lib/domain/bench/cross-check'
import {
  agreementWord,
  comparisonText,
  oddOneOutText,
  restsOnText,
  suspectText,
} from '@/lib/domain/bench/cross-check-text'
import type { Words } from '@/lib/domain/words'
import styles from './bench-report.module.css'

function Compared({ comparison, words }: { comparison: Comparison; words: Words }) {
  const { suspects } = comparison
  return (
    <>
      <p>{comparisonText(comparison, words)}</p>
      {suspects.length > 0 && (
        <ol>
          {suspects.map((suspect) => (
            <li key={`${suspect.kind} ${suspect.part}`}>{suspectText(suspect, words)}</li>
          ))}
        </ol>
      )}
    </>
  )
}

type NoteProps = { readonly check: CrossCheck; readonly believed: Way['method']; readonly words: Words }

export function CrossCheckNote({ check, believed, words }: NoteProps) {
  const disagree = check.comparisons.some(({ agree }) => !agree)
  const odd = oddOneOutText(check)
  return (
    <details className={disagree ? styles.caution : undefined} open={disagree}>
      <summary>
        <span className="tag" data-shape={disagree ? '≠' : '='} data-tone={disagree ? 'warn' : undefined}>
          {agreementWord(check)}
        </span>
      </summary>
      {check.comparisons.map((comparison) => (
        <Compared key={`${comparison.one.method} ${comparison.other.method}`} comparison={comparison} words={words} />
      ))}
      {odd && <p>{odd}</p>}
      {disagree && (
        <p className="soft small">
          {restsOnText(believed)} The likeliest is named first: what to look at next, no proof. Read both ways again
          within a minute before taking anything apart.
        </p>
      )}
    </details>
  )
}
