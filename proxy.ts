/**
 * Tells a page its own address, so that whoever has to sign in first is led back to it: a code on a receipt
 * opens its job on a tablet that was signed out overnight. Nothing is decided here.
 */
import { type NextRequest, NextResponse } from 'next/server'
import { ASKED_FOR } from '@/lib/domain/person/asked-for'

export function proxy(request: NextRequest): NextResponse {
  const headers = new Headers(request.headers)
  headers.set(ASKED_FOR, request.nextUrl.pathname)
  return NextResponse.next({ request: { headers } })
}

export const config = { matcher: ['/(jobs|papers|amps|customers|stock|types|outbox|settings|find)/:path*'] }
