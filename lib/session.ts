/** Who is signed in on this request. Pages and actions start here. */
import 'server-only'
import { cookies, headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { cache } from 'react'
import { ASKED_FOR, safeReturn } from './domain/person/asked-for'
import type { Actor } from './domain/person/role'
import type { Shop } from './domain/shop/shop'
import { findShop } from './store/shop'
import { personOfToken, type SignedIn, signOut } from './workflow/shop/sign-in'
import type { Step } from './workflow/step/step'

const COOKIE = 'benchglow-session'

export const currentActor = cache(async (): Promise<Actor | null> => {
  const token = (await cookies()).get(COOKIE)?.value
  return token ? personOfToken(token, new Date()) : null
})

export const currentShop = cache(findShop)

/** The shop, or the first-run screen when there is none yet. */
export async function requireShop(): Promise<Shop> {
  return (await currentShop()) ?? redirect('/first-run')
}

/** Signed in, or sent to the sign-in screen and back again. */
export async function requireUser(): Promise<{ actor: Actor; shop: Shop }> {
  const shop = await requireShop()
  const actor = await currentActor()
  return actor ? { actor, shop } : redirect(await signInAddress())
}

async function signInAddress(): Promise<string> {
  const back = safeReturn((await headers()).get(ASKED_FOR))
  return back === '/' ? '/sign-in' : `/sign-in?back=${encodeURIComponent(back)}`
}

export type GuardedStep = { readonly step: Step; readonly shop: Shop }

/** For actions: who acts, and now. */
export async function requireStep(): Promise<GuardedStep> {
  const { actor, shop } = await requireUser()
  return { step: { actor, now: new Date() }, shop }
}

export async function rememberSignIn({ token, expiresAt }: SignedIn): Promise<void> {
  const secure = (await headers()).get('x-forwarded-proto') === 'https'
  ;(await cookies()).set(COOKIE, token, { httpOnly: true, sameSite: 'lax', secure, path: '/', expires: expiresAt })
}

export async function forgetSignIn(): Promise<void> {
  const jar = await cookies()
  const token = jar.get(COOKIE)?.value
  if (token) await signOut(token)
  jar.delete(COOKIE)
}

/** Address of this shop as the browser knows it, for codes on paper. BENCHGLOW_URL overrides. */
export async function shopAddress(): Promise<string> {
  const fixed = process.env.BENCHGLOW_URL?.replace(/\/+$/, '')
  if (fixed) return fixed
  const head = await headers()
  const scheme = head.get('x-forwarded-proto') ?? 'http'
  return `${scheme}://${head.get('x-forwarded-host') ?? head.get('host') ?? 'localhost:3000'}`
}
