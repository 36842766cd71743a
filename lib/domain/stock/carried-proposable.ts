/**
 * A stocked tube as it is predicted by: its record, carried over to the instrument that the
 * others were read on.
 *
 * Screen current stays as read: no correction is made for it, and it is met no better than to
 * a third of itself anyway.
 */
import { type Carriages, carriageOf } from '../matching/carried-test'
import { amps, siemens } from '../units'
import type { ProposableTube } from './proposed-from-stock'
import type { StockedTube } from './tube'

export function carriedProposable(stocked: StockedTube, carriages: Carriages): ProposableTube {
  const { test } = stocked
  const [reading, ...others] = test?.sections ?? []
  if (!test || !reading || reading.plateCurrent === null) return stocked
  const { plateCurrent, transconductance } = reading
  const carriage = carriageOf({ instrument: test.instrumentName, transconductance }, carriages)
  if (!carriage) return stocked
  const { current, slope } = carriage
  const section = {
    ...reading,
    plateCurrent: amps(plateCurrent * current.factor),
    transconductance: transconductance === null || slope === null ? null : siemens(transconductance * slope.factor),
  }
  const carried = { current: current.share, transconductance: slope?.share ?? 0 }
  return { ...stocked, test: { ...test, sections: [section, ...others], carried } }
}
