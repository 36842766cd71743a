/** What is known of one stocked tube, and what its type stands for. */
import Link from 'next/link'
import { formatInstant } from '@/lib/domain/calendar'
import { formatMoney } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import type { StockType } from '@/lib/domain/stock/stock-type'
import { activeHold, conditionWord, type Tube } from '@/lib/domain/stock/tube'
import { resolutionText } from '@/lib/domain/tube/resolution-text'
import { capital, wordsFor } from '@/lib/domain/words'
import type { SetMember } from '@/lib/store/tube-set'
import { cardAddress } from '../../types/card-address'
import { PlaceTag } from '../place-tag'
import { FurtherFacts } from './further-facts'

type Props = {
  readonly tube: Tube
  readonly type: StockType
  readonly shop: Shop
  readonly now: Date
  readonly members: readonly SetMember[]
}

export function TubeFacts({ tube, type, shop, now, members }: Props) {
  const { locale } = wordsFor(shop.words)
  const price = (amount: NonNullable<Tube['cost']>) => formatMoney(amount, shop.currency, locale)
  return (
    <section className="panel">
      <h2>{tube.designation}</h2>
      <dl className="facts">
        <dt>Where it is</dt>
        <dd>
          <PlaceTag tube={tube} now={now} /> {tube.whereabouts === 'in-stock' && tube.location}
        </dd>
        {activeHold(tube, now) !== '' && (
          <>
            <dt>For</dt>
            <dd>
              {tube.heldForJobNumber ? (
                <Link href={`/jobs/${tube.heldForJobNumber}`}>job {tube.heldForJobNumber}</Link>
              ) : (
                'another job'
              )}
              {tube.heldUntil && `, until ${formatInstant(tube.heldUntil, shop.timeZone, locale)}`}
            </dd>
          </>
        )}
        <dt>Condition</dt>
        <dd>{capital(conditionWord(tube.condition))}</dd>
        <dt>Price</dt>
        <dd>{price(tube.price)}</dd>
        <dt>Paid</dt>
        <dd>{tube.cost === null ? 'not known' : price(tube.cost)}</dd>
        <dt>Construction</dt>
        <dd>{tube.construction || 'nothing noted'}</dd>
        <dt>How it came</dt>
        <dd>{tube.acquired || 'nothing noted'}</dd>
        <FurtherFacts tubeId={tube.id} further={tube.further} members={members} locale={locale} />
        <TypeFacts type={type} shop={shop} />
      </dl>
      {type.variant?.resolution === 'own-letters' && (
        <p className="form-message">
          {resolutionText(type.variant)} It can be{' '}
          <Link href={`/types/new?designation=${encodeURIComponent(type.designation)}`}>written down</Link> as a type of
          its own.
        </p>
      )}
      {type.variant === null && (
        <p className="form-message">
          The handbook here does not know “{type.designation}”: no base, no ratings. It is kept under that name, and no
          limit is checked for it. It can be{' '}
          <Link href={`/types/new?designation=${encodeURIComponent(type.designation)}`}>written down</Link> under{' '}
          {capital(wordsFor(shop.words).tube)} data.
        </p>
      )}
    </section>
  )
}

function TypeFacts({ type, shop }: Pick<Props, 'type' | 'shop'>) {
  const { variant, family } = type
  const { plate } = wordsFor(shop.words)
  if (!variant) return null
  const { ratings, base, designation, ratingsStandIn } = variant
  const limits = [
    ratings?.plateWatts && `${ratings.plateWatts.value} W on the ${plate}`,
    ratings?.plateVolts && `${ratings.plateVolts.value} V ${plate}`,
    ratings?.screenVolts && `${ratings.screenVolts.value} V screen`,
  ].filter(Boolean)
  return (
    <>
      <dt>Type card</dt>
      <dd>
        <Link href={cardAddress(variant.typeId, type.designation)}>Figures, pins and curves of the {designation}</Link>
      </dd>
      <dt>Family and base</dt>
      <dd>
        {family}, {base.name} ({base.eia})
      </dd>
      <dt>Printed ratings</dt>
      <dd>
        {limits.join(', ') || 'none known here'}
        {limits.length > 0 && ratingsStandIn && ` (those of the ${designation} stand in)`}
      </dd>
    </>
  )
}
