/** Tubes of one type that are kept by count, untested or in bulk: none of them has a mark yet. */
import type { Shown } from '../history/changes'
import { shown } from '../history/changes'
import type { Money } from '../money'
import { conditionWord, type TubeCondition } from './tube'

export type TubeLotDetails = {
  readonly designation: string
  readonly condition: TubeCondition
  readonly count: number
  /** For one. Null: not known. */
  readonly cost: Money | null
  /** For one, before tax. */
  readonly price: Money
  readonly location: string
  readonly note: string
}

export type TubeLot = TubeLotDetails & { readonly id: string; readonly version: number }

export const LARGEST_COUNT = 1_000_000

export const lotShown = (lot: TubeLotDetails, formatMoney: (amount: Money) => string): Shown =>
  shown([
    ['Type', lot.designation],
    ['Condition', conditionWord(lot.condition)],
    ['Count', String(lot.count)],
    ['Cost', lot.cost === null ? '' : formatMoney(lot.cost)],
    ['Price', formatMoney(lot.price)],
    ['Location', lot.location],
    ['Note', lot.note],
  ])
