import type { Metadata } from 'next'
import { HistoryList } from '@/app/_components/history-list'
import { mayDo } from '@/lib/domain/person/role'
import type { Shop } from '@/lib/domain/shop/shop'
import { shopShown } from '@/lib/domain/shop/shop-shown'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listHistoryOf } from '@/lib/store/history'
import { pickLists } from './pick-lists'
import { KeeperOnly, SettingsFrame } from './settings-frame'
import { ShopForm } from './shop-form'
import { shopValues } from './shop-schema'

export const metadata: Metadata = { title: 'Settings' }

export default async function SettingsPage() {
  const { actor, shop } = await requireUser()
  const words = wordsFor(shop.words)
  const history = await listHistoryOf('shop', '1')
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings">
      <h1>Shop</h1>
      <div className="columns">
        <div className="panel">
          {mayDo(actor, 'keep-shop') ? (
            <ShopForm values={shopValues(shop)} lists={pickLists(words.locale)} words={words} />
          ) : (
            <ShopFacts shop={shop} />
          )}
        </div>
        <HistoryList history={history} shop={shop} />
      </div>
    </SettingsFrame>
  )
}

function ShopFacts({ shop }: { shop: Shop }) {
  return (
    <div className="stack">
      <KeeperOnly />
      <dl className="facts">
        {[...shopShown(shop)].map(([label, value]) => (
          <div key={label} style={{ display: 'contents' }}>
            <dt>{label}</dt>
            <dd>{value || '—'}</dd>
          </div>
        ))}
      </dl>
    </div>
  )
}
