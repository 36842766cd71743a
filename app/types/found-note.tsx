/** What the whole of the typed text is, and what it merely resembles. */
import Link from 'next/link'
import { resolutionText } from '@/lib/domain/tube/resolution-text'
import type { FoundTypes } from '@/lib/domain/tube/type-search'
import { cardAddress } from './card-address'

type Props = { readonly search: string; readonly found: FoundTypes; readonly mayKeep: boolean }

export function FoundNote({ search, found: { exact, types, similar }, mayKeep }: Props) {
  return (
    <div className="form-message">
      {exact ? (
        <p>
          {resolutionText(exact)} <Link href={cardAddress(exact.typeId, search)}>Open its card</Link>
        </p>
      ) : (
        <p>
          “{search}” is no number known here{types.length > 0 ? '; it is part of those below' : ''}.
          {mayKeep && (
            <>
              {' '}
              <Link href={`/types/new?designation=${encodeURIComponent(search)}`}>Write it down</Link>
            </>
          )}
        </p>
      )}
      {!exact &&
        similar.map(({ type, number }) => (
          <p key={type.id}>
            {number} is merely similar to the <Link href={cardAddress(type.id)}>{type.id}</Link>: not the same. Check
            base, heater and ratings first.
          </p>
        ))}
    </div>
  )
}
