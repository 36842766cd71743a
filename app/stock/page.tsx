import type { Metadata } from 'next'
import Link from 'next/link'
import { Shell } from '@/app/_components/shell/shell'
import { formatMoney } from '@/lib/domain/money'
import { capital, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listTubes } from '@/lib/store/tube'
import { listCutShort } from '@/lib/workflow/tables/import-standing'
import { CutShortNotice } from './exchange/cut-short-notice'
import { StockPages } from './stock-pages'
import { StockSearch, viewOf } from './stock-search'
import { StockSections } from './stock-sections'
import { StockTable } from './stock-table'

export const metadata: Metadata = { title: 'Stock' }

export default async function StockPage({ searchParams }: PageProps<'/stock'>) {
  const { actor, shop } = await requireUser()
  const { q, view: viewAsked, page } = await searchParams
  const search = typeof q === 'string' ? q : ''
  const view = viewOf(viewAsked)
  const now = new Date()
  const stock = await listTubes({ search, view, page: Number(page) || 1, now })
  const words = wordsFor(shop.words)
  return (
    <Shell shop={shop} actor={actor}>
      <StockSections words={shop.words} section="/stock" />
      <div className="page-head">
        <h1>{capital(words.tube)} stock</h1>
        <div className="row no-print">
          <Link className="button" href="/stock/new">
            Take in one
          </Link>
          <Link className="button quiet" href="/stock/receive">
            Take in several
          </Link>
          <Link className="button quiet" href="/stock/identify">
            What is it?
          </Link>
          <Link className="button quiet" href="/stock/prices">
            Prices
          </Link>
          <Link className="button quiet" href="/stock/test-sheet">
            Test sheet
          </Link>
        </div>
      </div>
      <CutShortNotice cut={await listCutShort()} />
      <StockSearch search={search} view={view} />
      <section className="panel">
        <div className="panel-head">
          <h2>
            {stock.count} {stock.count === 1 ? words.tube : words.tubes}
          </h2>
          <span>{formatMoney(stock.value, shop.currency, words.locale)} at asking prices, before tax</span>
        </div>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
        <section className="table-scroll" tabIndex={0} aria-label="The stock">
          {stock.count > 0 && <StockTable tubes={stock.tubes} shop={shop} now={now} />}
          {stock.count === 0 && <p className="soft">None found{search && ` for “${search}”`}.</p>}
        </section>
        <StockPages {...stock} query={{ q: search, view }} />
      </section>
    </Shell>
  )
}
