import type { Metadata } from 'next'
import Link from 'next/link'
import { Shell } from '@/app/_components/shell/shell'
import type { MatchingFormat } from '@/lib/domain/matching/matching-text'
import { formatMoney } from '@/lib/domain/money'
import { capital, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { StockSections } from '../stock-sections'
import { readSetsLimits } from './sets-limits'
import { SetsLimitsForm } from './sets-limits-form'
import { SetsTable } from './sets-table'
import { listCohorts } from './shelf-stock'

export const metadata: Metadata = { title: 'Sets in stock' }

export default async function SetsPage({ searchParams }: PageProps<'/stock/sets'>) {
  const { actor, shop } = await requireUser()
  const words = wordsFor(shop.words)
  const limits = readSetsLimits(await searchParams, shop)
  const cohorts = limits.faults.size > 0 ? [] : await listCohorts({ shop, now: new Date(), limits })
  const format: MatchingFormat = { words, formatMoney: (amount) => formatMoney(amount, shop.currency, words.locale) }
  return (
    <Shell shop={shop} actor={actor}>
      <StockSections words={shop.words} section="/stock/sets" />
      <div className="page-head">
        <h1>Sets in stock</h1>
        <Link className="no-print" href="/share-out">
          Share out over open jobs
        </Link>
      </div>
      <SetsLimitsForm limits={limits} words={words} />
      <section className="panel stack" aria-labelledby="possible">
        <h2 id="possible">Sets possible</h2>
        <p className="soft">
          {capital(words.tubes)} that are free, good, tested, and on no draft quote. Pairs and quads: the most there can
          be at once, counted exactly; each quad would take two of the pairs. A crowded stock is told as a range of
          quads: making them says how many it is. Only what was read at one test point is compared, on one instrument or
          carried over to it from another by{' '}
          <Link href="/settings/instruments/corrections">references read on both</Link>.
        </p>
        {cohorts.length === 0 && limits.faults.size === 0 && <p>Nothing in stock has a reading to compare.</p>}
        {cohorts.length > 0 && (
          // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
          <section className="table-scroll" tabIndex={0} aria-label="Sets possible by type">
            <SetsTable cohorts={cohorts} limits={limits} format={format} />
          </section>
        )}
      </section>
    </Shell>
  )
}
