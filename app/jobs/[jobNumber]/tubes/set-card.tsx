/** One set, ready to be chosen: which tube in which socket, how alike, what it costs and what it loses. */
import type { Socket } from '@/lib/domain/amp/socket'
import { socketsFor } from '@/lib/domain/bench/group-demand'
import { carriedSetText } from '@/lib/domain/matching/carried-text'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { matchStatement } from '@/lib/domain/matching/match-statement'
import {
  arrangementText,
  gradeText,
  lostText,
  type MatchingFormat,
  setCautionText,
  sidesText,
  spreadText,
} from '@/lib/domain/matching/matching-text'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { matchStatementText, testStatementText } from '@/lib/domain/matching/statement-text'
import type { PlanBasis } from '@/lib/domain/stock/plan-basis'
import { capital } from '@/lib/domain/words'
import { type SeenChoice, seenTube } from '@/lib/workflow/tubes/seen-choice'
import { submitChoice } from './actions'
import { ChooseForm } from './choose-form'
import type { ShownSet } from './group-proposal'
import type { Limits } from './limits-form'
import { roleReasons, rolesOfOne, rolesTitle } from './role-text'
import styles from './set-card.module.css'
import { SetTable } from './set-table'

type Props = {
  readonly shown: ShownSet
  readonly format: MatchingFormat
  readonly sockets: readonly Socket[]
  readonly group: string
  readonly jobNumber: string
  readonly limits: Limits
  readonly mayChoose: boolean
  /** What the records were before the set was worked out. */
  readonly basis: PlanBasis
  /** Date of the readings that predicted figures rest on. */
  readonly readOn: string | null
}

export function SetCard({ shown, format, sockets, group, jobNumber, limits, mayChoose, basis, readOn }: Props) {
  const { option } = shown
  const placed = socketsFor(option.tubes, sockets)
  const statement = matchStatement(option, USUAL_YARDSTICKS, readOn)
  const lost = lostText(option, format)
  const arrangement = arrangementText(option, format)
  const alone = option.tubes.length === 1
  const roles = alone ? rolesOfOne(shown.roles) : shown.roles
  return (
    <article className={styles.card}>
      <div className={styles.head}>
        <h3>{rolesTitle({ option, roles }, format.words)}</h3>
        <strong className={styles.price}>{format.formatMoney(option.price)}</strong>
      </div>
      {roleReasons({ option, roles }, format.words).map((reason) => (
        <p key={reason} className="soft small">
          {reason}
        </p>
      ))}
      {!alone && (
        <p>
          {capital([spreadText(option.spreads, option.predicted), sidesText(option)].filter(Boolean).join('; '))}.{' '}
          {gradeText(option.match, USUAL_YARDSTICKS, option.predicted)} {lost}
        </p>
      )}
      {carriedSetText(option) && (
        <p>
          <span className={`tag ${styles.wrapped}`} data-tone="note" data-shape="→">
            {carriedSetText(option)}
          </span>
        </p>
      )}
      <SetTable placed={placed} predicted={option.predicted} format={format} />
      {option.cautions.map((caution) => (
        <p key={caution.code} className={styles.caution}>
          {setCautionText(caution)}
        </p>
      ))}
      <p className="soft small">
        {alone ? testStatementText(statement, format) : matchStatementText(statement, format)} {arrangement}
      </p>
      {mayChoose && (
        <ChooseForm
          action={submitChoice.bind(null, jobNumber)}
          values={{ ...found(group, option.key, limits), seen: seenText(option, basis) }}
        />
      )}
    </article>
  )
}

const seenText = ({ tubes }: SetOption, basis: PlanBasis): string => {
  const seen: SeenChoice = { basis, tubes: tubes.map(({ candidate }) => seenTube(candidate)) }
  return JSON.stringify(seen)
}

const found = (group: string, set: string, { typed, over, one, at, on }: Limits) => ({
  group,
  set,
  ...typed,
  ...(over ? { over: 'on' } : {}),
  ...(one ? { one: 'on' } : {}),
  ...(at === 'test-point' ? { at } : {}),
  ...(on === '' ? {} : { on }),
})
