import Link from 'next/link'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { HandbookType } from '@/lib/domain/tube/handbook-type'
import { resolutionText } from '@/lib/domain/tube/resolution-text'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { designationsOf } from '@/lib/domain/tube/type-search'
import type { KeptOwnType } from '@/lib/store/own-type'

type Props = {
  readonly type: HandbookType
  readonly own: KeptOwnType | null
  /** The number looked up. */
  readonly asked: string
  readonly catalogue: TubeCatalogue
  readonly mayKeep: boolean
}

export function CardHead({ type, own, asked, catalogue, mayKeep }: Props) {
  const found = asked === '' ? null : findTubeType(asked, catalogue)
  const names = designationsOf(type)
  const like = found?.typeId === type.id ? found.designation : (names[0] ?? type.id)
  return (
    <>
      <div className="page-head">
        <h1>
          {names.join(', ')} {own && <span className="soft">the shop’s own{own.active ? '' : ', withdrawn'}</span>}
        </h1>
        <span className="row no-print">
          <Link href="/types">All types</Link>
          {mayKeep && <Link href={`/types/new?like=${encodeURIComponent(like)}`}>Write down a type like it</Link>}
        </span>
      </div>
      {found?.typeId === type.id && found.resolution !== 'designation' && (
        <p className="form-message">{resolutionText(found)}</p>
      )}
    </>
  )
}
