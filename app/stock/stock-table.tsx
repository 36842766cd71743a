import Link from 'next/link'
import { dayInZone, daysBetween } from '@/lib/domain/calendar'
import { formatMoney } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { activeHold, conditionWord, type StockedTube, type TubeTest } from '@/lib/domain/stock/tube'
import { plateCurrentText, settingText, transconductanceText } from '@/lib/domain/stock/tube-text'
import { capital, wordsFor } from '@/lib/domain/words'
import { PlaceTag } from './place-tag'
import styles from './stock.module.css'
import { ageText } from './stock-words'

type Props = { readonly tubes: readonly StockedTube[]; readonly shop: Shop; readonly now: Date }

export function StockTable({ tubes, shop, now }: Props) {
  const words = wordsFor(shop.words)
  return (
    <table className={styles.stock}>
      <thead>
        <tr>
          <th>Mark</th>
          <th>Type, condition</th>
          <th className="num">{capital(words.plate)} current</th>
          <th className="num">Transconductance, test point</th>
          <th>Tested</th>
          <th className="num">Price</th>
          <th>Standing, location</th>
        </tr>
      </thead>
      <tbody>
        {tubes.map((stocked) => (
          <StockRow key={stocked.tube.id} stocked={stocked} shop={shop} now={now} />
        ))}
      </tbody>
    </table>
  )
}

function StockRow({ stocked, shop, now }: Omit<Props, 'tubes'> & { readonly stocked: StockedTube }) {
  const { tube, test, shortsFoundAt } = stocked
  const sections = test?.sections ?? []
  return (
    <tr>
      <td className={styles.mark}>
        <Link href={`/stock/${tube.id}`}>{tube.mark}</Link>
      </td>
      <td>
        {tube.designation}
        <br />
        <span className="soft small">{capital(conditionWord(tube.condition))}</span>
      </td>
      <td className="num">{plateCurrentText(sections) || '–'}</td>
      <td className="num">
        {transconductanceText(sections) || '–'}
        {test && (
          <>
            <br />
            <span className="soft small">at {settingText(test)}</span>
          </>
        )}
      </td>
      <td>
        <TestAge test={test} shortsFoundAt={shortsFoundAt} shop={shop} now={now} />
      </td>
      <td className="num">{formatMoney(tube.price, shop.currency, wordsFor(shop.words).locale)}</td>
      <td>
        <PlaceTag tube={tube} now={now} />
        {activeHold(tube, now) !== '' && tube.heldForJobNumber && (
          <>
            {' '}
            <Link className="nowrap" href={`/jobs/${tube.heldForJobNumber}`}>
              job {tube.heldForJobNumber}
            </Link>
          </>
        )}
        <br />
        <span className="soft small">{tube.location}</span>
      </td>
    </tr>
  )
}

type AgeProps = {
  readonly test: TubeTest | null
  readonly shortsFoundAt: Date | null
  readonly shop: Shop
  readonly now: Date
}

function TestAge({ test, shortsFoundAt, shop, now }: AgeProps) {
  const today = dayInZone(now, shop.timeZone)
  const age = (at: Date) => daysBetween(dayInZone(at, shop.timeZone), today)
  if (shortsFoundAt) {
    return (
      <span className="tag" data-tone="warn" data-shape="✕">
        short, {ageText(age(shortsFoundAt))}
      </span>
    )
  }
  if (!test) return <span className="soft">untested</span>
  const days = age(test.testedAt)
  if (days <= shop.testAgeDays) return <span className="nowrap">{ageText(days)}</span>
  return (
    <span className="tag" data-tone="warn" data-shape="!">
      old: {ageText(days)}
    </span>
  )
}
