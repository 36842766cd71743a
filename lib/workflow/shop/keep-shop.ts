/**
 * Changes the shop's settings. The currency stands once an amount is written
 * anywhere: the amounts are whole minor units, and would silently mean another
 * money.
 */
import { changesBetween } from '@/lib/domain/history/changes'
import type { Result } from '@/lib/domain/result'
import type { ShopSettings } from '@/lib/domain/shop/shop'
import { shopShown } from '@/lib/domain/shop/shop-shown'
import { inTransaction, type Tx } from '@/lib/store/database'
import { writeHistory } from '@/lib/store/history'
import { findShop, moneyWritten, saveShop } from '@/lib/store/shop'
import { allowed, refuse, refusing, type Step, stale } from '@/lib/workflow/step/step'
import type { StepFault } from '@/lib/workflow/step/step-fault'

const SUBJECT_ID = '1'

export type ShopInput = { readonly version: number; readonly settings: ShopSettings }

export async function keepShop(step: Step, input: ShopInput): Promise<Result<null, StepFault>> {
  const may = allowed(step, 'keep-shop')
  return may.ok ? refusing(() => inTransaction((tx) => save(tx, step, input))) : may
}

async function save(tx: Tx, { actor, now }: Step, { version, settings }: ShopInput): Promise<null> {
  const before = await findShop(tx)
  if (!before) return refuse({ code: 'not-found', what: 'The shop' })
  if (settings.currency !== before.currency && (await moneyWritten(tx)))
    return refuse({ code: 'currency-stands', currency: before.currency })
  if (!(await saveShop(tx, version, settings))) return refuse(await stale(tx, 'shop', SUBJECT_ID, version))
  const changes = changesBetween(shopShown(before), shopShown(settings))
  await writeHistory(tx, {
    at: now,
    person: actor.name,
    subject: 'shop',
    subjectId: SUBJECT_ID,
    did: 'Settings changed',
    changes,
    version: version + 1,
  })
  return null
}
