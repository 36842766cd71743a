import { NO_SUPPLY_FACTS, type ScreenFeedKind, type SupplyFacts } from '@/lib/domain/amp/supply-facts'
import { db, type Tx } from './database'

const columns = {
  openSupplyVolts: true,
  sourceOhms: true,
  rectifierType: true,
  reservoirMicrofarads: true,
  screenFeed: true,
  ultralinearTapPercent: true,
  screenDropperOhms: true,
  gridSupplyVolts: true,
  gridColdestVolts: true,
  gridHottestVolts: true,
  gridLeakOhms: true,
  heaterWindingVolts: true,
  heaterWindingAmps: true,
  dischargeOhms: true,
} as const

/** Nothing known, where nothing was written down. */
export async function findSupply(ampId: string, tx: Tx = db()): Promise<SupplyFacts> {
  const row = await tx.ampSupply.findUnique({ where: { ampId }, select: columns })
  return row ? { ...row, screenFeed: row.screenFeed as ScreenFeedKind | null } : NO_SUPPLY_FACTS
}

/** False when somebody saved the amplifier, its sheet or its supply since `version`. */
export async function saveSupply(tx: Tx, ampId: string, version: number, facts: SupplyFacts): Promise<boolean> {
  const { count } = await tx.amp.updateMany({ where: { id: ampId, version }, data: { version: version + 1 } })
  if (count === 1) await writeSupply(tx, ampId, facts)
  return count === 1
}

/** Within a larger save of the amplifier. */
export async function writeSupply(tx: Tx, ampId: string, facts: SupplyFacts): Promise<void> {
  await tx.ampSupply.upsert({ where: { ampId }, create: { ampId, ...facts }, update: facts })
}
