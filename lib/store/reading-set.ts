/** Rounds of bench readings. A set is saved whole: its conditions and every socket read. */
import type { Prisma } from '@/generated/sqlite/client'
import type {
  Phase,
  ReadingConditions,
  ReadingMethod,
  ReadingSet,
  SignalState,
  SocketEntry,
} from '@/lib/domain/bench/reading-set'
import { ohms } from '@/lib/domain/units'
import { db, type Tx } from './database'

const columns = {
  id: true,
  jobId: true,
  phase: true,
  takenAt: true,
  takenBy: true,
  instrumentId: true,
  wallVolts: true,
  warmupMinutes: true,
  signalState: true,
  resistorTolerancePercent: true,
  copperWarmingCelsius: true,
  note: true,
  version: true,
  instrument: {
    select: {
      id: true,
      name: true,
      calibratedOn: true,
      accuracyPercent: true,
      accuracyCounts: true,
      displayCounts: true,
      inputOhms: true,
    },
  },
  readings: {
    orderBy: { socket: { place: 'asc' } },
    select: {
      socketId: true,
      method: true,
      plateVolts: true,
      cathodeVolts: true,
      screenVolts: true,
      gridVolts: true,
      senseDropVolts: true,
      halfDropVolts: true,
      screenDropVolts: true,
    },
  },
} satisfies Prisma.ReadingSetSelect

type Row = Prisma.ReadingSetGetPayload<{ select: typeof columns }>

function readingSet({ instrument, readings, ...row }: Row): ReadingSet {
  return {
    ...row,
    phase: row.phase as Phase,
    signalState: row.signalState as SignalState,
    instrumentName: instrument.name,
    calibratedOn: instrument.calibratedOn,
    meter: {
      id: instrument.name,
      percentOfReading: instrument.accuracyPercent,
      counts: instrument.accuracyCounts,
      displayCounts: instrument.displayCounts,
      inputResistance: ohms(instrument.inputOhms),
    },
    entries: readings.map((reading) => ({ ...reading, method: reading.method as ReadingMethod })),
  }
}

export async function findReadingSet(id: string, tx: Tx = db()): Promise<ReadingSet | null> {
  const row = await tx.readingSet.findUnique({ where: { id }, select: columns })
  return row && readingSet(row)
}

/** Newest first. */
export async function listReadingSets(jobId: string, tx: Tx = db()): Promise<ReadingSet[]> {
  const rows = await tx.readingSet.findMany({
    where: { jobId },
    orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
    select: columns,
  })
  return rows.map(readingSet)
}

/** The one that counts for a phase: the latest. */
export async function findLatestReadings(jobId: string, phase: Phase, tx: Tx = db()): Promise<ReadingSet | null> {
  const orderBy = [{ takenAt: 'desc' }, { id: 'desc' }] satisfies Prisma.ReadingSetOrderByWithRelationInput[]
  const row = await tx.readingSet.findFirst({ where: { jobId, phase }, orderBy, select: columns })
  return row && readingSet(row)
}

/** The newest of any phase and any job this amplifier was here for. */
export async function findLatestReadingsOfAmp(ampId: string, tx: Tx = db()): Promise<ReadingSet | null> {
  const orderBy = [{ takenAt: 'desc' }, { id: 'desc' }] satisfies Prisma.ReadingSetOrderByWithRelationInput[]
  const row = await tx.readingSet.findFirst({ where: { job: { ampId } }, orderBy, select: columns })
  return row && readingSet(row)
}

export type NewReadingSet = ReadingConditions & {
  readonly jobId: string
  readonly takenAt: Date
  readonly takenBy: string
  readonly entries: readonly SocketEntry[]
}

export async function createReadingSet(tx: Tx, { entries, ...set }: NewReadingSet): Promise<string> {
  const readings = { create: entries.map((entry) => ({ ...entry })) }
  const row = await tx.readingSet.create({ data: { ...set, readings }, select: { id: true } })
  return row.id
}

/** False when somebody saved since `version`. */
export async function saveReadingSet(
  tx: Tx,
  id: string,
  version: number,
  conditions: Omit<ReadingConditions, 'phase'>,
  entries: readonly SocketEntry[],
): Promise<boolean> {
  const { count } = await tx.readingSet.updateMany({
    where: { id, version },
    data: { ...conditions, version: version + 1 },
  })
  if (count !== 1) return false
  await tx.reading.deleteMany({ where: { setId: id } })
  await tx.reading.createMany({ data: entries.map((entry) => ({ ...entry, setId: id })) })
  return true
}

export async function removeReadingSet(tx: Tx, id: string): Promise<void> {
  await tx.readingSet.delete({ where: { id } })
}
