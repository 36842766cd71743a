/**
 * Every type a shop knows: the handbook, which is the same for all, and the types it
 * wrote down itself (a new-production tube, a rare one). The shop's settings carry its own
 * types, so whatever is given the shop can look a designation up.
 */
import { HANDBOOK } from './handbook'
import type { HandbookType } from './handbook-type'

/** Where its curves come from: another type's, moved to its own printed points where it has some. */
export type CurvesLike = {
  readonly typeId: string
  /** 'same': electrically the same system. 'similar': the error of the curves counts double. */
  readonly degree: 'same' | 'similar'
}

export type OwnTubeType = HandbookType & {
  readonly curves: CurvesLike | null
  /** Book, sheet or measurement, in the shop's words. */
  readonly sourceText: string
}

export type TubeCatalogue = { readonly ownTypes: readonly OwnTubeType[] }

/** For what is the same in every shop: tests, the fit, calculators. */
export const HANDBOOK_ONLY: TubeCatalogue = { ownTypes: [] }

export const ownTubeType = ({ ownTypes }: TubeCatalogue, typeId: string): OwnTubeType | null =>
  ownTypes.find((type) => type.id === typeId) ?? null

/** The shop's own first. */
export const knownTypes = ({ ownTypes }: TubeCatalogue): readonly HandbookType[] => [...ownTypes, ...HANDBOOK]
