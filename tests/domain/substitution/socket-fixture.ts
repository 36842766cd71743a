import { DEFAULT_IDLE_WINDOWS } from '@/lib/domain/bias/idle-verdict'
import type { AmpSocket, SubstitutionRules } from '@/lib/domain/substitution/amp-socket'
import type { CheckName, Finding } from '@/lib/domain/substitution/finding'
import { type Substitute, substitute } from '@/lib/domain/substitution/substitute'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { ohms, volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'

export const RULES: SubstitutionRules = {
  catalogue: HANDBOOK_ONLY,
  words: wordsFor('US'),
  allowOverPrintedRating: false,
}

export function variant(designation: string) {
  const found = findTubeType(designation, HANDBOOK_ONLY)
  if (!found) throw new Error(`${designation} is not in the handbook`)
  return found
}

/** A pair of output sockets, grid-supplied, at 420 V, of which everything is noted. */
export const outputSocket = (made: string, over: Partial<AmpSocket> = {}): AmpSocket => ({
  position: 'V4, V5',
  made: variant(made),
  count: 2,
  plateToCathode: volts(420),
  screenToCathode: volts(398),
  bias: { kind: 'grid-supplied', now: volts(-42), coldest: volts(-58), hottest: volts(-30) },
  window: DEFAULT_IDLE_WINDOWS.gridSuppliedPushPull,
  gridLeak: ohms(100_000),
  plateLoad: ohms(4200),
  heaterWinding: null,
  reservoirMicrofarads: 32,
  supplyCurrent: null,
  ...over,
})

export const plainSocket = (made: string, over: Partial<AmpSocket> = {}): AmpSocket => ({
  ...outputSocket(made),
  position: 'V1',
  count: 1,
  plateToCathode: volts(180),
  screenToCathode: null,
  bias: null,
  window: null,
  gridLeak: null,
  plateLoad: null,
  ...over,
})

export const ask = (proposed: string, socket: AmpSocket, rules: Partial<SubstitutionRules> = {}): Substitute =>
  substitute(variant(proposed), socket, { ...RULES, ...rules })

export const of = ({ findings }: Substitute, check: CheckName): readonly Finding[] =>
  findings.filter((one) => one.check === check)

export const weights = (asked: Substitute, check: CheckName): readonly string[] =>
  of(asked, check).map(({ weight }) => weight)
