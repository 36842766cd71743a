/** What it can be, and what to look at next; behind it what the marks say. */
import { constructionText } from '@/lib/domain/identify/construction-text'
import type { Candidate, Identification } from '@/lib/domain/identify/identify'
import { candidateName, inWords, shareText, stateSentence } from '@/lib/domain/identify/identify-text'
import type { Seen } from '@/lib/domain/identify/seen'
import { stockEntry } from '@/lib/domain/identify/stock-entry'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { Words } from '@/lib/domain/words'
import { CandidateEntry } from './candidate-entry'
import styles from './identify.module.css'
import { NextPanel } from './next-panel'
import { PrintTaken } from './print-taken'
import { RemarkList } from './remark-list'
import { hasSeen, stockAddress } from './seen-query'
import { StateTag } from './state-tag'

type Shown = {
  readonly found: Identification
  readonly seen: Seen
  readonly words: Words
  readonly catalogue: TubeCatalogue
}

function Contradictions({ found, words }: Pick<Shown, 'found' | 'words'>) {
  if (found.contradictions.length === 0) return null
  return (
    <div className="caution">
      <h2>This does not go together</h2>
      <RemarkList remarks={found.contradictions} words={words} />
    </div>
  )
}

/** As many as a hand at the bench looks at. */
const SHOWN = 3

function Ranked({ found, seen, words, catalogue }: Shown) {
  const entered = stockEntry(seen, words)
  const [first, others] = [found.ranked.slice(0, SHOWN), found.ranked.slice(SHOWN)]
  const entry = (candidate: Candidate) => (
    <CandidateEntry
      key={candidateName(candidate)}
      {...{ candidate, words, catalogue }}
      thisYear={found.thisYear}
      isOpen={candidate === found.ranked[0]}
      stock={stockAddress(candidate.version?.designation ?? seen.print.slice(0, 40), entered)}
    />
  )
  return (
    <section className="panel" aria-labelledby="ranked-head">
      <h2 id="ranked-head">What it can be</h2>
      <ol className={styles.ranked}>{first.map(entry)}</ol>
      {others.length > 0 && (
        <details className={styles.less}>
          <summary>Less likely ones: {others.map(candidateName).join(', ')}</summary>
          <ol className={styles.ranked} start={SHOWN + 1}>
            {others.map(entry)}
          </ol>
        </details>
      )}
      {found.restShare >= 0.005 && (
        <p className="soft small">All others known here together: {shareText(found.restShare)}.</p>
      )}
    </section>
  )
}

export function AnswerPanel(shown: Shown) {
  const { found, seen, words } = shown
  const told = constructionText(seen, words)
  return (
    <div className={`stack ${styles.answer}`} id="answer">
      {hasSeen(seen) && (
        <section className="panel" aria-labelledby="state-head">
          <h2 id="state-head">
            Label and construction: <StateTag state={found.state} />
          </h2>
          <p role="status">{stateSentence(found.state)}</p>
          {told !== '' && <p className="small soft">Told: {told}.</p>}
        </section>
      )}
      <Contradictions found={found} words={words} />
      <NextPanel next={found.next} seen={seen} words={words} />
      {hasSeen(seen) && <Ranked {...shown} />}
    </div>
  )
}

export function MarksPanel({ found, words }: Pick<Shown, 'found' | 'words'>) {
  return (
    <div className={`stack ${styles.marks}`}>
      <PrintTaken found={found} words={words} />
      {found.remarks.length > 0 && (
        <section className="panel">
          <h2>{inWords('To keep in mind', words)}</h2>
          <RemarkList remarks={found.remarks} words={words} />
        </section>
      )}
    </div>
  )
}
