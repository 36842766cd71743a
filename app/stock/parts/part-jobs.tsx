/** Which jobs this part is set aside for, and which have taken some of it. */
import Link from 'next/link'
import { formatInstant } from '@/lib/domain/calendar'
import type { Shop } from '@/lib/domain/shop/shop'
import type { Drawer, ServedClaim } from '@/lib/domain/stock/drawer'
import { wordsFor } from '@/lib/domain/words'
import type { PartDrawn } from '@/lib/store/part-draw'

type Props = { readonly drawer: Drawer; readonly drawn: readonly PartDrawn[]; readonly shop: Shop }

export function PartJobs({ drawer, drawn, shop }: Props) {
  const { locale } = wordsFor(shop.words)
  return (
    <section className="panel" aria-labelledby="part-jobs">
      <h2 id="part-jobs">Jobs</h2>
      {drawer.claims.length + drawn.length === 0 && <p className="soft">No job needs it, and none has used it.</p>}
      {drawer.claims.length > 0 && (
        <>
          <h3>Set aside</h3>
          <ul>
            {drawer.claims.map((claim) => (
              <li key={`${claim.jobId} ${claim.since.getTime()}`}>
                <JobLink number={claim.jobNumber} />: {asideText(claim)}, since{' '}
                {formatInstant(claim.since, shop.timeZone, locale)}
              </li>
            ))}
          </ul>
        </>
      )}
      {drawn.length > 0 && (
        <>
          <h3>Taken out of the drawer</h3>
          <ul>
            {drawn.map(({ jobNumber, ampName, count, at, by }) => (
              <li key={jobNumber}>
                <JobLink number={jobNumber} />: {count}, {ampName}; {by}, {formatInstant(at, shop.timeZone, locale)}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}

const JobLink = ({ number }: { number: string }) => <Link href={`/jobs/${number}`}>Job {number}</Link>

const asideText = ({ aside, pieces, short }: ServedClaim): string =>
  short === 0 ? `${aside}` : `${aside} of ${pieces}, ${short} short`
