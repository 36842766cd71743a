import Link from 'next/link'
import type { KeptOwnType } from '@/lib/store/own-type'
import { cardAddress } from './card-address'

export function WithdrawnTypes({ types }: { types: readonly KeptOwnType[] }) {
  if (types.length === 0) return null
  return (
    <section className="panel no-print">
      <h2>Withdrawn</h2>
      <p className="soft">Written down by this shop once, and no longer looked up.</p>
      <p className="row">
        {types.map(({ id, entry }) => (
          <Link key={id} href={cardAddress(id)}>
            {entry.designation}
          </Link>
        ))}
      </p>
    </section>
  )
}
