import Link from 'next/link'
import { type Amp, ampName } from '@/lib/domain/amp/amp'
import type { Customer } from '@/lib/domain/customer/customer'
import type { ListedAmp } from '@/lib/store/amp'

type AmpHeadProps = { amp: Amp; owner: Customer | null; others: readonly ListedAmp[] }

export function AmpHead({ amp, owner, others }: AmpHeadProps) {
  const twins = others.filter((other) => amp.serial !== '' && other.serial === amp.serial)
  return (
    <>
      <div className="page-head">
        <h1>{ampName(amp)}</h1>
        <p className="soft">
          {amp.serial === '' ? 'no serial' : `serial ${amp.serial}`}
          {owner && (
            <>
              {' · belongs to '}
              <Link href={`/customers/${owner.id}`}>{owner.name}</Link>
            </>
          )}
        </p>
      </div>
      {twins.map((twin) => (
        <p key={twin.id} className="form-message">
          The same make, model and serial is written down a second time, for {twin.ownerName}:{' '}
          <Link href={`/amps/${twin.id}`}>look at that one</Link>. One of the two may be a slip.
        </p>
      ))}
    </>
  )
}
