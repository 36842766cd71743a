'use client'
/** How far it is. Asks again by itself; without JavaScript the page does. */
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'
import { ActForm } from '@/app/_components/form/act-form'
import { submitCancel } from './actions'

type Props = { readonly importId: string; readonly words: string; readonly done: number; readonly total: number }

const AGAIN_MILLISECONDS = 1000

export function ProgressPanel({ importId, words, done, total }: Props) {
  const router = useRouter()
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), AGAIN_MILLISECONDS)
    return () => clearInterval(timer)
  }, [router])
  return (
    <section className="panel stack" aria-live="polite">
      <h2>{words}</h2>
      <progress value={done} max={Math.max(total, 1)} aria-label={words} style={{ width: '100%' }} />
      <p>
        {done} of {total}
      </p>
      <noscript>
        <meta httpEquiv="refresh" content="2" />
      </noscript>
      <ActForm action={submitCancel} values={{ importId }} quiet>
        Cancel: take nothing in
      </ActForm>
    </section>
  )
}
