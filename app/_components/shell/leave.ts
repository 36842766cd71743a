'use server'
import { redirect } from 'next/navigation'
import { forgetSignIn } from '@/lib/session'

export async function leave(): Promise<void> {
  await forgetSignIn()
  redirect('/sign-in')
}
