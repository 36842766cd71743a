/** What is in the drawers besides tubes: fuses, resistors, capacitors. */
import type { Shown } from '../history/changes'
import { shown } from '../history/changes'
import type { Money } from '../money'

export const PART_KINDS = ['fuse', 'resistor', 'capacitor', 'other'] as const
export type PartKind = (typeof PART_KINDS)[number]

export type PartDetails = {
  readonly name: string
  readonly kind: PartKind
  /** As it is written on it: "T 2 A, 250 V", "470 Ω 5 W". */
  readonly value: string
  readonly count: number
  /** For one. Null: not known. */
  readonly cost: Money | null
  readonly price: Money
  /** Ordered again at this count or below. Null: not watched. */
  readonly reorderLevel: number | null
  readonly location: string
}

export type Part = PartDetails & { readonly id: string; readonly version: number }

export const isToReorder = ({ count, reorderLevel }: Pick<Part, 'count' | 'reorderLevel'>): boolean =>
  reorderLevel !== null && count <= reorderLevel

export const partShown = (part: PartDetails, formatMoney: (amount: Money) => string): Shown =>
  shown([
    ['Name', part.name],
    ['Kind', part.kind],
    ['Value', part.value],
    ['Count', String(part.count)],
    ['Cost', part.cost === null ? '' : formatMoney(part.cost)],
    ['Price', formatMoney(part.price)],
    ['Reorder at', part.reorderLevel === null ? '' : String(part.reorderLevel)],
    ['Location', part.location],
  ])
