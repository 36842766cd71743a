/** What a sharing is asked for: the jobs that want sets, the stock, and the limits every set keeps. */
import type { Socket } from '@/lib/domain/amp/socket'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { Candidate, MatchLimits, SocketDemand } from '@/lib/domain/matching/candidate'
import type { Predictions } from '@/lib/domain/matching/predicted-tube'
import type { Result } from '@/lib/domain/result'
import type { PlanBasis } from '@/lib/domain/stock/plan-basis'
import type { StockedTube } from '@/lib/domain/stock/tube'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { Words } from '@/lib/domain/words'

export type ShareAsk = {
  /** Name of the group on the sheet of the amplifier. */
  readonly group: string
  /** As it stands on the sheet. */
  readonly designation: string
  readonly demand: SocketDemand
  /** On the sheet, in chassis order; empty: not known. */
  readonly sockets: readonly Socket[]
  /** By which every tube's idle there is predicted, or why tubes are compared at their test points: a sentence. */
  readonly circuit: Result<AmpCircuit, string>
  /** Worked out from the circuit before the sharing begins. */
  readonly predictions?: Predictions
}

export type ShareJob = {
  readonly jobNumber: string
  /** ISO date of the readings its circuits are made from; empty: none. */
  readonly readOn: string
  /** All of them or none: a job is served when every group has its set. */
  readonly groups: readonly ShareAsk[]
  /** What the demands and circuits were made from, to be held against what stands later. Null: nobody accepts this plan. */
  readonly basis: PlanBasis | null
}

export type ShareStock = {
  /** With the record a prediction starts from; null: none is made. */
  readonly stocked: StockedTube | null
  /** As it is for a job that holds nothing. */
  readonly candidate: Candidate
  /** Number of the job it is held for, and free for. Null: held for none. */
  readonly heldFor: string | null
}

export type ShareOrder = {
  /** In the order they would be served first come, first served. */
  readonly jobs: readonly ShareJob[]
  readonly stock: readonly ShareStock[]
  /** The yardsticks are bounds here: a set outside them is no set. The price cap is for each set. */
  readonly limits: MatchLimits
  /** Null: nothing is predicted. */
  readonly view: { readonly catalogue: TubeCatalogue; readonly now: Date; readonly words: Words } | null
  /** Time to compute in. */
  readonly seconds: number
}
