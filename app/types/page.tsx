import type { Metadata } from 'next'
import Link from 'next/link'
import { SearchBar } from '@/app/_components/search-bar'
import { Shell } from '@/app/_components/shell/shell'
import { searchTypes } from '@/lib/domain/tube/type-search'
import { capital, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listOwnTypes } from '@/lib/store/own-type'
import { mayKeepTypes } from '@/lib/workflow/shop/keep-own-type'
import { FoundNote } from './found-note'
import { TypeGroups } from './type-groups'
import { WithdrawnTypes } from './withdrawn-types'

export const metadata: Metadata = { title: 'Tube data' }

export default async function TypesPage({ searchParams }: PageProps<'/types'>) {
  const { actor, shop } = await requireUser()
  const { q } = await searchParams
  const search = typeof q === 'string' ? q.trim().slice(0, 40) : ''
  const found = searchTypes(search, shop)
  const withdrawn = (await listOwnTypes()).filter(({ active }) => !active)
  const words = wordsFor(shop.words)
  const mayKeep = mayKeepTypes({ actor })
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>{capital(words.tube)} data</h1>
        {mayKeep && (
          <Link className="button no-print" href="/types/new">
            Write down a type
          </Link>
        )}
      </div>
      <SearchBar action="/types" value={search} label="Any number: 6L6GC, ECC83, CV511, VT-107" />
      {search !== '' && <FoundNote search={search} found={found} mayKeep={mayKeep} />}
      <TypeGroups found={found.types} catalogue={shop} words={words} search={search} />
      {search === '' && <WithdrawnTypes types={withdrawn} />}
    </Shell>
  )
}
