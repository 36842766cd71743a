/**
 * What a plan over the stock rests on beside the tubes themselves: the amplifier as it was read
 * and written down, and the rules of the shop. Kept with the plan and held against what stands
 * when the plan is accepted, so that nothing changes under it unnoticed.
 */
import { changesBetween, type Shown } from '../history/changes'
import type { PlanChange } from './plan-change'

type Labelled = readonly (readonly [label: string, text: string])[]

/** Plain data: it travels to a worker thread and through a form. */
export type PlanBasis = {
  /** Which round of readings; empty: none. */
  readonly readings: string
  /** Output sockets and phase inverters, output stage and marked mains, as the history shows them. */
  readonly sheet: Labelled
  readonly supply: Labelled
  /** The five below change rarely, so they are told apart, but not shown. */
  readonly meter: string
  /** Tubes of the stock book that sat there when it was read, with their tests. */
  readonly fitted: string
  readonly windows: string
  readonly types: string
  /** Between the shop's testers. */
  readonly corrections: string
}

export function basisChanges(seen: PlanBasis, now: PlanBasis): PlanChange[] {
  const read = seen.readings !== now.readings
  return [
    ...(read ? [{ what: 'amplifier-read' } as const] : []),
    ...differing('sheet', seen.sheet, now.sheet),
    ...differing('supply', seen.supply, now.supply),
    // Another round brings its own meter and finds other tubes there.
    ...(!read && seen.meter !== now.meter ? [{ what: 'meter' } as const] : []),
    ...(!read && seen.fitted !== now.fitted ? [{ what: 'fitted-tests' } as const] : []),
    ...(seen.windows === now.windows ? [] : [{ what: 'windows' } as const]),
    ...(seen.types === now.types ? [] : [{ what: 'types' } as const]),
    ...(seen.corrections === now.corrections ? [] : [{ what: 'corrections' } as const]),
  ]
}

function differing(what: 'sheet' | 'supply', seen: Labelled, now: Labelled): PlanChange[] {
  const changes = changesBetween(asShown(seen), asShown(now))
  return changes.length === 0 ? [] : [{ what, changes }]
}

const asShown = (lines: Labelled): Shown => new Map(lines)
