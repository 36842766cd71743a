/** The rectifier of an amplifier: as noted, else the one on its sheet, else taken as solid state. */

import type { AmpSheet } from '@/lib/domain/amp/amp'
import { SOLID_STATE, type SupplyFacts } from '@/lib/domain/amp/supply-facts'
import { catalogueRectifier } from '@/lib/domain/model/catalogue-model'
import type { DiodeParameters } from '@/lib/domain/model/plate-curves'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import type { Assumption } from './assumption'

export type Rectifier = {
  /** '' is solid state. */
  readonly designation: string
  /** Null: solid state, or not in the catalogue. */
  readonly variant: TubeVariant | null
  /** Of one plate, times the tubes in parallel; null: no drop is reckoned with. */
  readonly diode: DiodeParameters | null
  /** Of the same type, in parallel. */
  readonly tubes: number
}

const SILICON: Rectifier = { designation: SOLID_STATE, variant: null, diode: null, tubes: 0 }

/** Null: no drop is known for it, or it is no rectifier. */
export function rectifierNamed(designation: string, tubes: number, catalogue: TubeCatalogue): Rectifier | null {
  if (designation.trim() === SOLID_STATE) return SILICON
  const variant = findTubeType(designation, catalogue)
  if (variant?.role !== 'rectifier') return null
  const diode = catalogueRectifier(variant.typeId, catalogue)
  if (!diode.ok) return null
  return { designation, variant, diode: { kind: 'diode', k: diode.value.k * tubes }, tubes }
}

export type FoundRectifier = { readonly rectifier: Rectifier; readonly assumptions: readonly Assumption[] }

export function rectifierOf(sheet: AmpSheet, facts: SupplyFacts, catalogue: TubeCatalogue): FoundRectifier {
  const inSockets = sheet.sockets.filter(({ role, typeFitted }) => role === 'rectifier' && typeFitted.trim() !== '')
  const designation = facts.rectifierType ?? inSockets[0]?.typeFitted ?? null
  if (designation === null) return { rectifier: SILICON, assumptions: [{ code: 'rectifier-taken-solid-state' }] }
  const alike = inSockets.filter(({ typeFitted }) => typeFitted.trim() === designation.trim()).length
  const known = rectifierNamed(designation, Math.max(1, alike), catalogue)
  if (known) return { rectifier: known, assumptions: [] }
  return {
    rectifier: { ...SILICON, designation, tubes: Math.max(1, alike) },
    assumptions: [{ code: 'rectifier-drop-not-known', designation }],
  }
}
