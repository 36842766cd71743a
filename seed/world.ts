/** What the demo knows while it goes on: who acts, and what the records call each thing. */
import type { Actor } from '@/lib/domain/person/role'
import type { Shop } from '@/lib/domain/shop/shop'
import type { Step } from '@/lib/workflow/step/step'
import type { AmpKey } from './amps/owned-amps'
import type { ShopCalendar } from './calendar-of-shop'
import type { CustomerKey } from './shop/customers'
import type { InstrumentKey } from './shop/instruments'
import type { Who } from './shop/people'

export type DemoWorld = {
  readonly shop: Shop
  readonly calendar: ShopCalendar
  readonly actors: Readonly<Record<Who, Actor>>
  readonly instruments: Readonly<Record<InstrumentKey, string>>
  /** Ids, once they have been to the counter. */
  readonly customers: Map<CustomerKey, string>
  readonly amps: Map<AmpKey, string>
}

/** Something that happened in the shop. The demo plays them in the order of time, as a shop does. */
export type Happening = { readonly at: Date; readonly run: () => Promise<void> }

/** Some minutes into a piece of work. */
export const later = (step: Step, minutes: number): Step => ({
  ...step,
  now: new Date(step.now.getTime() + minutes * 60_000),
})

export const stepOf = ({ actors }: DemoWorld, who: Who, now: Date): Step => ({ actor: actors[who], now })
