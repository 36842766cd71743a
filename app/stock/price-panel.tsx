/** Three neighbours of a price, always three: where the list says nothing, that is said. */
import type { Shop } from '@/lib/domain/shop/shop'
import type { PricedFor } from '@/lib/domain/stock/price-neighbours'
import { linesFor } from './look-up-prices'
import { PriceList } from './price-list'

export async function PricePanel({ wanted, shop }: { wanted: PricedFor; shop: Shop }) {
  return (
    <section className="panel">
      <h2>Asked beside it</h2>
      <PriceList lines={await linesFor(wanted, shop)} />
    </section>
  )
}
