/** Designations for pick lists: output tubes, then signal tubes, then rectifiers. */
import { knownTypes, type TubeCatalogue } from './tube-catalogue'
import type { TubeRole } from './tube-variant'

const ROLES: readonly TubeRole[] = ['output', 'small-signal', 'rectifier']

export type DesignationGroup = { readonly role: TubeRole; readonly designations: readonly string[] }

export function listDesignationsByRole(catalogue: TubeCatalogue): DesignationGroup[] {
  return ROLES.map((role) => ({
    role,
    designations: knownTypes(catalogue)
      .filter((type) => type.role === role)
      .flatMap((type) => type.variants.flatMap((variant) => [...variant.designations])),
  }))
}

/** The same, as one list in that order. */
export const listDesignations = (catalogue: TubeCatalogue): string[] =>
  listDesignationsByRole(catalogue).flatMap((group) => [...group.designations])
