/** Issued papers, newest first. Each is drawn again from what was frozen when it was issued. */
import { formatInstant } from '@/lib/domain/calendar'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import type { IssuedPaper } from '@/lib/store/paper'

const KINDS: Readonly<Record<string, string>> = {
  receipt: 'Receipt',
  quote: 'Quote',
  'work-order': 'Work order',
  'pickup-sheet': 'Pickup sheet',
}

export function PaperList({ papers, shop }: { papers: readonly IssuedPaper[]; shop: Shop }) {
  const { locale } = wordsFor(shop.words)
  return (
    <section className="panel" aria-labelledby="papers">
      <h2 id="papers">Papers</h2>
      {papers.length === 0 && <p className="soft">None issued yet.</p>}
      <ul style={{ margin: 0, paddingLeft: '1.1rem' }}>
        {papers.map(({ id, kind, number, issuedAt, issuedBy, takenBackAt, takenBackBecause }) => (
          <li key={id}>
            <a href={`/papers/${id}`}>
              {KINDS[kind] ?? kind} {number}
            </a>{' '}
            <span className="soft">
              {formatInstant(issuedAt, shop.timeZone, locale)}, {issuedBy}
            </span>
            {takenBackAt && (
              <>
                {' '}
                <span className="tag" data-tone="warn" data-shape="×">
                  taken back
                </span>{' '}
                <span className="soft">
                  {formatInstant(takenBackAt, shop.timeZone, locale)}: {takenBackBecause}
                </span>
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}
