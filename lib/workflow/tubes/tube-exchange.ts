/** What an exchange of one tube for another is asked with, and the two tubes it is about. */
import type { MatchLimits } from '@/lib/domain/matching/candidate'
import type { MatchStatement } from '@/lib/domain/matching/proposal'
import type { PlanBasis } from '@/lib/domain/stock/plan-basis'
import type { StockedTube, Whereabouts } from '@/lib/domain/stock/tube'
import type { SeenThere } from './tube-changes'

export type SeenOut = SeenThere & {
  readonly whereabouts: Whereabouts
  /** Number of the job that held it. Null: none did. */
  readonly heldFor: string | null
}

/** Everything as the page showed it before the press. */
export type TubeExchange = {
  readonly jobNumber: string
  readonly quoteId: string
  /** Of the quote. */
  readonly version: number
  readonly position: string
  readonly out: SeenOut
  readonly into: SeenThere
  /** The others of the set. */
  readonly beside: readonly SeenThere[]
  readonly basis: PlanBasis
  readonly limits: Pick<MatchLimits, 'maximumTestAgeDays' | 'allowOverPrintedRating'>
  /** What a prediction says against it, in sentences; left out: nothing. */
  readonly against?: string
  /** What is then claimed of the set. Null: nothing. */
  readonly match: MatchStatement | null
}

/** As they stand now. */
export type Exchange = { readonly out: StockedTube; readonly into: StockedTube; readonly position: string }
