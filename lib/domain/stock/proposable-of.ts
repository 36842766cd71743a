/** A candidate of a choice as it is asked about in an amplifier's circuit. */
import type { Candidate } from '@/lib/domain/matching/candidate'
import { amps } from '@/lib/domain/units'
import type { ProposableTube } from './proposed-from-stock'

/** Whom it is held for is left out: the choice itself looks at that. `screenCurrent`: A; NaN where it was not read. null: it has no test. */
export function proposableOf(candidate: Candidate, screenCurrent: number): ProposableTube | null {
  const { mark, designation, condition, test } = candidate
  if (!test) return null
  const { carried } = test
  return {
    tube: {
      ...{ mark, designation, condition },
      ...{ whereabouts: 'in-stock', hold: '', heldUntil: null, heldForJobNumber: null },
    },
    test: {
      ...test.testPoint,
      shorts: false,
      sections: [
        {
          section: 1,
          plateCurrent: test.plateCurrent,
          screenCurrent: Number.isNaN(screenCurrent) ? null : amps(screenCurrent),
          transconductance: test.transconductance,
        },
      ],
      ...(carried ? { carried: { current: carried.current.share, transconductance: carried.slope?.share ?? 0 } } : {}),
    },
    shortsFoundAt: test.shorts ? new Date(0) : null,
  }
}
