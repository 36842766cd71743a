import type { Metadata } from 'next'
import Link from 'next/link'
import { ScrollRegion } from '@/app/_components/scroll-region'
import { formatMoney, money } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { conditionWord } from '@/lib/domain/stock/tube'
import type { TubeLot } from '@/lib/domain/stock/tube-lot'
import { capital, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listLots } from '@/lib/store/tube-lot'
import { noneText, StockBook } from '../stock-book'

export const metadata: Metadata = { title: 'Lots' }

export default async function LotsPage({ searchParams }: PageProps<'/stock/lots'>) {
  const { actor, shop } = await requireUser()
  const { q } = await searchParams
  const search = typeof q === 'string' ? q : ''
  const lots = await listLots(search)
  const words = wordsFor(shop.words)
  const count = lots.reduce((sum, lot) => sum + lot.count, 0)
  const value = money(lots.reduce((sum, lot) => sum + lot.count * lot.price, 0))
  const book = { shop, actor, section: '/stock/lots', title: 'Lots by count', newText: 'New lot', search } as const
  return (
    <StockBook {...book} searchLabel="Type, condition, location or note">
      <section className="panel">
        <div className="panel-head">
          <h2>
            {count} {count === 1 ? words.tube : words.tubes}, untested or in bulk
          </h2>
          <span>{formatMoney(value, shop.currency, words.locale)} at asking prices, before tax</span>
        </div>
        {lots.length === 0 ? <p className="soft">{noneText(search)}</p> : <LotTable lots={lots} shop={shop} />}
      </section>
    </StockBook>
  )
}

function LotTable({ lots, shop }: { lots: readonly TubeLot[]; shop: Shop }) {
  const { locale } = wordsFor(shop.words)
  return (
    <ScrollRegion label="The lots">
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
              <td className="num">{formatMoney(lot.price, shop.currency, locale)}</td>
              <td>{lot.location}</td>
              <td>{lot.note}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  )
}
