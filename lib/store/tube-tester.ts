/** The shop's instruments as a test of a tube asks for them: by name, with the day of calibration. */
import { type Day, readDay } from '@/lib/domain/calendar'
import type { InstrumentKind } from '@/lib/domain/shop/instrument'
import { db, type Tx } from './database'

const TUBE_TESTER: InstrumentKind = 'tube tester'

export async function listTubeTesters(): Promise<string[]> {
  const where = { active: true, kind: TUBE_TESTER }
  const rows = await db().instrument.findMany({ where, orderBy: { name: 'asc' }, select: { name: true } })
  return rows.map(({ name }) => name)
}

/** Null when the shop has no instrument of that name, or its calibration is not known. */
export async function findCalibration(tx: Tx, name: string): Promise<Day | null> {
  const where = { name, active: true, calibratedOn: { not: null } }
  const row = await tx.instrument.findFirst({
    where,
    orderBy: { calibratedOn: 'desc' },
    select: { calibratedOn: true },
  })
  return readDay(row?.calibratedOn ?? '')
}
