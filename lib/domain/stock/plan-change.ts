/** What is no longer as it was when a plan over the stock was made, and the sentence for it. */
import { formatDay } from '@/lib/domain/calendar'
import type { TubeTest } from '@/lib/domain/matching/candidate'
import type { Words } from '@/lib/domain/words'
import type { Whereabouts } from './tube'

export type PlanChange =
  | { readonly what: 'gone'; readonly mark: string; readonly whereabouts: Whereabouts | null }
  | { readonly what: 'held'; readonly mark: string; readonly jobNumber: string | null }
  | { readonly what: 'on-draft'; readonly mark: string; readonly jobNumber: string }
  | { readonly what: 'rejected'; readonly mark: string }
  /** Null: no usable record any more. */
  | { readonly what: 'read-again'; readonly mark: string; readonly before: TubeTest; readonly now: TubeTest | null }
  | { readonly what: 'price'; readonly mark: string }
  | { readonly what: 'sockets'; readonly group: string }
  | { readonly what: 'amplifier-read' }

export function planChangeText(change: PlanChange, words: Words): string {
  switch (change.what) {
    case 'gone':
      return change.whereabouts === null
        ? `${change.mark} is no longer on file`
        : `${change.mark} is ${change.whereabouts === 'fitted' ? 'fitted in an amplifier' : change.whereabouts} now`
    case 'held':
      return `${change.mark} is held for ${change.jobNumber ? `job ${change.jobNumber}` : 'another job'} now`
    case 'on-draft':
      return `${change.mark} stands on the draft quote of job ${change.jobNumber}`
    case 'rejected':
      return `${change.mark} is marked as a reject now`
    case 'read-again':
      return `${change.mark} was tested again: ${readText(change.before, words)}, then ${change.now ? readText(change.now, words) : 'no usable reading'}`
    case 'price':
      return `the price of ${change.mark} was changed`
    case 'sockets':
      return `the sockets of “${change.group}” were changed on the sheet`
    case 'amplifier-read':
      return 'the amplifier was read again, so what its sockets ask for may have changed'
  }
}

function readText({ testedAt, plateCurrent, transconductance, shorts }: TubeTest, { locale }: Words): string {
  const milli = (value: number) => String(Number((1000 * value).toFixed(2)))
  const slope = transconductance === null ? '' : ` and ${milli(transconductance)} mA/V`
  return `${milli(plateCurrent)} mA${slope}${shorts ? ' with a short' : ''} on ${formatDay(testedAt.slice(0, 10), locale)}`
}
