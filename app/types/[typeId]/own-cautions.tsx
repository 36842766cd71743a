import type { Shop } from '@/lib/domain/shop/shop'
import { ownTypeCautions } from '@/lib/domain/tube/own/own-type-cautions'
import { ownTypeCautionText } from '@/lib/domain/tube/own/own-type-text'
import { wordsFor } from '@/lib/domain/words'
import type { KeptOwnType } from '@/lib/store/own-type'
import { CautionList } from '../caution-list'

export function OwnCautions({ type, shop }: { type: KeptOwnType; shop: Shop }) {
  const words = wordsFor(shop.words)
  const sentences = ownTypeCautions(type.entry).map((caution) => ownTypeCautionText(caution, words))
  return (
    <>
      {!type.active && (
        <p className="caution">
          This type is withdrawn: it is looked up no more, and sheets, stock and readings that name it have no ratings.
        </p>
      )}
      <CautionList title="Worth a second look" sentences={sentences} />
    </>
  )
}
