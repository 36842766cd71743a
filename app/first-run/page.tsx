import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { pickLists, serverTimeZone } from '@/app/settings/pick-lists'
import { currentShop } from '@/lib/session'
import { FirstRunForm } from './first-run-form'
import { firstRunValues } from './first-run-schema'

export const metadata: Metadata = { title: 'Open the shop' }

export default async function FirstRunPage() {
  if (await currentShop()) redirect('/sign-in')
  return (
    <main className="page" style={{ maxWidth: '60rem' }}>
      <div>
        <h1>Open the shop</h1>
        <p className="soft">
          This page is shown once. Everything here can be changed later in Settings, except the currency once an amount
          is written in it.
        </p>
      </div>
      <div className="panel">
        <FirstRunForm values={firstRunValues(serverTimeZone())} lists={pickLists('en-US')} />
      </div>
    </main>
  )
}
