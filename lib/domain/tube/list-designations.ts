/** Designations for pick lists: output tubes, then signal tubes, then rectifiers. */
import { HANDBOOK } from './handbook'
import type { TubeRole } from './tube-variant'

const ROLES: readonly TubeRole[] = ['output', 'small-signal', 'rectifier']

export type DesignationGroup = { readonly role: TubeRole; readonly designations: readonly string[] }

export function listDesignationsByRole(): DesignationGroup[] {
  return ROLES.map((role) => ({
    role,
    designations: HANDBOOK.filter((type) => type.role === role).flatMap((type) =>
      type.variants.flatMap((variant) => [...variant.designations]),
    ),
  }))
}

/** The same, as one list in that order. */
export const listDesignations = (): string[] => listDesignationsByRole().flatMap((group) => [...group.designations])
