import type { Metadata } from 'next'
import Link from 'next/link'
import { SearchBar } from '@/app/_components/search-bar'
import { Shell } from '@/app/_components/shell/shell'
import { formatMoney, money } from '@/lib/domain/money'
import { conditionWord } from '@/lib/domain/stock/tube'
import { capital, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listLots } from '@/lib/store/tube-lot'
import { StockSections } from '../stock-sections'

export const metadata: Metadata = { title: 'Lots' }

export default async function LotsPage({ searchParams }: PageProps<'/stock/lots'>) {
  const { actor, shop } = await requireUser()
  const { q } = await searchParams
  const search = typeof q === 'string' ? q : ''
  const lots = await listLots(search)
  const words = wordsFor(shop.words)
  const count = lots.reduce((sum, lot) => sum + lot.count, 0)
  const value = money(lots.reduce((sum, lot) => sum + lot.count * lot.price, 0))
  return (
    <Shell shop={shop} actor={actor}>
      <StockSections words={shop.words} section="/stock/lots" />
      <div className="page-head">
        <h1>Lots by count</h1>
        <Link className="button" href="/stock/lots/new">
          New lot
        </Link>
      </div>
      <SearchBar action="/stock/lots" value={search} label="Type, condition, location or note" />
      <section className="panel">
        <div className="panel-head">
          <h2>
            {count} {count === 1 ? words.tube : words.tubes}, untested or in bulk
          </h2>
          <span>{formatMoney(value, shop.currency, words.locale)} at asking prices, before tax</span>
        </div>
        {lots.length === 0 && <p className="soft">None{search ? ` for “${search}”` : ' written down yet'}.</p>}
        {lots.length > 0 && (
          // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
          <section className="table-scroll" tabIndex={0} aria-label="The lots">
            <table>
              <thead>
                <tr>
                  <th>Type</th>
                  <th>Condition</th>
                  <th className="num">Count</th>
                  <th className="num">Price</th>
                  <th>Location</th>
                  <th>Note</th>
                </tr>
              </thead>
              <tbody>
                {lots.map((lot) => (
                  <tr key={lot.id}>
                    <td>
                      <Link href={`/stock/lots/${lot.id}`}>{lot.designation}</Link>
                    </td>
                    <td>{capital(conditionWord(lot.condition))}</td>
                    <td className="num">{lot.count}</td>
                    <td className="num">{formatMoney(lot.price, shop.currency, words.locale)}</td>
                    <td>{lot.location}</td>
                    <td>{lot.note}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        )}
      </section>
    </Shell>
  )
}
