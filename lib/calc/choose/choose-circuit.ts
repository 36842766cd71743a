/** The circuit a set is chosen for: what each tube of the stock would do in it, and how its idle is set. */
import { type Faults, faultsOf } from '@/lib/calc/calculator'
import type { InputFault } from '@/lib/calc/input/input-fault'
import { proposedStage } from '@/lib/calc/predict/proposed-stage'
import { proposedTube } from '@/lib/calc/predict/proposed-tube'
import { solveFault } from '@/lib/calc/predict/solve-faults'
import type { Candidate, Carrying } from '@/lib/domain/matching/candidate'
import { carriedCandidates } from '@/lib/domain/matching/carried-stock'
import type { SetArrangement } from '@/lib/domain/matching/match-weights'
import type { Predictions } from '@/lib/domain/matching/predicted-tube'
import { fail, ok, type Result } from '@/lib/domain/result'
import { proposableOf } from '@/lib/domain/stock/proposable-of'
import { tubePredictor } from '@/lib/domain/stock/stock-predictions'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { wordsFor } from '@/lib/domain/words'
import type { ChooseGiven, CircuitGiven } from './choose-input'

export function predictionsIn(
  circuit: CircuitGiven,
  { set, words }: Pick<ChooseGiven, 'set' | 'words'>,
  { candidates, carrying }: { readonly candidates: readonly Candidate[]; readonly carrying: Carrying },
): Result<Predictions, Faults> {
  const { sockets } = circuit
  if (sockets.length !== set.count) return fail([otherCount(sockets.length, set.count)])
  // What stands in the sockets is of no matter: every tube is tried in all of them.
  const usual = proposedTube({ type: set.type, section: 'first', records: [] }, 'set')
  if (!usual.ok) return fail(faultsOf(usual.fault))
  const stage = proposedStage(
    circuit,
    sockets.map(() => usual.value),
    'circuit.',
  )
  if (!stage.ok) return stage
  // Asked of no hour: whom a tube is held for is looked at elsewhere.
  const view = { catalogue: HANDBOOK_ONLY, now: new Date(0), words: wordsFor(words) }
  const predictor = tubePredictor({ stage: stage.value, gridStandard: null }, view)
  if (!predictor.ok) return fail([solveFault(predictor.fault, circuit, 'circuit.')])
  const ofTube = new Map(
    carriedCandidates(candidates, carrying, 'everywhere').flatMap((candidate) => {
      const tube = proposableOf(candidate, Number.NaN)
      return tube ? [[candidate.tubeId, predictor.value(tube)] as const] : []
    }),
  )
  return ok({ readOn: '', ofTube })
}

const otherCount = (given: number, wanted: number): InputFault => ({
  code: 'other-count',
  path: 'circuit.sockets',
  sentence: `circuit.sockets has ${given}; it must have ${wanted}, as many as the set has tubes.`,
})

export function arrangementIn({ sockets, gridSupplies }: CircuitGiven, pushPull: boolean): SetArrangement {
  if (!pushPull) return 'single-ended'
  const resistors = sockets.map(({ biasResistor }) => biasResistor)
  if (resistors.every((id) => id !== undefined)) {
    return new Set(resistors).size < resistors.length ? 'cathode-shared' : 'cathode-separate'
  }
  if (gridSupplies.length > 1 && new Set(sockets.map(({ gridSupply }) => gridSupply)).size === sockets.length) {
    return 'individual-trims'
  }
  return sockets.length >= 4 ? 'parallel-pairs' : 'one-trim'
}
