/** Which amplifiers it sat in. */
import Link from 'next/link'
import { formatInstant } from '@/lib/domain/calendar'
import type { Shop } from '@/lib/domain/shop/shop'
import type { TubeFitting } from '@/lib/domain/stock/tube'
import { wordsFor } from '@/lib/domain/words'

export function TubeLife({ fittings, shop }: { fittings: readonly TubeFitting[]; shop: Shop }) {
  const when = (at: Date) => formatInstant(at, shop.timeZone, wordsFor(shop.words).locale)
  return (
    <section className="panel">
      <h2>Fitted</h2>
      {fittings.length === 0 && <p className="soft">Never fitted from here.</p>}
      {fittings.length > 0 && (
        <ul>
          {fittings.map(({ id, ampId, ampName, position, jobNumber, fittedAt, fittedBy, removedAt }) => (
            <li key={id}>
              {position} of the <Link href={`/amps/${ampId}`}>{ampName}</Link>,{' '}
              <Link href={`/jobs/${jobNumber}`}>job {jobNumber}</Link>: {when(fittedAt)} by {fittedBy}
              {removedAt ? `, taken out ${when(removedAt)}` : ', still there'}
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
