import type { Metadata } from 'next'
import Link from 'next/link'
import { SearchBar } from '@/app/_components/search-bar'
import { Shell } from '@/app/_components/shell/shell'
import { formatMoney } from '@/lib/domain/money'
import { isToReorder } from '@/lib/domain/stock/part'
import { capital, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listParts } from '@/lib/store/part'
import { StockSections } from '../stock-sections'

export const metadata: Metadata = { title: 'Parts' }

export default async function PartsPage({ searchParams }: PageProps<'/stock/parts'>) {
  const { actor, shop } = await requireUser()
  const { q } = await searchParams
  const search = typeof q === 'string' ? q : ''
  const parts = await listParts(search)
  const low = parts.filter(isToReorder)
  const { locale } = wordsFor(shop.words)
  return (
    <Shell shop={shop} actor={actor}>
      <StockSections words={shop.words} section="/stock/parts" />
      <div className="page-head">
        <h1>Parts</h1>
        <Link className="button" href="/stock/parts/new">
          New part
        </Link>
      </div>
      <SearchBar action="/stock/parts" value={search} label="Name, kind, value or location" />
      {low.length > 0 && (
        <section className="caution">
          <h2>To be ordered</h2>
          <ul>
            {low.map((part) => (
              <li key={part.id}>
                <Link href={`/stock/parts/${part.id}`}>
                  {part.name} {part.value}
                </Link>
                : {part.count} left, reorder at {part.reorderLevel}
              </li>
            ))}
          </ul>
        </section>
      )}
      <section className="panel">
        <h2>In the drawers</h2>
        {parts.length === 0 && <p className="soft">None{search ? ` for “${search}”` : ' written down yet'}.</p>}
        {parts.length > 0 && (
          // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
          <section className="table-scroll" tabIndex={0} aria-label="The parts">
            <table>
              <thead>
                <tr>
                  <th>Name</th>
                  <th>Kind</th>
                  <th>Value</th>
                  <th className="num">Count</th>
                  <th className="num">Reorder at</th>
                  <th className="num">Price</th>
                  <th>Location</th>
                </tr>
              </thead>
              <tbody>
                {parts.map((part) => (
                  <tr key={part.id}>
                    <td>
                      <Link href={`/stock/parts/${part.id}`}>{part.name}</Link>
                    </td>
                    <td>{capital(part.kind)}</td>
                    <td>{part.value}</td>
                    <td className="num">
                      {part.count}
                      {isToReorder(part) && (
                        <>
                          {' '}
                          <span className="tag" data-tone="warn" data-shape="!">
                            low
                          </span>
                        </>
                      )}
                    </td>
                    <td className="num">{part.reorderLevel ?? '–'}</td>
                    <td className="num">{formatMoney(part.price, shop.currency, locale)}</td>
                    <td>{part.location}</td>
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
