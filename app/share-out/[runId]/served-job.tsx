/** What one job gets, why that may be called a match, and the button that puts it on the quote. */
import Link from 'next/link'
import { PressForm } from '@/app/jobs/[jobNumber]/press-form'
import { SetTable } from '@/app/jobs/[jobNumber]/tubes/set-table'
import { socketsFor } from '@/lib/domain/bench/group-demand'
import type { JobLine } from '@/lib/domain/job/job'
import type { Yardsticks } from '@/lib/domain/matching/candidate'
import { carriedSetText } from '@/lib/domain/matching/carried-text'
import { matchStatement } from '@/lib/domain/matching/match-statement'
import { arrangementText, type MatchingFormat, setCautionText } from '@/lib/domain/matching/matching-text'
import { matchStatementText, testStatementText } from '@/lib/domain/matching/statement-text'
import { money } from '@/lib/domain/money'
import type { PlannedJob, PlannedSet } from '@/lib/planning/sharing/share-plan'
import { swapText } from '@/lib/planning/sharing/share-text'
import { submitAccept } from '../actions'
import styles from '../share-out.module.css'

type Props = {
  readonly job: PlannedJob
  readonly line: JobLine | null
  /** It stands on the draft quote. */
  readonly accepted: boolean
  readonly yardsticks: Yardsticks
  readonly runId: string
  readonly format: MatchingFormat
}

export function ServedJob({ job, line, accepted, yardsticks, runId, format }: Props) {
  const { jobNumber } = job
  const sets = job.sets ?? []
  const price = money(sets.reduce((sum, { option }) => sum + option.price, 0))
  return (
    <section className={`panel stack ${styles.job}`} aria-labelledby={`job-${jobNumber}`}>
      <div className="panel-head">
        <h2 id={`job-${jobNumber}`}>
          <Link href={`/jobs/${jobNumber}`}>{jobNumber}</Link> {line && `${line.ampName}, ${line.customerName}`}
        </h2>
        <strong>{format.formatMoney(price)}</strong>
      </div>
      {sets.map((set) => (
        <SharedSetTable key={set.group} set={set} yardsticks={yardsticks} format={format} />
      ))}
      {accepted ? (
        <p className="form-message" data-status="saved">
          On the draft quote. <Link href={`/jobs/${jobNumber}/quote`}>To the quote</Link>
        </p>
      ) : (
        <PressForm action={submitAccept.bind(null, runId, jobNumber)}>Accept for this job</PressForm>
      )}
    </section>
  )
}

type SetProps = { readonly set: PlannedSet; readonly yardsticks: Yardsticks; readonly format: MatchingFormat }

function SharedSetTable({ set, yardsticks, format }: SetProps) {
  const { option, group, designation } = set
  const statement = matchStatement(option, yardsticks, set.readOn)
  const placed = socketsFor(option.tubes, set.sockets)
  const alone = option.tubes.length === 1
  return (
    <div className={styles.set}>
      <h3>
        {option.tubes.length} × {designation} for “{group}”
      </h3>
      {carriedSetText(option) && <p className="soft">{carriedSetText(option)}.</p>}
      <SetTable placed={placed} predicted={option.predicted} format={format} />
      {option.cautions.map((caution) => (
        <p key={caution.code} className={styles.caution}>
          {setCautionText(caution)}
        </p>
      ))}
      <p className="soft small">
        {alone ? testStatementText(statement, format) : matchStatementText(statement, format)}{' '}
        {arrangementText(option, format)}
      </p>
      {set.notPredicted !== null && <p className="soft small">Compared at the test points: {set.notPredicted}</p>}
      <p className="small">{swapText(set, format)}</p>
    </div>
  )
}
