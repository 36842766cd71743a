/**
 * Where a job stands, in the trade's plain words, and which way it may go.
 * A step that is refused names the state it was in and those it may go to.
 */
import { fail, ok, type Result } from '@/lib/domain/result'

export const JOB_STATES = [
  'received',
  'on-bench',
  'waiting-for-answer',
  'waiting-for-parts',
  'testing',
  'ready',
  'collected',
  'returned-unrepaired',
  'uncollected',
] as const

export type JobState = (typeof JOB_STATES)[number]

const WORDS: Record<JobState, string> = {
  received: 'received',
  'on-bench': 'on bench',
  'waiting-for-answer': 'waiting for answer',
  'waiting-for-parts': 'waiting for parts',
  testing: 'testing',
  ready: 'ready',
  collected: 'collected',
  'returned-unrepaired': 'returned unrepaired',
  uncollected: 'uncollected',
}

export const jobStateWord = (state: JobState): string => WORDS[state]

export const isJobState = (text: string): text is JobState => (JOB_STATES as readonly string[]).includes(text)

/** Steps that have a gate of their own (release, pickup) are not offered as a plain move. */
const NEXT: Record<JobState, readonly JobState[]> = {
  received: ['on-bench', 'returned-unrepaired'],
  'on-bench': ['waiting-for-answer', 'waiting-for-parts', 'testing', 'returned-unrepaired'],
  'waiting-for-answer': ['on-bench', 'waiting-for-parts', 'testing', 'returned-unrepaired', 'uncollected'],
  'waiting-for-parts': ['on-bench', 'testing', 'waiting-for-answer', 'returned-unrepaired'],
  testing: ['on-bench', 'waiting-for-parts', 'waiting-for-answer', 'ready'],
  ready: ['collected', 'uncollected', 'testing'],
  collected: [],
  'returned-unrepaired': [],
  uncollected: ['ready', 'collected', 'returned-unrepaired'],
}

const GATED: readonly JobState[] = ['ready', 'collected', 'returned-unrepaired']

export const nextStates = (state: JobState): readonly JobState[] => NEXT[state]

/** The moves a person may make by hand from the job sheet. */
export const plainMoves = (state: JobState): readonly JobState[] =>
  NEXT[state].filter((next) => !GATED.includes(next) || (state === 'uncollected' && next === 'ready'))

export const isClosed = (state: JobState): boolean => NEXT[state].length === 0

export type MoveFault = { readonly code: 'cannot-move'; readonly from: JobState; readonly to: JobState }

export function moveJob(from: JobState, to: JobState): Result<JobState, MoveFault> {
  if (from === to) return ok(to)
  return NEXT[from].includes(to) ? ok(to) : fail({ code: 'cannot-move', from, to })
}
