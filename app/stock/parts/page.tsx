import type { Metadata } from 'next'
import Link from 'next/link'
import { ScrollRegion } from '@/app/_components/scroll-region'
import { formatMoney } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { isToReorder, type StockedPart } from '@/lib/domain/stock/part'
import { capital, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listStockedParts } from '@/lib/store/part-draw'
import { noneText, StockBook } from '../stock-book'
import { ToBeOrdered } from './to-be-ordered'

export const metadata: Metadata = { title: 'Parts' }

export default async function PartsPage({ searchParams }: PageProps<'/stock/parts'>) {
  const { actor, shop } = await requireUser()
  const { q } = await searchParams
  const search = typeof q === 'string' ? q : ''
  const parts = await listStockedParts(search)
  const book = { shop, actor, section: '/stock/parts', title: 'Parts', newText: 'New part', search } as const
  return (
    <StockBook {...book} searchLabel="Name, kind, value or location">
      <ToBeOrdered parts={parts} />
      <section className="panel">
        <h2>In the drawers</h2>
        {parts.length === 0 ? <p className="soft">{noneText(search)}</p> : <PartTable parts={parts} shop={shop} />}
      </section>
    </StockBook>
  )
}

function PartTable({ parts, shop }: { parts: readonly StockedPart[]; shop: Shop }) {
  const { locale } = wordsFor(shop.words)
  return (
    <ScrollRegion label="The parts">
      <table>
        <thead>
          <tr>
            <th>Name</th>
            <th>Kind</th>
            <th>Value</th>
            <th className="num">In drawer</th>
            <th className="num">Set aside for jobs</th>
            <th className="num">Free</th>
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
              <td className="num">{part.count}</td>
              <td className="num">{part.drawer.aside || '–'}</td>
              <td className="num">
                {part.drawer.free} <LowTag part={part} />
              </td>
              <td className="num">{part.reorderLevel ?? '–'}</td>
              <td className="num">{formatMoney(part.price, shop.currency, locale)}</td>
              <td>{part.location}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  )
}

function LowTag({ part }: { part: StockedPart }) {
  if (part.drawer.short === 0 && !isToReorder(part)) return null
  return (
    <span className="tag" data-tone="warn" data-shape="!">
      {part.drawer.short > 0 ? `${part.drawer.short} short` : 'low'}
    </span>
  )
}
