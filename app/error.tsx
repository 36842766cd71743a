'use client'
/** Something broke that no step expected. What exactly stands in the server's log; the code finds it there. */
import Link from 'next/link'
import { useRouter } from 'next/navigation'
import { startTransition } from 'react'

export default function ErrorPage({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  const router = useRouter()
  // The server is asked anew; clearing the boundary alone would show the same answer again.
  const again = () =>
    startTransition(() => {
      router.refresh()
      reset()
    })
  return (
    <main className="page">
      <section className="panel" style={{ maxWidth: '40rem' }}>
        <h1>This page could not be drawn</h1>
        <p style={{ marginTop: '0.8rem' }}>
          The fault is in the program or its database, not in what you did. What was saved before is safe. Before you
          enter something a second time, look whether it was saved the first time.
        </p>
        {error.digest && <p className="soft">Code for whoever looks after the server: {error.digest}</p>}
        <div className="row">
          <button type="button" className="button" onClick={again}>
            Try again
          </button>
          <Link className="button quiet" href="/">
            To the day
          </Link>
        </div>
      </section>
    </main>
  )
}
