/** What is in the drawers besides tubes: fuses, resistors, capacitors. */
import type { Shown } from '../history/changes'
import { shown } from '../history/changes'
import type { Money } from '../money'
import type { Drawer } from './drawer'

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
  /** Ordered again when so many are free, or fewer. Null: not watched. */
  readonly reorderLevel: number | null
  readonly location: string
}

export type Part = PartDetails & { readonly id: string; readonly version: number }

export type StockedPart = Part & { readonly drawer: Drawer }

/** "Screen resistor, 470 Ω 5 W". */
export const partName = ({ name, value }: Pick<Part, 'name' | 'value'>): string =>
  [name, value].filter(Boolean).join(', ')

/** What is set aside for jobs is as good as gone: the level looks at what is free. */
export const isToReorder = ({ drawer, reorderLevel }: Pick<StockedPart, 'drawer' | 'reorderLevel'>): boolean =>
  reorderLevel !== null && drawer.free <= reorderLevel

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
