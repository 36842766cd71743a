/** Stocked tubes as a page sees them, to be held against what stands when its button is pressed. */
import type { TubeTest } from '@/lib/domain/matching/candidate'
import { type CandidateView, candidateOf } from '@/lib/domain/stock/candidate-of'
import { activeHold, type StockedTube } from '@/lib/domain/stock/tube'
import type { SeenThere } from './tube-changes'
import type { SeenOut } from './tube-exchange'

export function seenThere(stocked: StockedTube, view: CandidateView): SeenThere {
  const { tubeId, mark, test, price } = candidateOf(stocked, view)
  return { tubeId, mark, test: test && bareTest(test), price }
}

export function seenOut(stocked: StockedTube, view: CandidateView): SeenOut {
  const { tube } = stocked
  const heldFor = activeHold(tube, view.now) === '' ? null : tube.heldForJobNumber
  return { ...seenThere(stocked, view), whereabouts: tube.whereabouts, heldFor }
}

/** It goes through a form: only what is compared. */
export const bareTest = ({
  testedAt,
  instrument,
  testPoint,
  plateCurrent,
  transconductance,
  shorts,
}: TubeTest): TubeTest => ({
  ...{ testedAt, instrument, testPoint, plateCurrent, transconductance, shorts },
  leakageNote: null,
})
