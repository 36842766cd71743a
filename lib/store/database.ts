import { join, resolve } from 'node:path'
import { type Prisma, PrismaClient } from '@/generated/sqlite/client'
import { TubeWrites } from './kept/tube-writes'
import { insideTransaction, sqliteConnections } from './sqlite-connections'

export type Db = PrismaClient
/** The client inside a transaction: the same queries, without starting another one. */
export type Tx = Prisma.TransactionClient

/** A start may queue behind others; a transaction itself is a handful of statements. */
const transactionOptions = { maxWait: 15_000, timeout: 15_000 }

export function openDatabase(path: string, writes = new TubeWrites()): Db {
  const adapter = sqliteConnections(path, (writer) => writes.watch(writer))
  return new PrismaClient({ adapter, transactionOptions })
}

/** Where the shop's records live: BENCHGLOW_DATA, or `data` beside the program. */
export function dataFolder(): string {
  // The comment keeps the bundler from packing the whole project as what this might read.
  return resolve(/*turbopackIgnore: true*/ process.env.BENCHGLOW_DATA || 'data')
}

export function databasePath(): string {
  return join(/*turbopackIgnore: true*/ dataFolder(), 'benchglow.db')
}

// Kept on globalThis: a development reload evaluates this module again, and the server's
// bundles may hold it more than once, but the file must have one writer in the process.
const shared = globalThis as typeof globalThis & { benchglowDatabase?: Db; benchglowTubeWrites?: TubeWrites }

export function db(): Db {
  if (process.env.NEXT_PHASE === 'phase-production-build') {
    throw new Error('A page asked for the database while being built: it must be rendered on request')
  }
  shared.benchglowDatabase ??= openDatabase(databasePath(), newTubeWrites())
  return shared.benchglowDatabase
}

function newTubeWrites(): TubeWrites {
  shared.benchglowTubeWrites = new TubeWrites()
  return shared.benchglowTubeWrites
}

/** Of the database of this process: a new one where that was closed and opened again. */
export function tubeWrites(): TubeWrites {
  db()
  return shared.benchglowTubeWrites ?? newTubeWrites()
}

export async function closeDatabase(): Promise<void> {
  const open = shared.benchglowDatabase
  shared.benchglowDatabase = undefined
  await open?.$disconnect()
}

/**
 * Runs the work as one transaction: all of it is saved or none. Query only through the
 * client passed in; the outer one does not see what the transaction has not yet saved.
 */
export function inTransaction<T>(work: (tx: Tx) => Promise<T>, database: Db = db()): Promise<T> {
  if (insideTransaction.getStore()) throw new Error('A transaction cannot start inside another: pass the client on')
  return database.$transaction((tx) => insideTransaction.run(true, () => work(tx)))
}
