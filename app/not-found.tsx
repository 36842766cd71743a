import type { Metadata } from 'next'
import Link from 'next/link'
import { Shell } from '@/app/_components/shell/shell'
import { currentActor, currentShop } from '@/lib/session'

export const metadata: Metadata = { title: 'Not here' }

export default async function NotFound() {
  const [actor, shop] = await Promise.all([currentActor(), currentShop()])
  return actor && shop ? (
    <Shell shop={shop} actor={actor}>
      <NotHere />
    </Shell>
  ) : (
    <main className="page">
      <NotHere />
    </main>
  )
}

function NotHere() {
  return (
    <section className="panel" style={{ maxWidth: '40rem' }}>
      <h1>This sheet is not here</h1>
      <p style={{ marginTop: '0.8rem' }}>
        Nothing is kept at this address. A digit may be wrong, or it is the address of another shop. Look it up by job
        number, name, serial or mark.
      </p>
      <div className="row">
        <Link className="button" href="/">
          To the day
        </Link>
        <Link className="button quiet" href="/find">
          Find
        </Link>
      </div>
    </section>
  )
}
