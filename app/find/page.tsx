import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { SearchBar } from '@/app/_components/search-bar'
import { Shell } from '@/app/_components/shell/shell'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { searchTypes } from '@/lib/domain/tube/type-search'
import { requireUser } from '@/lib/session'
import { listAmps } from '@/lib/store/amp'
import { listCustomers } from '@/lib/store/customer'
import { listJobsMatching } from '@/lib/store/find'
import { listTubes } from '@/lib/store/tube'
import { findExactly, jobNumberRemark } from './find-exactly'
import { type Found, FoundGroups } from './found-groups'

export const metadata: Metadata = { title: 'Find' }

const NOTHING: Found = { jobs: [], customers: [], amps: [], tubes: [], types: [] }
/** Below this every type holds the text. */
const LEAST_LETTERS = 3

async function lookUp(search: string, now: Date, catalogue: TubeCatalogue): Promise<Found> {
  const [jobs, customers, amps, stock] = await Promise.all([
    listJobsMatching(search),
    listCustomers(search),
    listAmps(search),
    listTubes({ search, view: 'all', now }),
  ])
  const types = search.length < LEAST_LETTERS ? [] : searchTypes(search, catalogue).types
  return { jobs, customers, amps, tubes: stock.tubes, types }
}

export default async function FindPage({ searchParams }: PageProps<'/find'>) {
  const { actor, shop } = await requireUser()
  const { q } = await searchParams
  const search = typeof q === 'string' ? q.trim().slice(0, 100) : ''
  const exact = search === '' ? null : await findExactly(search)
  if (exact) redirect(exact)
  const now = new Date()
  const found = search === '' ? NOTHING : await lookUp(search, now, shop)
  const nothing = Object.values(found).every((group) => group.length === 0)
  const remark = jobNumberRemark(search)
  return (
    <Shell shop={shop} actor={actor}>
      <h1>Find</h1>
      <SearchBar action="/find" value={search} label="Job number, name, phone, make, model, serial, mark or type" />
      {remark && <p className="form-message">{remark}</p>}
      {search !== '' && nothing && (
        <p className="soft">Nothing found for “{search}”. Try fewer letters, or another word.</p>
      )}
      <FoundGroups found={found} shop={shop} now={now} />
    </Shell>
  )
}
