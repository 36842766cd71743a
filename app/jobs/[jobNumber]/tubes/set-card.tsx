/** One set, ready to be chosen: which tube in which socket, how alike, what it costs and what it loses. */
import Link from 'next/link'
import type { Socket } from '@/lib/domain/amp/socket'
import { socketsFor } from '@/lib/domain/bench/group-demand'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { matchStatement } from '@/lib/domain/matching/match-statement'
import {
  arrangementText,
  figure,
  gradeText,
  lostText,
  type MatchingFormat,
  matchStatementText,
  setCautionText,
  spreadText,
  testStatementText,
  tubeCautionText,
} from '@/lib/domain/matching/matching-text'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { conditionWord } from '@/lib/domain/stock/tube'
import { capital } from '@/lib/domain/words'
import { submitChoice } from './actions'
import { ChooseForm } from './choose-form'
import type { Limits } from './limits-form'
import styles from './set-card.module.css'

type Props = {
  readonly title: string
  readonly option: SetOption
  readonly format: MatchingFormat
  readonly sockets: readonly Socket[]
  readonly group: string
  readonly jobNumber: string
  readonly limits: Limits
}

export function SetCard({ title, option, format, sockets, group, jobNumber, limits }: Props) {
  const placed = socketsFor(option.tubes, sockets)
  const statement = matchStatement(option, USUAL_YARDSTICKS)
  const found = {
    group,
    set: option.key,
    ...limits.typed,
    ...(limits.over ? { over: 'on' } : {}),
    ...(limits.one ? { one: 'on' } : {}),
  }
  const lost = lostText(option, format)
  const arrangement = arrangementText(option, format)
  const alone = option.tubes.length === 1
  return (
    <article className={styles.card}>
      <div className={styles.head}>
        <h3>{title}</h3>
        <strong className={styles.price}>{format.formatMoney(option.price)}</strong>
      </div>
      {!alone && (
        <p>
          {capital(spreadText(option.spreads))}. {gradeText(option.match, USUAL_YARDSTICKS)} {lost}
        </p>
      )}
      <div className="table-scroll">
        <table>
          <thead>
            <tr>
              <th>Socket</th>
              <th>Mark</th>
              <th>Type</th>
              <th>Condition</th>
              <th className="num">{capital(format.words.plate)} current</th>
              <th className="num">Transconductance</th>
              <th className="num">Price</th>
            </tr>
          </thead>
          <tbody>
            {placed.map(({ tube: { candidate, cautions, side }, position }) => (
              <tr key={candidate.tubeId}>
                <th scope="row">
                  {position} {side && <span className="soft">side {side}</span>}
                </th>
                <td>
                  <Link href={`/stock/${candidate.tubeId}`}>{candidate.mark}</Link>
                </td>
                <td>{candidate.designation}</td>
                <td>
                  {conditionWord(candidate.condition)}
                  {cautions.map((caution) => (
                    <p key={caution.code} className={styles.caution}>
                      {tubeCautionText(caution, format)}
                    </p>
                  ))}
                </td>
                <td className="num">{figure(1000 * candidate.test.plateCurrent, 2)} mA</td>
                <td className="num">
                  {candidate.test.transconductance === null ? (
                    <span className="soft">not read</span>
                  ) : (
                    `${figure(1000 * candidate.test.transconductance, 2)} mA/V`
                  )}
                </td>
                <td className="num">{format.formatMoney(candidate.price)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {option.cautions.map((caution) => (
        <p key={caution.code} className={styles.caution}>
          {setCautionText(caution)}
        </p>
      ))}
      <p className="soft small">
        {alone ? testStatementText(statement, format) : matchStatementText(statement, format)} {arrangement}
      </p>
      <ChooseForm action={submitChoice.bind(null, jobNumber)} values={found} />
    </article>
  )
}
