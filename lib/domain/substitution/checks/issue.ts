/**
 * Issues of one type: a later letter (A, B, C) may replace the earlier, not the other way;
 * GT replaces G. Source: RETMA type designation scheme. And what the letters say of the bulb.
 */
import type { TubeVariant } from '../../tube/tube-variant'
import type { AmpSocket } from '../amp-socket'
import { type Finding, finding } from '../finding'

/** "6L6GC" is issue 3 of the 6L6G; without a letter, or with another scheme, 0. */
export function issueOf(designation: string): number {
  const letter = /^\d+[A-Z]{1,2}\d+(?:W?)(?:GT|G)?([ABC])$/.exec(designation)?.[1]
  return letter ? 'ABC'.indexOf(letter) + 1 : 0
}

/** "6L6" of "6L6GC"; null for numbers of another scheme, such as 5881. */
const rootOf = (designation: string): string | null => /^\d+[A-Z]{1,2}\d+/.exec(designation)?.[0] ?? null

export function issueFindings(proposed: TubeVariant, { made }: AmpSocket): Finding[] {
  const root = rootOf(made.designation)
  if (root === null || rootOf(proposed.designation) !== root) return []
  const [is, was] = [issueOf(proposed.designation), issueOf(made.designation)]
  if (is > was)
    return [finding('issue', 'fits', `${proposed.designation} is a later issue and may replace ${made.designation}.`)]
  if (is === was) return []
  return [
    finding(
      'issue',
      'adjust',
      `${proposed.designation} is an earlier issue: it does not replace ${made.designation} as such. It may go in only as far as its own, lower limits are kept here.`,
    ),
  ]
}

type Bulb = 'shouldered' | 'tubular' | 'metal or not stated'
const bulbOf = (designation: string): Bulb => {
  if (/G(?:T[ABC]?|C)$/.test(designation)) return 'tubular'
  return /\dG[AB]?Y?$/.test(designation) ? 'shouldered' : 'metal or not stated'
}

/** Outline ST-14 and ST-16 against T-9: from memory. */
export function bulbFindings(proposed: TubeVariant, { made }: AmpSocket): Finding[] {
  const wider = bulbOf(proposed.designation) === 'shouldered' && bulbOf(made.designation) !== 'shouldered'
  return wider
    ? [
        finding(
          'bulb',
          'note',
          'A shouldered bulb is wider (44 to 51 mm) and taller than a tubular one (29 mm): see that it clears its neighbours, the clamp and the cabinet.',
        ),
      ]
    : []
}
