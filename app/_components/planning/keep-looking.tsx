'use client'
/** Draws the page anew while something is being worked out. Without JavaScript the page reloads itself. */
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'

const EVERY_MILLISECONDS = 1000

export function KeepLooking() {
  const router = useRouter()
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), EVERY_MILLISECONDS)
    return () => clearInterval(timer)
  }, [router])
  return (
    <noscript>
      <meta httpEquiv="refresh" content="3" />
    </noscript>
  )
}
