/** Whether a type may go into a socket of a real amplifier: every check, and the answer they add up to. */
import type { TubeVariant } from '../tube/tube-variant'
import type { AmpSocket, SubstitutionRules } from './amp-socket'
import { gainFindings } from './checks/gain'
import { heaterFindings } from './checks/heater'
import { idleFindings } from './checks/idle'
import { bulbFindings, issueFindings } from './checks/issue'
import { baseFindings, kindFindings } from './checks/kind-and-base'
import { loadFindings } from './checks/load'
import { pinFindings } from './checks/pins'
import { gridLeakFindings, ratingFindings } from './checks/ratings'
import { rectifierFindings } from './checks/rectifier'
import { type Finding, type FindingWeight, WEIGHTS } from './finding'

/**
 * 'drop-in': nothing to set beyond the usual reading after fitting. 'cannot-say': nothing
 * speaks against it, but something that decides was not measured or is not known.
 */
export type Answer = 'drop-in' | 'with-adjustment' | 'cannot-say' | 'with-changes' | 'no'
export const ANSWERS: readonly Answer[] = ['drop-in', 'with-adjustment', 'cannot-say', 'with-changes', 'no']

const ANSWER_OF: Readonly<Record<FindingWeight, Answer>> = {
  fits: 'drop-in',
  note: 'drop-in',
  adjust: 'with-adjustment',
  'cannot-say': 'cannot-say',
  change: 'with-changes',
  no: 'no',
}

export type Substitute = {
  readonly proposed: TubeVariant
  readonly answer: Answer
  /** Weightiest first. */
  readonly findings: readonly Finding[]
}

const weight = ({ weight: one }: Finding): number => WEIGHTS.indexOf(one)

export function substitute(proposed: TubeVariant, socket: AmpSocket, rules: SubstitutionRules): Substitute {
  const apart = [...kindFindings(socket.made, proposed, rules.words), ...baseFindings(socket.made, proposed)]
  // Of another kind or base there is no sense in counting milliamps.
  const findings = apart.length > 0 ? apart : inDetail(proposed, socket, rules)
  const sorted = [...findings].sort((a, b) => weight(b) - weight(a))
  const worst = sorted[0]?.weight ?? 'fits'
  return { proposed, answer: ANSWER_OF[worst], findings: sorted }
}

const inDetail = (proposed: TubeVariant, socket: AmpSocket, rules: SubstitutionRules): Finding[] => [
  ...pinFindings(socket.made, proposed, rules.words),
  ...heaterFindings(socket.made, proposed, socket),
  ...ratingFindings(proposed, socket, rules),
  ...idleFindings(proposed, socket, rules),
  ...gridLeakFindings(proposed, socket),
  ...loadFindings(proposed, socket, rules),
  ...rectifierFindings(proposed, socket, rules),
  ...gainFindings(proposed, socket, rules),
  ...issueFindings(proposed, socket),
  ...bulbFindings(proposed, socket),
]
