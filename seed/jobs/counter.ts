/** What is done at the counter when an amplifier comes in. */
import { money } from '@/lib/domain/money'
import { findJobHead } from '@/lib/store/job-head'
import type { JobItemInput } from '@/lib/workflow/counter/keep-job'
import { takeInJob } from '@/lib/workflow/counter/take-in-job'
import { ampDetailsOf, OWNED_AMPS } from '@/seed/amps/owned-amps'
import { settled } from '@/seed/settled'
import { DEMO_CUSTOMERS } from '@/seed/shop/customers'
import { ADDRESS } from '@/seed/shop/settings'
import type { Deed } from './story'

export type Intake = {
  readonly fault: string
  readonly settings?: string
  /** Dollars; null: every amount is asked first. */
  readonly limit: number | null
  /** Plain days from the day of seeding. */
  readonly promised: number | null
  readonly oldParts?: boolean
  readonly items: readonly JobItemInput[]
}

export const item = (count: number, label: string): JobItemInput => ({ count, label })

export const takeIn =
  ({ fault, settings = '', limit, promised, oldParts = false, items }: Intake): Deed =>
  async (world, step, job) => {
    const { owner } = OWNED_AMPS[job.amp]
    const [knownCustomer, knownAmp] = [world.customers.get(owner), world.amps.get(job.amp)]
    const taken = takeInJob(step, world.shop, {
      customer: knownCustomer ? { id: knownCustomer } : { details: DEMO_CUSTOMERS[owner] },
      amp: knownAmp ? { id: knownAmp } : { details: ampDetailsOf(job.amp) },
      intake: {
        fault,
        faultSettings: settings,
        spendingLimit: limit === null ? null : money(limit * 100),
        promisedOn: promised === null ? null : world.calendar.day(promised),
        oldPartsBack: oldParts,
        items,
      },
      address: ADDRESS,
    })
    const { number } = await settled(world.shop, `taking in ${job.amp}`, taken)
    const head = await findJobHead(number)
    if (!head) throw new Error(`Job ${number} was taken in but is not there`)
    job.number = number
    world.customers.set(owner, head.customer.id)
    world.amps.set(job.amp, head.amp.id)
  }
