/** Laying the items ready, taking the money, handing over. */
import type { PaymentWay } from '@/lib/domain/job/account'
import { money } from '@/lib/domain/money'
import { findJob } from '@/lib/store/job'
import { giveBackItem } from '@/lib/workflow/counter/give-back-item'
import { handOver } from '@/lib/workflow/handover/hand-over'
import { jobAccount } from '@/lib/workflow/handover/job-account'
import { returnUnrepaired } from '@/lib/workflow/handover/return-unrepaired'
import { takePayment } from '@/lib/workflow/handover/take-payment'
import type { Step } from '@/lib/workflow/step/step'
import { settled } from '@/seed/settled'
import type { DemoWorld } from '@/seed/world'
import type { Deed } from './story'

async function layItemsReady({ shop }: DemoWorld, step: Step, number: string): Promise<void> {
  const job = await findJob(number)
  if (!job) throw new Error(`Job ${number} is not there`)
  for (const { id } of job.items)
    await settled(
      shop,
      `the items of job ${number}`,
      giveBackItem(step, { jobNumber: number, itemId: id, returned: true }),
    )
}

async function payBalance({ shop }: DemoWorld, step: Step, number: string, how: PaymentWay): Promise<void> {
  const job = await findJob(number)
  const { balance } = (await jobAccount(job?.id ?? '')).account
  if (balance > 0)
    await settled(
      shop,
      `the payment of job ${number}`,
      takePayment(step, shop, { jobNumber: number, back: false, amount: balance, how }),
    )
}

export type Taker = { readonly name: string; readonly identity?: string }

const collectorOf = ({ name, identity = '' }: Taker) => ({ name, isOwner: identity === '', identity })

export const collect =
  (taker: Taker, how: PaymentWay): Deed =>
  async (world, step, { number }) => {
    await layItemsReady(world, step, number)
    await payBalance(world, step, number, how)
    const handed = { jobNumber: number, collector: collectorOf(taker), itemsNote: '', owesNote: '' }
    await settled(world.shop, `handing over job ${number}`, handOver(step, world.shop, handed))
  }

export type Unrepaired = { readonly reason: string; readonly dollars: number; readonly how: PaymentWay }

export const goesBackAsItIs =
  (taker: Taker, { reason, dollars, how }: Unrepaired): Deed =>
  async (world, step, { number }) => {
    await layItemsReady(world, step, number)
    const charged = { charge: money(dollars * 100), how } as const
    const back = { jobNumber: number, reason, ...charged, collector: collectorOf(taker), itemsNote: '', owesNote: '' }
    await settled(world.shop, `returning job ${number}`, returnUnrepaired(step, world.shop, back))
  }
