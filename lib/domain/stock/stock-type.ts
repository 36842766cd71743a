/**
 * What the stock asks of a designation: its family, and which electrodes a test
 * can have. A designation the handbook does not know is allowed: it is then a
 * family of its own, and nothing about its electrodes is assumed.
 */
import { findTubeType } from '../tube/find-tube-type'
import { foldedDesignation } from '../tube/folded-designation'
import type { TubeCatalogue } from '../tube/tube-catalogue'
import type { TubeClass, TubeVariant } from '../tube/tube-variant'

export type StockType = {
  readonly designation: string
  readonly variant: TubeVariant | null
  readonly family: string
  /** Base by name; empty when not known. */
  readonly base: string
  readonly mayHaveScreen: boolean
  readonly mayHaveGrid: boolean
  readonly mayHaveTwoSections: boolean
  /** Known to have one, so a test of it has a grid voltage. */
  readonly hasGrid: boolean
}

const SCREENED: ReadonlySet<TubeClass> = new Set(['beam-tetrode', 'power-pentode', 'triode-pentode', 'signal-pentode'])
const TWO_SECTIONS: ReadonlySet<TubeClass> = new Set(['twin-triode', 'triode-pentode', 'rectifier'])

export function stockType(designation: string, catalogue: TubeCatalogue): StockType {
  const variant = findTubeType(designation, catalogue)
  const is = (classes: ReadonlySet<TubeClass>) => variant === null || classes.has(variant.tubeClass)
  return {
    designation: designation.trim(),
    variant,
    family: variant?.family ?? foldedDesignation(designation),
    base: variant?.base.name ?? '',
    mayHaveScreen: is(SCREENED),
    mayHaveGrid: variant?.tubeClass !== 'rectifier',
    hasGrid: variant !== null && variant.tubeClass !== 'rectifier',
    mayHaveTwoSections: is(TWO_SECTIONS),
  }
}
