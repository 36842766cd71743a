/** Who, when, what changed. Newest first. */
import { formatInstant } from '@/lib/domain/calendar'
import { changeSentence } from '@/lib/domain/history/changes'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import type { HistoryEntry } from '@/lib/store/history'
import styles from './history-list.module.css'

/** A job's whole story is long; the rest is a press away. */
const SHOWN = 10

export function HistoryList({ history, shop }: { history: readonly HistoryEntry[]; shop: Shop }) {
  const [latest, earlier] = [history.slice(0, SHOWN), history.slice(SHOWN)]
  return (
    <section className="panel" aria-labelledby="history">
      <h2 id="history">History</h2>
      {history.length === 0 && <p className="soft">Nothing yet.</p>}
      <Entries history={latest} shop={shop} />
      {earlier.length > 0 && (
        <details>
          <summary className="button plain">Earlier ({earlier.length})</summary>
          <Entries history={earlier} shop={shop} />
        </details>
      )}
    </section>
  )
}

function Entries({ history, shop }: { history: readonly HistoryEntry[]; shop: Shop }) {
  const { locale } = wordsFor(shop.words)
  return (
    <ol className={styles.list}>
      {history.map(({ id, at, person, did, changes }) => (
        <li key={id}>
          <p className={styles.when}>
            <time dateTime={at.toISOString()}>{formatInstant(at, shop.timeZone, locale)}</time> · {person}
          </p>
          <p className={styles.did}>{did}</p>
          {changes.length > 0 && (
            <details>
              <summary>
                {changes.length} {changes.length === 1 ? 'entry' : 'entries'}
              </summary>
              <ul>
                {changes.map((change) => (
                  <li key={change.label}>{changeSentence(change)}</li>
                ))}
              </ul>
            </details>
          )}
        </li>
      ))}
    </ol>
  )
}
