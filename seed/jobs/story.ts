/** The story of one job: what was done to it, on which working day before today, by whom. */
import type { Step } from '@/lib/workflow/step/step'
import type { AmpKey } from '@/seed/amps/owned-amps'
import type { Who } from '@/seed/shop/people'
import { type DemoWorld, type Happening, stepOf } from '@/seed/world'

/** Filled in by the intake. */
export type ToldJob = { readonly amp: AmpKey; number: string }

export type Deed = (world: DemoWorld, step: Step, job: ToldJob) => Promise<void>

type Scene = { readonly daysAgo: number; readonly clock: string; readonly who: Who; readonly deed: Deed }

/** `daysAgo`: working days before the day of seeding. */
export const on = (daysAgo: number, clock: string, who: Who, deed: Deed): Scene => ({ daysAgo, clock, who, deed })

export type Story = { readonly amp: AmpKey; readonly scenes: readonly Scene[] }

export function storyHappenings(world: DemoWorld, { amp, scenes }: Story): Happening[] {
  const job: ToldJob = { amp, number: '' }
  return scenes.map(({ daysAgo, clock, who, deed }) => {
    const at = world.calendar.at(daysAgo, clock)
    return { at, run: () => deed(world, stepOf(world, who, at), job) }
  })
}
