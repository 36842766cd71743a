import type { OperatingRow } from './handbook-type'
import { knownTypes, type TubeCatalogue } from './tube-catalogue'

/** Printed operating rows of a type; none for an id that is not known. */
export const handbookRows = (typeId: string, catalogue: TubeCatalogue): readonly OperatingRow[] =>
  knownTypes(catalogue).find(({ id }) => id === typeId)?.rows ?? []
