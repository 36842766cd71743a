/** All tube types known, output tubes first. */

import { HIGH_MU_TRIODES } from './handbook/high-mu-triodes'
import { LARGE_BEAM_TETRODES } from './handbook/large-beam-tetrodes'
import { MEDIUM_MU_TRIODES } from './handbook/medium-mu-triodes'
import { OCTAL_BEAM_TETRODES } from './handbook/octal-beam-tetrodes'
import { OCTAL_RECTIFIERS } from './handbook/octal-rectifiers'
import { OCTAL_TRIODES } from './handbook/octal-triodes'
import { POWER_PENTODES } from './handbook/power-pentodes'
import { POWER_TRIODES } from './handbook/power-triodes'
import { SIGNAL_PENTODES } from './handbook/signal-pentodes'
import { SMALL_BASE_BEAM_TETRODES } from './handbook/small-base-beam-tetrodes'
import { SMALL_BASE_RECTIFIERS } from './handbook/small-base-rectifiers'
import { SMALL_POWER_PENTODES } from './handbook/small-power-pentodes'
import type { HandbookType } from './handbook-type'

export const HANDBOOK: readonly HandbookType[] = [
  ...OCTAL_BEAM_TETRODES,
  ...POWER_PENTODES,
  ...LARGE_BEAM_TETRODES,
  ...SMALL_BASE_BEAM_TETRODES,
  ...SMALL_POWER_PENTODES,
  ...POWER_TRIODES,
  ...HIGH_MU_TRIODES,
  ...MEDIUM_MU_TRIODES,
  ...OCTAL_TRIODES,
  ...SIGNAL_PENTODES,
  ...OCTAL_RECTIFIERS,
  ...SMALL_BASE_RECTIFIERS,
]

/** Throws on an unknown id: ids come from this handbook. */
export function handbookType(typeId: string): HandbookType {
  const found = HANDBOOK.find((type) => type.id === typeId)
  if (!found) throw new Error(`No tube type has the id ${typeId}`)
  return found
}
