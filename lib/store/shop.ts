import { money } from '@/lib/domain/money'
import type { PaperSize, Shop, ShopSettings } from '@/lib/domain/shop/shop'
import type { WordSet } from '@/lib/domain/words'
import { db, type Tx } from './database'
import { listOwnTubeTypes } from './own-type'

const KEY = { id: 1 } as const

export async function findShop(tx: Tx = db()): Promise<Shop | null> {
  const row = await tx.shop.findUnique({ where: KEY })
  if (!row) return null
  const {
    id: _id,
    idleFixedLow,
    idleFixedHigh,
    idleCathodeLow,
    idleCathodeHigh,
    idleSingleLow,
    idleSingleHigh,
    ...rest
  } = row
  return {
    ...rest,
    ownTypes: await listOwnTubeTypes(tx),
    paper: row.paper as PaperSize,
    words: row.words as WordSet,
    hourlyRate: money(row.hourlyRate),
    idleFixed: { low: idleFixedLow, high: idleFixedHigh },
    idleCathode: { low: idleCathodeLow, high: idleCathodeHigh },
    idleSingle: { low: idleSingleLow, high: idleSingleHigh },
  }
}

function columns({ idleFixed, idleCathode, idleSingle, ...rest }: ShopSettings) {
  return {
    ...rest,
    idleFixedLow: idleFixed.low,
    idleFixedHigh: idleFixed.high,
    idleCathodeLow: idleCathode.low,
    idleCathodeHigh: idleCathode.high,
    idleSingleLow: idleSingle.low,
    idleSingleHigh: idleSingle.high,
  }
}

export async function createShop(tx: Tx, settings: ShopSettings, demo = false): Promise<void> {
  await tx.shop.create({ data: { ...KEY, ...columns(settings), demo } })
}

/** False when somebody saved since `version`. */
export async function saveShop(tx: Tx, version: number, settings: ShopSettings): Promise<boolean> {
  const { count } = await tx.shop.updateMany({
    where: { ...KEY, version },
    data: { ...columns(settings), version: version + 1 },
  })
  return count === 1
}

/** Whether an amount in the shop's currency stands anywhere but in its settings. */
export async function moneyWritten(tx: Tx): Promise<boolean> {
  const counts = [
    await tx.quote.count(),
    await tx.tube.count(),
    await tx.payment.count(),
    await tx.operation.count({ where: { flatPrice: { not: null } } }),
    await tx.job.count({ where: { spendingLimit: { not: null } } }),
  ]
  return counts.some((count) => count > 0)
}
