/** Which sockets of which amplifiers it sat in, and how long it ran there. */
import Link from 'next/link'
import { formatInstant } from '@/lib/domain/calendar'
import type { Shop } from '@/lib/domain/shop/shop'
import type { Tube, TubeFitting } from '@/lib/domain/stock/tube'
import { wordsFor } from '@/lib/domain/words'
import { HoursForm } from './hours-form'

type Props = {
  readonly tube: Tube
  readonly fittings: readonly TubeFitting[]
  readonly shop: Shop
  readonly formKey: string
}

export function TubeLife({ tube, fittings, shop, formKey }: Props) {
  const when = (at: Date) => formatInstant(at, shop.timeZone, wordsFor(shop.words).locale)
  const { hoursBefore } = tube.further
  const known = [hoursBefore, ...fittings.map(({ hours }) => hours)].filter((hours) => hours !== null)
  return (
    <section className="panel">
      <h2>Life</h2>
      {fittings.length === 0 && <p className="soft">Never fitted from here.</p>}
      {fittings.length > 0 && (
        <ul>
          {fittings.map(({ id, ampId, ampName, position, jobNumber, fittedAt, fittedBy, removedAt, hours }) => (
            <li key={id}>
              {position} of the <Link href={`/amps/${ampId}`}>{ampName}</Link>,{' '}
              <Link href={`/jobs/${jobNumber}`}>job {jobNumber}</Link>: {when(fittedAt)} by {fittedBy}
              {removedAt ? `, taken out ${when(removedAt)}` : ', still there'}
              {hours !== null && `, ${hours} h`}
              <details className="no-print">
                <summary>Hours there</summary>
                <HoursForm key={formKey} tubeId={tube.id} fittingId={id} hours={hours === null ? '' : String(hours)} />
              </details>
            </li>
          ))}
        </ul>
      )}
      {known.length > 0 && (
        <p>
          {known.reduce((sum, hours) => sum + hours, 0)} h known of
          {hoursBefore !== null && `, ${hoursBefore} h of them before it came here`}.
        </p>
      )}
    </section>
  )
}
