/** Who, when, what changed. Newest first. */
import { formatInstant } from '@/lib/domain/calendar'
import { changeSentence } from '@/lib/domain/history/changes'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import type { HistoryEntry } from '@/lib/store/history'
import styles from './history-list.module.css'

export function HistoryList({ history, shop }: { history: readonly HistoryEntry[]; shop: Shop }) {
  const { locale } = wordsFor(shop.words)
  return (
    <section className="panel" aria-labelledby="history">
      <h2 id="history">History</h2>
      {history.length === 0 && <p className="soft">Nothing yet.</p>}
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
    </section>
  )
}
