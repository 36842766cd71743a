/** Pairing up as a computation for a thread of its own. */
import { type PairFault, pairTubes, type TubePairs } from '@/lib/domain/pairing/pair-tubes'
import type { ReadTube, SpreadRule } from '@/lib/domain/pairing/spread-rule'
import type { Result } from '@/lib/domain/result'
import type { Task } from '../worker/task'

export type PairInput = { readonly tubes: readonly ReadTube[]; readonly rule: SpreadRule }

export const pairTask: Task<PairInput, Result<TubePairs<ReadTube>, PairFault>> = ({ tubes, rule }, context) =>
  pairTubes(tubes, rule, ({ round, missing }) => {
    context.report({ stage: 'pairing-round', figures: { round, missing } })
    return !context.cancelled()
  })
