import type { Metadata } from 'next'
import Link from 'next/link'
import { SearchBar } from '@/app/_components/search-bar'
import { Shell } from '@/app/_components/shell/shell'
import { requireUser } from '@/lib/session'
import { listAmps } from '@/lib/store/amp'
import { AmpList } from './amp-list'

export const metadata: Metadata = { title: 'Amplifiers' }

export default async function AmpsPage({ searchParams }: PageProps<'/amps'>) {
  const { actor, shop } = await requireUser()
  const { q } = await searchParams
  const search = typeof q === 'string' ? q : ''
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>Amplifiers</h1>
        <Link className="button" href="/amps/new">
          New amplifier
        </Link>
      </div>
      <SearchBar action="/amps" value={search} label="Part of a make, model, serial or owner’s name" />
      <AmpList amps={await listAmps(search, 200)} search={search} />
    </Shell>
  )
}
