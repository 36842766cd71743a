/** What is no longer as it was when a plan over the stock was made, and the sentence for it. */
import { formatDay } from '@/lib/domain/calendar'
import { type Change, changeSentence } from '@/lib/domain/history/changes'
import type { TubeTest } from '@/lib/domain/matching/candidate'
import type { Words } from '@/lib/domain/words'
import type { Whereabouts } from './tube'

export type PlanChange =
  | { readonly what: 'gone'; readonly mark: string; readonly whereabouts: Whereabouts | null }
  | { readonly what: 'held'; readonly mark: string; readonly jobNumber: string | null }
  | { readonly what: 'on-draft'; readonly mark: string; readonly jobNumber: string }
  | { readonly what: 'rejected'; readonly mark: string }
  /** Null: no usable record any more. */
  | {
      readonly what: 'read-again'
      readonly mark: string
      readonly before: TubeTest | null
      readonly now: TubeTest | null
    }
  | { readonly what: 'price'; readonly mark: string }
  | { readonly what: 'sockets'; readonly group: string }
  | { readonly what: 'amplifier-read' }
  /** Not empty. */
  | { readonly what: 'sheet' | 'supply'; readonly changes: readonly Change[] }
  | { readonly what: 'meter' | 'fitted-tests' | 'windows' | 'types' | 'corrections' }
  /** The job that was to give it away no longer has it. */
  | { readonly what: 'let-go'; readonly mark: string; readonly jobNumber: string }

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
      return `${change.mark} was tested again: ${readText(change.before, words)}, then ${readText(change.now, words)}`
    case 'price':
      return `the price of ${change.mark} was changed`
    case 'sockets':
      return `the sockets of “${change.group}” were changed on the sheet`
    case 'amplifier-read':
      return 'the amplifier was read again, so what its sockets ask for may have changed'
    case 'sheet':
      return `the sheet of the amplifier was changed (${change.changes.map(changeSentence).join('; ')})`
    case 'supply':
      return `what is known of its supplies was changed (${change.changes.map(changeSentence).join('; ')})`
    case 'meter':
      return 'the figures of the meter it was read with were changed'
    case 'fitted-tests':
      return `the test of a ${words.tube} that sat in the amplifier was changed`
    case 'windows':
      return 'the idle windows of the shop were changed'
    case 'types':
      return `a ${words.tube} type of the shop was changed`
    case 'corrections':
      return `the shop references that testers are compared by were read again`
    case 'let-go':
      return `${change.mark} is no longer held for job ${change.jobNumber}`
  }
}

function readText(test: TubeTest | null, { locale }: Words): string {
  if (!test) return 'no usable reading'
  const { testedAt, plateCurrent, transconductance, shorts } = test
  const milli = (value: number) => String(Number((1000 * value).toFixed(2)))
  const slope = transconductance === null ? '' : ` and ${milli(transconductance)} mA/V`
  return `${milli(plateCurrent)} mA${slope}${shorts ? ' with a short' : ''} on ${formatDay(testedAt.slice(0, 10), locale)}`
}
