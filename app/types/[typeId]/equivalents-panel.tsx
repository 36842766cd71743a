/** Other numbers: of the very same tube, of a special-quality issue, and of what is merely similar. */
import Link from 'next/link'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { HandbookType, OtherNumber, SimilarType } from '@/lib/domain/tube/handbook-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { CardSources } from '@/lib/domain/tube/type-sources'
import { cardAddress } from '../card-address'
import { SourceMark } from './figure-text'

type Props = { readonly type: HandbookType; readonly sources: CardSources; readonly catalogue: TubeCatalogue }

const NONE = <span className="soft">none known here</span>

export function EquivalentsPanel({ type, sources, catalogue }: Props) {
  const same = type.otherNumbers.filter(({ kind }) => kind === 'other-number')
  const special = type.otherNumbers.filter(({ kind }) => kind === 'special-quality')
  return (
    <section className="panel">
      <h2>Other numbers</h2>
      <dl className="facts">
        <dt>The same under another number</dt>
        <dd>{same.length === 0 ? NONE : <Numbers numbers={same} sources={sources} />}</dd>
        <dt>Special-quality issues</dt>
        <dd>
          {special.length === 0 ? NONE : <Numbers numbers={special} sources={sources} />}
          {special.length > 0 && <div className="small soft">Figures stand in; their own sheets decide.</div>}
        </dd>
        <dt>Merely similar</dt>
        <dd>
          {type.similar.length === 0 ? (
            NONE
          ) : (
            <Similar similar={type.similar} sources={sources} catalogue={catalogue} />
          )}
          {type.similar.length > 0 && (
            <div className="small soft">Not the same. Check base, heater and ratings first.</div>
          )}
        </dd>
      </dl>
    </section>
  )
}

function Numbers({ numbers, sources }: { numbers: readonly OtherNumber[]; sources: CardSources }) {
  return numbers.map(({ number, of, source, note }, place) => (
    <span key={number}>
      {place > 0 && ', '}
      <span className="nowrap">
        {number}
        <SourceMark source={source} sources={sources} />
      </span>{' '}
      <span className="soft small">
        ({of}
        {note && `; ${note}`})
      </span>
    </span>
  ))
}

type SimilarProps = Omit<Props, 'type'> & { readonly similar: readonly SimilarType[] }

function Similar({ similar, sources, catalogue }: SimilarProps) {
  return similar.map(({ number, source, note }, place) => {
    const known = findTubeType(number, catalogue)
    return (
      <span key={number}>
        {place > 0 && ', '}
        <span className="nowrap">
          {known ? <Link href={cardAddress(known.typeId, number)}>{number}</Link> : number}
          <SourceMark source={source} sources={sources} />
        </span>
        {note && <span className="soft small"> ({note})</span>}
      </span>
    )
  })
}
