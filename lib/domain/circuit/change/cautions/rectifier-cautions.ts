/**
 * What another rectifier asks: its printed reservoir and current limits, its heater and
 * base, and the volts that stand on everything before the output tubes have warmed up.
 *
 * Silicon gives the open-circuit volts at once, a rectifier with a filament within a few
 * seconds, one with a cathode sleeve about when the output tubes begin to draw (common
 * practice, no source).
 */
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { Rectifier } from '@/lib/domain/circuit/amp/rectifier-of'
import type { SolvedCircuit } from '@/lib/domain/circuit/change/solved-circuit'
import { baseCautions, heaterCautions } from './tube-cautions'
import type { WhatIfCaution } from './what-if-caution'

const hasSleeve = ({ variant }: Rectifier): boolean =>
  Object.values(variant?.base.pins ?? {}).some((electrode) => /\bk\b/.test(electrode))

function reservoirCautions({ facts }: AmpCircuit, { variant }: Rectifier): WhatIfCaution[] {
  if (!variant) return []
  const designation = variant.asked
  const limit = variant.ratings?.all.reservoirMicrofarads?.value
  if (limit === undefined) return [{ code: 'reservoir-limit-not-printed', designation }]
  const microfarads = facts.reservoirMicrofarads
  if (microfarads === null) return [{ code: 'reservoir-not-known', designation, limit }]
  return microfarads > limit ? [{ code: 'reservoir-too-large', designation, microfarads, limit }] : []
}

/** Direct current of the whole supply against the printed output of the tube, or tubes in parallel. */
function currentCautions({ solution }: SolvedCircuit, { variant, tubes }: Rectifier): WhatIfCaution[] {
  const printed = variant?.ratings?.all.outputMilliamps?.value
  if (!variant || printed === undefined) return []
  const [milliamps, limit] = [1000 * solution.supplyCurrent, printed * Math.max(1, tubes)]
  return milliamps > limit ? [{ code: 'rectifier-current-over', designation: variant.asked, milliamps, limit }] : []
}

/** 0: at once; 1: before the output tubes draw; 2: with them. */
function slowness(rectifier: Rectifier): number {
  if (rectifier.designation === '') return 0
  return hasSleeve(rectifier) ? 2 : 1
}

function warmUpCautions({ changed, solution }: SolvedCircuit, then: Rectifier, now: Rectifier): WhatIfCaution[] {
  if (slowness(then) >= slowness(now)) return []
  const openVolts = changed.stage.supply.openCircuit * changed.stage.mainsFactor
  return [{ code: 'volts-before-warm-up', designation: then.designation, openVolts, idleVolts: solution.reservoir }]
}

/** None where the rectifier stays. */
export function rectifierCautions(circuit: AmpCircuit, solved: SolvedCircuit): WhatIfCaution[] {
  const [then, now] = [solved.changed.rectifier, circuit.rectifier]
  if (then.designation === now.designation) return []
  const part = 'rectifier'
  return [
    ...(then.variant
      ? [...baseCautions(part, then.variant, now.variant), ...heaterCautions(part, then.variant, now.variant)]
      : []),
    ...reservoirCautions(circuit, then),
    ...currentCautions(solved, then),
    ...warmUpCautions(solved, then, now),
  ]
}
