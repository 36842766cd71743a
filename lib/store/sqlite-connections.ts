/**
 * SQLite through two connections: one that reads, one that writes.
 *
 * Why not the adapter as it comes: it owns a single connection, and while one request
 * holds an interactive transaction open, a write of another request runs on that same
 * connection, inside the first request's transaction. When the first rolls back, the
 * second write vanishes although its caller was told it had been saved.
 * tests/store/database.test.ts shows the loss with the plain adapter.
 *
 * The cure:
 *  - statements that SQLite itself calls read-only go to the reader, all others to the writer;
 *  - one turn at a time on the writer: a transaction keeps the turn until it has ended;
 *  - a transaction starts with BEGIN IMMEDIATE, so the write lock is taken at once and a
 *    read-modify-write can never find that another process wrote in between;
 *  - the reader sees committed rows only (WAL gives each statement one snapshot) and refuses to write.
 *
 * Assumes a database file on a local disk. `:memory:` would be two separate databases and is refused.
 */
import { AsyncLocalStorage } from 'node:async_hooks'
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import {
  DriverAdapterError,
  type IsolationLevel,
  type SqlDriverAdapter,
  type SqlDriverAdapterFactory,
  type SqlQuery,
  type Transaction,
} from '@prisma/driver-adapter-utils'
import type { Database } from 'better-sqlite3'
import { openTurnstile, type Turnstile } from './turnstile'

/** How long one process waits for another to give up the file's write lock. */
const busyMilliseconds = 5_000
/** Prepared texts whose kind is remembered; queries are parameterised, so a shop uses a few hundred. */
const rememberedStatements = 2_000

/** Set while a transaction callback runs: a write through the outer client would wait for itself. */
export const insideTransaction = new AsyncLocalStorage<true>()

type Connection = { readonly adapter: SqlDriverAdapter; readonly handle: Database }
type Pair = { readonly reader: Connection; readonly writer: Connection; readonly turns: Turnstile }

/** `watch` is shown the writer before anything is written through it. */
export function sqliteConnections(path: string, watch: (writer: Database) => void = () => {}): SqlDriverAdapterFactory {
  if (path === '' || path.includes(':memory:')) throw new Error(`A database needs a file path, got "${path}"`)
  const stock = new PrismaBetterSqlite3({ url: `file:${path}`, timeout: busyMilliseconds })
  return {
    provider: stock.provider,
    adapterName: stock.adapterName,
    async connect() {
      // The writer first: it creates the file and turns WAL on, which a reader cannot.
      const writer = connection(await stock.connect(), ['journal_mode = WAL'])
      watch(writer.handle)
      const reader = connection(await stock.connect(), ['query_only = ON'])
      return pairedAdapter({ reader, writer, turns: openTurnstile() })
    },
  }
}

function connection(adapter: SqlDriverAdapter, pragmas: readonly string[]): Connection {
  const handle = (adapter as SqlDriverAdapter & { client?: Database }).client
  if (typeof handle?.prepare !== 'function') throw new Error('The SQLite adapter no longer shows its connection')
  for (const pragma of ['synchronous = FULL', 'foreign_keys = ON', `busy_timeout = ${busyMilliseconds}`, ...pragmas]) {
    handle.pragma(pragma)
  }
  return { adapter, handle }
}

function pairedAdapter(pair: Pair): SqlDriverAdapter {
  const { reader, writer, turns } = pair
  const onlyReads = statementKinds(reader.handle)
  const inTurn = <T>(work: () => Promise<T>) => {
    refuseInsideTransaction()
    return turns.take(work)
  }
  return {
    provider: reader.adapter.provider,
    adapterName: reader.adapter.adapterName,
    async queryRaw(query) {
      return onlyReads(query) ? reader.adapter.queryRaw(query) : inTurn(() => writer.adapter.queryRaw(query))
    },
    async executeRaw(query) {
      return onlyReads(query) ? reader.adapter.executeRaw(query) : inTurn(() => writer.adapter.executeRaw(query))
    },
    executeScript: async (script) => inTurn(() => writer.adapter.executeScript(script)),
    startTransaction: async (isolation) => startTransaction(pair, isolation),
    async dispose() {
      await reader.adapter.dispose()
      await turns.take(() => writer.adapter.dispose())
    },
  }
}

async function startTransaction({ writer, turns }: Pair, isolation?: IsolationLevel): Promise<Transaction> {
  if (isolation !== undefined && isolation !== 'SERIALIZABLE') {
    throw new DriverAdapterError({ kind: 'InvalidIsolationLevel', level: isolation })
  }
  refuseInsideTransaction()
  const endTurn = await turns.enter()
  try {
    await writer.adapter.executeRaw(statement('BEGIN IMMEDIATE'))
  } catch (error) {
    endTurn()
    throw error
  }
  return openTransaction(writer, endTurn)
}

/** The engine sends COMMIT or ROLLBACK as a statement and then calls the method, which ends the turn. */
function openTransaction({ adapter, handle }: Connection, endTurn: () => void): Transaction {
  const run = async (sql: string) => {
    await adapter.executeRaw(statement(sql))
  }
  const end = async () => {
    try {
      // Still open when COMMIT itself failed: nothing of it may leak into the next turn.
      if (handle.inTransaction) await run('ROLLBACK')
    } finally {
      endTurn()
    }
  }
  return {
    provider: adapter.provider,
    adapterName: adapter.adapterName,
    options: { usePhantomQuery: false },
    queryRaw: async (query) => adapter.queryRaw(query),
    executeRaw: async (query) => adapter.executeRaw(query),
    commit: end,
    rollback: end,
    createSavepoint: (name) => run(`SAVEPOINT ${name}`),
    rollbackToSavepoint: (name) => run(`ROLLBACK TO ${name}`),
    releaseSavepoint: (name) => run(`RELEASE SAVEPOINT ${name}`),
  }
}

/** Asks SQLite, not the text. A text it cannot prepare goes to the writer, whose error then reaches the caller. */
function statementKinds(handle: Database): (query: SqlQuery) => boolean {
  const known = new Map<string, boolean>()
  return ({ sql }) => {
    let readonly = known.get(sql)
    if (readonly === undefined) {
      readonly = isReadonly(handle, sql)
      if (known.size >= rememberedStatements) known.clear()
      known.set(sql, readonly)
    }
    return readonly
  }
}

function isReadonly(handle: Database, sql: string): boolean {
  try {
    return handle.prepare(sql).readonly
  } catch {
    return false
  }
}

function refuseInsideTransaction() {
  if (insideTransaction.getStore()) {
    throw new Error(
      'A write through the outer client inside a transaction would wait for itself: use the one passed in',
    )
  }
}

const statement = (sql: string): SqlQuery => ({ sql, args: [], argTypes: [] })
