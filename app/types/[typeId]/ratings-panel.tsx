/** Limits of each variant with the system they belong to: figures of two systems are never mixed. */
import { ratingSystemText } from '@/lib/domain/bias/bias-text'
import { limitName } from '@/lib/domain/tube/figure-names'
import type { Figure, HandbookRatings, HandbookType, HandbookVariant, LimitKey } from '@/lib/domain/tube/handbook-type'
import { ratingSystemMeaning } from '@/lib/domain/tube/rating-system'
import { ratingsOf } from '@/lib/domain/tube/tube-ratings'
import type { CardSources } from '@/lib/domain/tube/type-sources'
import { capital, type Words } from '@/lib/domain/words'
import { FigureText } from './figure-text'

type Props = { readonly type: HandbookType; readonly sources: CardSources; readonly words: Words }

export function RatingsPanel({ type, sources, words }: Props) {
  return (
    <section className="panel stack">
      <h2>Ratings</h2>
      {type.variants.map((variant) => (
        <VariantRatings key={variant.designations[0]} type={type} variant={variant} sources={sources} words={words} />
      ))}
      {type.otherSection && (
        <div>
          <h3>Other section</h3>
          <Limits ratings={type.otherSection} sources={sources} words={words} />
        </div>
      )}
    </section>
  )
}

function VariantRatings({ type, variant, ...rest }: Props & { readonly variant: HandbookVariant }) {
  const ratings = ratingsOf(type, variant)
  return (
    <div>
      <h3>{variant.designations.join(', ')}</h3>
      {ratings === null && (
        <p className="soft">
          None is given: no sheet was seen, or the sources contradict each other. Readings cannot be judged against one.
        </p>
      )}
      {ratings && variant.ratings === 'lowest-of-type' && (
        <p className="soft">No sheet of its own is known here. The lowest limits of the type stand in.</p>
      )}
      {ratings && <Limits ratings={ratings} {...rest} />}
    </div>
  )
}

type LimitsProps = Omit<Props, 'type'> & { readonly ratings: HandbookRatings }

function Limits({ ratings: { appliesTo, system, systemNote, limits, note }, sources, words }: LimitsProps) {
  return (
    <>
      <p className="soft">
        {capital(ratingSystemText(system))}, printed for {appliesTo}. {ratingSystemMeaning(system, words)}
        {systemNote && ` ${capital(systemNote).replace(/\.$/, '')}.`}
      </p>
      <div className="table-scroll">
        <table className="sheet">
          <thead>
            <tr>
              <th>Limit</th>
              <th className="num">Figure</th>
              <th>Remark</th>
            </tr>
          </thead>
          <tbody>
            {(Object.entries(limits) as [LimitKey, Figure][]).map(([key, figure]) => {
              const { label, unit } = limitName(key, words)
              return (
                <tr key={key}>
                  <th scope="row">{label}</th>
                  <td className="num">
                    <FigureText figure={figure} unit={unit} sources={sources} />
                  </td>
                  <td className="small">{figure[2]}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
      {note && <p className="small">{note}</p>}
    </>
  )
}
