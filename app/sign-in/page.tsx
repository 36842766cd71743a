import type { Metadata } from 'next'
import { requireShop } from '@/lib/session'
import { SignInForm } from './sign-in-form'

export const metadata: Metadata = { title: 'Sign in' }

export default async function SignInPage({ searchParams }: PageProps<'/sign-in'>) {
  const shop = await requireShop()
  const { back } = await searchParams
  return (
    <main className="page" style={{ maxWidth: '28rem', paddingTop: '12vh' }}>
      <h1>{shop.name}</h1>
      <div className="panel">
        <h2>Sign in</h2>
        <SignInForm back={typeof back === 'string' ? back : ''} />
      </div>
      {shop.demo && <p className="soft">Demo shop. The sign-in was printed where the program was started.</p>}
    </main>
  )
}
