/** Three neighbours of a price, always three: where the list says nothing, that is said. */
import { formatMoney, type Money } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { type Asked, type PricedFor, priceNeighbours } from '@/lib/domain/stock/price-neighbours'
import { stockType } from '@/lib/domain/stock/stock-type'
import { conditionWord } from '@/lib/domain/stock/tube'
import { wordsFor } from '@/lib/domain/words'
import { listStockForFamily } from '@/lib/store/tube'

export async function PricePanel({ wanted, shop }: { wanted: PricedFor; shop: Shop }) {
  const { family } = stockType(wanted.designation, shop)
  const { same, pair, lesser } = priceNeighbours(wanted, await listStockForFamily(family))
  const words = wordsFor(shop.words)
  const price = (amount: Money) => formatMoney(amount, shop.currency, words.locale)
  const range = ({ low, high, count }: Asked) =>
    count === 1 ? 'one of them' : `${count} of them, ${low === high ? 'all alike' : `${price(low)} to ${price(high)}`}`
  return (
    <section className="panel">
      <h2>Asked beside it</h2>
      <dl className="facts">
        <dt>The same</dt>
        <dd>
          {same
            ? `${price(same.price)}: ${wanted.designation}, ${conditionWord(wanted.condition)}${same.byStrength ? ', as strong within 10 %' : ', any strength'}; ${range(same)}.`
            : `No other ${wanted.designation}, ${conditionWord(wanted.condition)}, has a price here.`}
        </dd>
        <dt>In a matched set</dt>
        <dd>
          {pair
            ? `${pair.adds < 0 ? '' : '+ '}${price(pair.adds)} for each: ${price(pair.paired.price)} in a set against ${price(pair.alone.price)} alone.`
            : `No ${wanted.designation} is priced both in a set and alone, so the list does not say what a set adds.`}
        </dd>
        <dt>A lesser variant</dt>
        <dd>
          {lesser
            ? `${price(lesser.price)}: ${lesser.designation}; ${range(lesser)}.`
            : `None of its family costs less here.`}
        </dd>
      </dl>
    </section>
  )
}
