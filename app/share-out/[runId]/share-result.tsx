/** Who gets what, how far that is proved, what goes without and what would help. */
import { LISTED } from '@/app/jobs/[jobNumber]/tubes/group-proposal'
import { LostTubes } from '@/app/jobs/[jobNumber]/tubes/lost-tubes'
import { formatDay } from '@/lib/domain/calendar'
import type { JobLine } from '@/lib/domain/job/job'
import { toldOf } from '@/lib/domain/matching/left-out'
import { figure, type MatchingFormat } from '@/lib/domain/matching/matching-text'
import { formatMoney } from '@/lib/domain/money'
import type { Shop } from '@/lib/domain/shop/shop'
import { capital, wordsFor } from '@/lib/domain/words'
import type { PlannedJob, SharePlan } from '@/lib/planning/sharing/share-plan'
import { firstComeText, proofText, servedText } from '@/lib/planning/sharing/share-text'
import { listOpenJobs } from '@/lib/store/job'
import { findDraftTubes } from '@/lib/store/quote'
import { ServedJob } from './served-job'
import { WithoutSets } from './without-sets'

type Props = { readonly plan: SharePlan; readonly runId: string; readonly shop: Shop }

export async function ShareResult({ plan, runId, shop }: Props) {
  const words = wordsFor(shop.words)
  const format: MatchingFormat = { words, formatMoney: (amount) => formatMoney(amount, shop.currency, words.locale) }
  const lines = new Map((await listOpenJobs()).map((line) => [line.number, line]))
  const served = plan.jobs.filter(({ sets }) => sets !== null)
  const onDraft = await Promise.all(served.map((job) => isOnDraft(job, lines.get(job.jobNumber))))
  return (
    <>
      <section className="panel stack" aria-labelledby="served">
        <h2 id="served">{servedText(plan)}</h2>
        {proofText(plan).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        <p>{firstComeText(plan.proof)}</p>
        <p className="soft">{limitsText(plan, format)}</p>
      </section>
      {served.map((job, at) => (
        <ServedJob
          key={job.jobNumber}
          job={job}
          line={lines.get(job.jobNumber) ?? null}
          accepted={onDraft[at] ?? false}
          yardsticks={plan.limits.yardsticks}
          runId={runId}
          format={format}
        />
      ))}
      <WithoutSets plan={plan} lines={lines} format={format} />
      {plan.leftOut.length > 0 && (
        <section className="panel stack" aria-labelledby="left-out">
          <h2 id="left-out">Cannot say, or not to be had</h2>
          <p className="soft">
            {capital(words.tubes)} of the types asked for that could stand in no set, and why. Testing those without a
            comparable reading may free more sets.
          </p>
          <LostTubes lost={toldOf(plan.leftOut, LISTED)} format={format} />
        </section>
      )}
    </>
  )
}

/** Its own tubes stand on its draft, all of them. */
async function isOnDraft({ sets }: PlannedJob, line: JobLine | undefined): Promise<boolean> {
  if (!line || !sets) return false
  const drafted = new Set((await findDraftTubes(line.id)).map(({ tubeId }) => tubeId))
  return sets.every(({ option }) => option.tubes.every(({ candidate }) => drafted.has(candidate.tubeId)))
}

function limitsText({ limits }: SharePlan, { words, formatMoney: money }: MatchingFormat): string {
  const { yardsticks, maximumTestAgeDays, priceCap, allowOverPrintedRating, oneDesignation, asOf } = limits
  const { plateCurrent, transconductance } = yardsticks
  const parts = [
    `sets within ${figure(1000 * plateCurrent, 2)} mA and ${figure(100 * transconductance, 2)} % as predicted in the amplifier where its circuit is known, else at the ${words.tubes}’ own test point`,
    maximumTestAgeDays === null ? 'tests of any age' : `tests not older than ${maximumTestAgeDays} days`,
    priceCap === null ? null : `${money(priceCap)} a set at most`,
    allowOverPrintedRating ? 'printed voltages may be exceeded' : null,
    oneDesignation ? 'one designation in a set' : null,
  ]
  return `Worked out on ${formatDay(asOf, words.locale)}: ${parts.filter(Boolean).join(', ')}.`
}
