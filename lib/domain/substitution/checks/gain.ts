/**
 * Small-signal tubes of one pin-out differ by gain. Amplification factors from the handbook's
 * rows; a stage's own gain also depends on its resistors, so only the ratio is said.
 */
import { handbookRows } from '../../tube/handbook-rows'
import type { TubeVariant } from '../../tube/tube-variant'
import type { AmpSocket, SubstitutionRules } from '../amp-socket'
import { type Finding, finding } from '../finding'

/** Tubes of one type spread so far among themselves: common practice, no source. */
const ALIKE = 0.2

function typicalMu(variant: TubeVariant, { catalogue }: SubstitutionRules): number | null {
  const known = handbookRows(variant.typeId, catalogue).flatMap(({ figures }) => figures.mu?.[0] ?? [])
  const sorted = known.sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? null
}

/** A twin of two unlike units in the place of two like ones. */
function unlikeUnits(proposed: TubeVariant, made: TubeVariant): Finding[] {
  if (proposed.otherSection === null || made.otherSection !== null) return []
  const sentence = `The two units of ${proposed.designation} are unlike: only one of them has this amplification factor. See which stage each serves.`
  return [finding('gain', 'adjust', sentence)]
}

export function gainFindings(proposed: TubeVariant, { made }: AmpSocket, rules: SubstitutionRules): Finding[] {
  if (proposed.role !== 'small-signal' || proposed.typeId === made.typeId) return []
  const [was, is] = [typicalMu(made, rules), typicalMu(proposed, rules)]
  if (was === null || is === null)
    return [finding('gain', 'cannot-say', 'The amplification factor of one of the two is not known here.')]
  const unlike = unlikeUnits(proposed, made)
  const sentence = `Amplification factor ${Math.round(is)}, against ${Math.round(was)}`
  if (Math.abs(is / was - 1) <= ALIKE) return [finding('gain', 'fits', `${sentence}: much the same gain.`), ...unlike]
  const change = is < was ? 'less' : 'more'
  return [
    finding(
      'gain',
      'adjust',
      `${sentence}: the stage has ${change} gain, and idles at another current with the resistors it has. In a phase inverter the balance changes.`,
    ),
  ]
}
