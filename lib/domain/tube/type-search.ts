/**
 * Looking a tube type up by any number it goes under, or part of one.
 *
 * `exact` is what the whole text resolves to (find-tube-type.ts). `types` are those that bear
 * a number with the text in it; a type that only names it as merely similar is told apart,
 * because it is not the same tube.
 */
import { findTubeType } from './find-tube-type'
import { foldedDesignation } from './folded-designation'
import type { HandbookType } from './handbook-type'
import { knownTypes, type TubeCatalogue } from './tube-catalogue'
import type { TubeVariant } from './tube-variant'

export type FoundType = {
  readonly type: HandbookType
  /** Its numbers with the text in them that are not among its own designations. */
  readonly numbers: readonly string[]
}

export type FoundTypes = {
  readonly exact: TubeVariant | null
  readonly types: readonly FoundType[]
  /** Not this type: one that lists the number as similar. */
  readonly similar: readonly { readonly type: HandbookType; readonly number: string }[]
}

export const designationsOf = (type: HandbookType): readonly string[] =>
  type.variants.flatMap(({ designations }) => [...designations])

/** An empty text finds every type. */
export function searchTypes(text: string, catalogue: TubeCatalogue): FoundTypes {
  const wanted = foldedDesignation(text)
  const holds = (number: string) => foldedDesignation(number).includes(wanted)
  const exact = findTubeType(text, catalogue)
  const types = knownTypes(catalogue).flatMap((type): FoundType[] => {
    const numbers = wanted === '' ? [] : type.otherNumbers.map(({ number }) => number).filter(holds)
    const named = designationsOf(type).some(holds) || holds(type.id)
    return named || numbers.length > 0 || type.id === exact?.typeId ? [{ type, numbers }] : []
  })
  return { exact, types, similar: wanted === '' ? [] : similarTo(wanted, catalogue) }
}

const similarTo = (wanted: string, catalogue: TubeCatalogue): FoundTypes['similar'] =>
  knownTypes(catalogue).flatMap((type) =>
    type.similar.filter(({ number }) => foldedDesignation(number) === wanted).map(({ number }) => ({ type, number })),
  )
