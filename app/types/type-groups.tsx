/** Every type found, by what it is for. */
import Link from 'next/link'
import { catalogueModel, catalogueRectifier } from '@/lib/domain/model/catalogue-model'
import type { HandbookType } from '@/lib/domain/tube/handbook-type'
import { ownTubeType, type TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { ratingsOf } from '@/lib/domain/tube/tube-ratings'
import type { TubeRole } from '@/lib/domain/tube/tube-variant'
import { designationsOf, type FoundType } from '@/lib/domain/tube/type-search'
import { capital, type Words } from '@/lib/domain/words'
import { cardAddress } from './card-address'

type Props = {
  readonly found: readonly FoundType[]
  readonly catalogue: TubeCatalogue
  readonly words: Words
  readonly search: string
}

const GROUPS: readonly (readonly [TubeRole, (words: Words) => string])[] = [
  ['output', ({ tubes }) => `Output ${tubes}`],
  ['small-signal', ({ tubes }) => `Small-signal ${tubes}`],
  ['rectifier', () => 'Rectifiers'],
]

export function TypeGroups(props: Props) {
  return GROUPS.map(([role, title]) => {
    const own = props.found.filter(({ type }) => type.role === role)
    if (own.length === 0) return null
    return (
      <section key={role} className="panel">
        <h2>
          {title(props.words)} <span className="soft">({own.length})</span>
        </h2>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
        <section className="table-scroll" tabIndex={0} aria-label={title(props.words)}>
          <TypeTable {...props} found={own} role={role} />
        </section>
      </section>
    )
  })
}

function TypeTable({ found, words, role, ...rest }: Props & { readonly role: TubeRole }) {
  const limit = role === 'rectifier' ? 'Output current, mA' : `${capital(words.plate)} rating, W`
  return (
    <table>
      <thead>
        <tr>
          <th>Type</th>
          <th>Class</th>
          <th>Base</th>
          <th className="num">Heater</th>
          <th className="num">{limit}</th>
          <th>Curves</th>
        </tr>
      </thead>
      <tbody>
        {found.map((each) => (
          <TypeRow key={each.type.id} found={each} words={words} role={role} {...rest} />
        ))}
      </tbody>
    </table>
  )
}

type RowProps = Omit<Props, 'found'> & { readonly found: FoundType; readonly role: TubeRole }

function TypeRow({ found: { type, numbers }, role, catalogue, search }: RowProps) {
  const [heater] = type.heaters
  return (
    <tr>
      <td>
        <Link href={cardAddress(type.id, search === '' ? undefined : search)}>{designationsOf(type).join(', ')}</Link>
        {ownTubeType(catalogue, type.id) && (
          <>
            {' '}
            <span className="tag" data-shape="◆">
              the shop’s own
            </span>
          </>
        )}
        {numbers.length > 0 && <div className="small soft">also {numbers.join(', ')}</div>}
      </td>
      <td>{type.className}</td>
      <td className="nowrap">{type.base.name}</td>
      <td className="num">{heater && `${heater.volts[0]} V, ${heater.amps[0]} A`}</td>
      <td className="num">{limitSpan(type, role)}</td>
      <td>{curvesWord(type, catalogue)}</td>
    </tr>
  )
}

/** "12 to 14" over the variants; of an unrated type nothing. */
function limitSpan(type: HandbookType, role: TubeRole): string {
  const key = role === 'rectifier' ? 'outputMilliamps' : 'plateWatts'
  const limits = type.variants.flatMap((variant) => ratingsOf(type, variant)?.limits[key]?.[0] ?? [])
  if (limits.length === 0) return 'none given'
  const [low, high] = [Math.min(...limits), Math.max(...limits)]
  return low === high ? String(low) : `${low} to ${high}`
}

function curvesWord(type: HandbookType, catalogue: TubeCatalogue): string {
  if (type.role === 'rectifier') return catalogueRectifier(type.id, catalogue).ok ? 'from its drop' : 'none'
  const model = catalogueModel(type.id, catalogue)
  if (!model.ok) return 'none'
  const { standIn, curvesOf } = model.value
  if (standIn === 'own') return 'its own'
  return `${standIn === 'same' ? 'those of' : 'like'} ${curvesOf}`
}
