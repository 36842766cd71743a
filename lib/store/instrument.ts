import type { Day } from '@/lib/domain/calendar'
import type { Instrument, InstrumentDetails, InstrumentKind } from '@/lib/domain/shop/instrument'
import { ohms } from '@/lib/domain/units'
import { db, type Tx } from './database'

const columns = {
  id: true,
  name: true,
  kind: true,
  calibratedOn: true,
  accuracyPercent: true,
  accuracyCounts: true,
  displayCounts: true,
  inputOhms: true,
  active: true,
  version: true,
} as const

type Row = { kind: string; calibratedOn: string | null; inputOhms: number } & Omit<
  Instrument,
  'kind' | 'calibratedOn' | 'inputResistance'
>

const instrument = ({ inputOhms, ...row }: Row): Instrument => ({
  ...row,
  kind: row.kind as InstrumentKind,
  calibratedOn: row.calibratedOn as Day | null,
  inputResistance: ohms(inputOhms),
})

const written = ({ inputResistance, ...rest }: InstrumentDetails) => ({ ...rest, inputOhms: inputResistance })

/** Those in use first, then the retired ones; both by name. */
export async function listInstruments(): Promise<Instrument[]> {
  const rows = await db().instrument.findMany({ orderBy: [{ active: 'desc' }, { name: 'asc' }], select: columns })
  return rows.map(instrument)
}

export async function findInstrument(id: string, tx: Tx = db()): Promise<Instrument | null> {
  const row = await tx.instrument.findUnique({ where: { id }, select: columns })
  return row && instrument(row)
}

export async function createInstrument(tx: Tx, details: InstrumentDetails): Promise<string> {
  const row = await tx.instrument.create({ data: written(details), select: { id: true } })
  return row.id
}

/** False when somebody saved since `version`. */
export async function saveInstrument(
  tx: Tx,
  id: string,
  version: number,
  details: InstrumentDetails,
): Promise<boolean> {
  const data = { ...written(details), version: version + 1 }
  const { count } = await tx.instrument.updateMany({ where: { id, version }, data })
  return count === 1
}

/** Whether readings were taken with it: they are computed from its figures. */
export async function hasReadings(tx: Tx, instrumentId: string): Promise<boolean> {
  return (await tx.readingSet.count({ where: { instrumentId } })) > 0
}
