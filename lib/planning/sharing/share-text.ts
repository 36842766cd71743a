/** Every sentence on a sharing, in bench words: who is served, how that was proved, and what would help. */
import { figure, type MatchingFormat, spreadText, testPointText } from '@/lib/domain/matching/matching-text'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { POINTS_PER_YARDSTICK } from '@/lib/domain/matching/search/spread-cost'
import { money } from '@/lib/domain/money'
import type { Words } from '@/lib/domain/words'
import type { Progress } from '../worker/task'
import { type RelaxedGroup, type RelaxedLimit, SHOWN_SETS } from './relaxed-limits'
import type { BuyLine, BuyStep, Near, PlannedSet, SharePlan, ShareProof } from './share-plan'

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`
const jobs = (count: number): string => counted(count, 'job', 'jobs')
const yardsticks = (points: number): string => `${figure(points / POINTS_PER_YARDSTICK, 3)} yardsticks`

export function servedText({ jobs: all, proof }: SharePlan): string {
  const { jobsServed } = proof
  if (jobsServed === all.length)
    return all.length === 1 ? 'The job gets its tubes.' : `All ${all.length} jobs get their sets.`
  return `${jobsServed} of ${jobs(all.length)} ${jobsServed === 1 ? 'gets its sets' : 'get their sets'}.`
}

/** What is proved, and what is not. */
export function proofText(plan: SharePlan): readonly string[] {
  const { jobsServed, jobsAtMost, stop } = plan.proof
  const stopped = stop === 'time' ? ['The search stopped at its time limit; what follows is proved all the same.'] : []
  if (jobsServed < jobsAtMost)
    return [
      ...stopped,
      `No way of sharing these tubes serves more than ${jobs(jobsAtMost)} (proved). Whether more than ${jobsServed} can be served is not settled.`,
    ]
  const most = jobsServed === plan.jobs.length ? [] : ['More is not possible with these tubes and limits (proved).']
  return [...stopped, ...most, ...(jobsServed > 0 ? [closenessText(plan.proof)] : [])]
}

/** Cost holds what value kept and missing readings count, so it is called by what it is. */
function closenessText({ cost, costAtLeast }: ShareProof): string {
  if (cost - costAtLeast < 1)
    return 'No other way of serving as many gives closer sets, with dear tubes kept back where a cheaper one does as well (proved).'
  return `The sets together count ${yardsticks(cost)}, spread and value kept; no way of serving as many counts less than ${yardsticks(costAtLeast)} (proved).`
}

export function firstComeText({ jobsServed, cost, greedy }: ShareProof): string {
  if (greedy.jobsServed < jobsServed)
    return `First come, first served would serve ${jobs(greedy.jobsServed)}: ${jobsServed - greedy.jobsServed} fewer.`
  const wider = greedy.cost - cost
  if (greedy.jobsServed === jobsServed && wider >= 1)
    return `First come, first served would serve as many, with sets that count ${yardsticks(wider)} more together.`
  return 'First come, first served would do as well here.'
}

/** What to buy for a job, or why buying does not help. */
export function buyTexts({ lines, ratingRefuses }: BuyStep, format: MatchingFormat): string[] {
  if (!ratingRefuses) return lines.map((line) => `${buyLineText(line, format)}.`)
  return [`Buying more of the type does not help: its printed voltages are below those of these sockets.`]
}

function buyLineText({ count, designation, near, group }: BuyLine, format: MatchingFormat): string {
  const what = `${count} ${near ? 'more ' : ''}${designation}${group === '' ? '' : ` for “${group}”`}`
  return near
    ? `${what}, ${nearText(near, format)}`
    : `${what}: nothing in stock can stand beside ${count === 1 ? 'it' : 'them'}`
}

function nearText(near: Near, format: MatchingFormat): string {
  const { lowestCurrent, highestCurrent, transconductance, marks, instrument, testPoint } = near
  const milliamps = (value: number) => figure(1000 * value, 2)
  const slope = transconductance
    ? ` and ${milliamps(transconductance.lowest)} to ${milliamps(transconductance.highest)} mA/V`
    : ''
  const read = `${milliamps(lowestCurrent)} to ${milliamps(highestCurrent)} mA${slope}`
  if (near.predicted) return `that would idle there at ${read}, to go with ${marks.join(', ')}; only a test tells`
  return `read ${read} on ${instrument} at ${testPointText(testPoint, format)}, to go with ${marks.join(', ')}`
}

/** "2 more 6L6GC would free 1 job; 6 more would free 2": by type, in the order that frees most for least. */
export function freedTexts(buy: readonly BuyStep[]): string[] {
  const steps = buy.filter(
    ({ lines, ratingRefuses }) => !ratingRefuses && new Set(lines.map(({ designation }) => designation)).size === 1,
  )
  const types = [...new Set(steps.map(({ lines }) => lines[0]?.designation ?? ''))]
  return types.map((designation) => {
    let tubes = 0
    const freed = steps
      .filter(({ lines }) => lines[0]?.designation === designation)
      .map((step, at) => {
        tubes += step.tubes
        return `${tubes} more would free ${jobs(at + 1)}`
      })
    return `${designation}: ${freed.join('; ')}, if they read as said below.`
  })
}

export function progressText({ stage, figures }: Progress): string {
  const { rounds = 0, sets = 0, jobsAtMost = 0, jobs: all = 0 } = figures
  if (stage === 'predicting')
    return `What the stock would do in the amplifier of job ${figures.job ?? 0} of ${all} is being predicted.`
  if (stage !== 'share-round') return 'At work.'
  const bound = jobsAtMost < all ? ` No more than ${jobs(jobsAtMost)} of ${all} can be served.` : ''
  return `Round ${rounds}: ${counted(sets, 'set', 'sets')} weighed against each other.${bound}`
}

/** What giving this job other tubes would cost it. */
export function swapText({ swap }: Pick<PlannedSet, 'swap'>, { formatMoney }: MatchingFormat): string {
  if (!swap) return 'Nothing that is left over could stand in for it.'
  const marks = swap.tubes.map(({ candidate }) => candidate.mark).join(', ')
  if (swap.tubes.length === 1) return `Left over and as fit: ${marks}${priceStep(swap, formatMoney)}.`
  const { lost } = swap
  const step = (value: number, text: string) => `${text} ${value < 0 ? 'closer' : 'wider'}`
  const parts = [
    lost && lost.plateCurrent !== 0
      ? step(lost.plateCurrent, `${figure(1000 * Math.abs(lost.plateCurrent), swap.predicted ? 1 : 2)} mA`)
      : 'as close in current',
    lost?.transconductance
      ? step(lost.transconductance, `${figure(100 * Math.abs(lost.transconductance), 2)} % of transconductance`)
      : null,
  ].filter(Boolean)
  return `A swap to ${marks}: ${parts.join(', ')}${priceStep(swap, formatMoney)}.`
}

function priceStep({ lost }: SetOption, formatMoney: MatchingFormat['formatMoney']): string {
  if (!lost || lost.price === 0) return ', at the same price'
  return `, ${formatMoney(money(Math.abs(lost.price)))} ${lost.price > 0 ? 'dearer' : 'cheaper'}`
}

/** For a group that no sharing could serve: which limit stands in the way. */
export function relaxedTexts({ without, closest, untested }: RelaxedGroup, { words }: MatchingFormat): string[] {
  const sets = (count: number) => (count >= SHOWN_SETS ? `${SHOWN_SETS} sets or more` : counted(count, 'set', 'sets'))
  return [
    ...without.map(({ limit, sets: count }) => `${relaxedLimitText(limit, words)}: ${sets(count)}.`),
    ...(closest ? [`Widen the tolerances: the closest set there is lies ${spreadText(closest)}.`] : []),
    ...(untested > 0 ? [`Test ${counted(untested, words.tube, words.tubes)} without a usable record.`] : []),
  ]
}

function relaxedLimitText(limit: RelaxedLimit, { tubes }: Words): string {
  switch (limit) {
    case 'test-age':
      return 'Accept older tests'
    case 'printed-rating':
      return `Take ${tubes} beyond their printed voltages`
    case 'price-cap':
      return 'Raise the price limit'
    case 'reserved':
      return 'Release what is held or stands on drafts'
  }
}
