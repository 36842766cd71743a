import { execFile } from 'node:child_process'
import { rmSync } from 'node:fs'
import { promisify } from 'node:util'
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import { afterEach, describe, expect, test } from 'vitest'
import { PrismaClient } from '@/generated/sqlite/client'
import { type Db, inTransaction, openDatabase } from '@/lib/store/database'
import { copyOfTemplate } from '@/tests/support/fresh-database'

const cleanups: (() => Promise<void> | void)[] = []
afterEach(async () => {
  for (const cleanup of cleanups.splice(0).reverse()) await cleanup()
})

function opened(open: (path: string) => Db): Db {
  const { folder, path } = copyOfTemplate()
  const database = open(path)
  cleanups.push(
    () => rmSync(folder, { recursive: true, force: true }),
    () => database.$disconnect(),
  )
  return database
}

const plain = (path: string) => new PrismaClient({ adapter: new PrismaBetterSqlite3({ url: `file:${path}` }) })

function gate() {
  let open = () => {}
  const passed = new Promise<void>((resolve) => {
    open = resolve
  })
  return { open, passed }
}

/** One request saves a row while another holds a transaction open that is then rolled back. */
async function saveDuringRollback(database: Db) {
  const begun = gate()
  const finish = gate()
  const rolledBack = database
    .$transaction(async (tx) => {
      await tx.counter.create({ data: { name: 'of the first request', next: 1 } })
      begun.open()
      await finish.passed
      throw new Error('the first request changes its mind')
    })
    .catch((error: Error) => error.message)
  await begun.passed
  const saved = database.counter.create({ data: { name: 'of the second request', next: 1 } }).then((row) => row.name)
  // With one connection the save is already answered here; with two it waits for its turn.
  await Promise.race([saved, new Promise((resolve) => setTimeout(resolve, 200))])
  finish.open()
  return {
    saved: await saved,
    first: await rolledBack,
    kept: (await database.counter.findMany()).map((row) => row.name),
  }
}

describe('a save during the rolled-back transaction of another request', () => {
  test('is lost by the plain adapter, although it was answered as saved: the reason for our own', async () => {
    const { saved, first, kept } = await saveDuringRollback(opened(plain))
    expect(first).toBe('the first request changes its mind')
    expect(saved).toBe('of the second request')
    // Fails when the adapter is mended upstream; lib/store/sqlite-connections.ts can then go.
    expect(kept).toEqual([])
  })

  test('is kept by ours', async () => {
    const { saved, first, kept } = await saveDuringRollback(opened(openDatabase))
    expect(first).toBe('the first request changes its mind')
    expect(saved).toBe('of the second request')
    expect(kept).toEqual(['of the second request'])
  })
})

async function addOne(database: Db) {
  await inTransaction(async (tx) => {
    const { next } = await tx.counter.findUniqueOrThrow({ where: { name: 'job' } })
    await tx.counter.update({ where: { name: 'job' }, data: { next: next + 1 } })
  }, database)
}

async function counted(database: Db) {
  return (await database.counter.findUniqueOrThrow({ where: { name: 'job' } })).next
}

describe('transactions', () => {
  test('50 read-modify-writes at once count exactly 50', async () => {
    const database = opened(openDatabase)
    await database.counter.create({ data: { name: 'job', next: 0 } })
    await Promise.all(Array.from({ length: 50 }, () => addOne(database)))
    expect(await counted(database)).toBe(50)
  })

  test('two processes on one file, 100 each at once, count exactly 200', async () => {
    const { folder, path } = copyOfTemplate()
    const database = openDatabase(path)
    cleanups.push(
      () => rmSync(folder, { recursive: true, force: true }),
      () => database.$disconnect(),
    )
    await database.counter.create({ data: { name: 'job', next: 0 } })
    const counting = ['--import', 'tsx', 'tests/support/count-up.ts', path, '100']
    const both = [0, 1].map(() => promisify(execFile)(process.execPath, counting))
    await Promise.all(both)
    expect(await counted(database)).toBe(200)
  })

  test('a transaction sees its own writes, and the outside sees them only once it is done', async () => {
    const database = opened(openDatabase)
    await database.counter.create({ data: { name: 'job', next: 1 } })
    const inside = await inTransaction(async (tx) => {
      await tx.counter.update({ where: { name: 'job' }, data: { next: 2 } })
      expect(await counted(database)).toBe(1)
      return (await tx.counter.findUniqueOrThrow({ where: { name: 'job' } })).next
    }, database)
    expect(inside).toBe(2)
    expect(await counted(database)).toBe(2)
  })

  test('what it wrote is gone when it throws, and the next one goes ahead', async () => {
    const database = opened(openDatabase)
    await database.counter.create({ data: { name: 'job', next: 1 } })
    const failing = inTransaction(async (tx) => {
      await tx.counter.update({ where: { name: 'job' }, data: { next: 99 } })
      throw new Error('no')
    }, database)
    await expect(failing).rejects.toThrow('no')
    await addOne(database)
    expect(await counted(database)).toBe(2)
  })

  test('a write through the outer client inside one is refused at once instead of waiting for itself', async () => {
    const database = opened(openDatabase)
    const selfWaiting = inTransaction(
      () => database.counter.create({ data: { name: 'job', next: 1 } }).then((row) => row),
      database,
    )
    await expect(selfWaiting).rejects.toThrow('use the one passed in')
    const nested = inTransaction(() => inTransaction(async () => 1, database), database)
    await expect(nested).rejects.toThrow('cannot start inside another')
    await database.counter.create({ data: { name: 'job', next: 1 } })
    expect(await counted(database)).toBe(1)
  })

  test('one whose callback outlives its time is rolled back and lets the next in', async () => {
    const database = opened(openDatabase)
    const slow = database.$transaction(
      async (tx) => {
        await tx.counter.create({ data: { name: 'slow', next: 1 } })
        await new Promise((resolve) => setTimeout(resolve, 300))
        await tx.counter.create({ data: { name: 'late', next: 1 } })
      },
      { timeout: 100 },
    )
    await expect(slow).rejects.toThrow('expired transaction')
    await database.counter.create({ data: { name: 'job', next: 1 } })
    expect((await database.counter.findMany()).map((row) => row.name)).toEqual(['job'])
  })

  test('one that waits for its turn too long is refused and takes no turn afterwards', async () => {
    const database = opened(openDatabase)
    const finish = gate()
    const begun = gate()
    const holding = database.$transaction(async (tx) => {
      await tx.counter.create({ data: { name: 'job', next: 1 } })
      begun.open()
      await finish.passed
    })
    await begun.passed
    await expect(database.$transaction(async () => 1, { maxWait: 50 })).rejects.toThrow('Unable to start a transaction')
    finish.open()
    await holding
    await addOne(database)
    expect(await counted(database)).toBe(2)
  })

  test('a COMMIT that fails leaves nothing of itself behind', async () => {
    const database = opened(openDatabase)
    const dangling = inTransaction(async (tx) => {
      await tx.$executeRawUnsafe('PRAGMA defer_foreign_keys = ON')
      await tx.$executeRawUnsafe(
        `INSERT INTO "SignInSession" ("tokenHash", "personId", "expiresAt") VALUES ('t', 'nobody', '2026-01-01')`,
      )
    }, database)
    await expect(dangling).rejects.toThrow()
    expect(await database.signInSession.count()).toBe(0)
    await database.counter.create({ data: { name: 'job', next: 1 } })
    expect(await counted(database)).toBe(1)
  })
})

describe('the connections', () => {
  const pragma = async (query: { $queryRawUnsafe: Db['$queryRawUnsafe'] }, name: string) => {
    const rows = await query.$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${name}`)
    return Object.values(rows[0] ?? {}).map((value) => (typeof value === 'string' ? value : Number(value)))[0]
  }
  const settings = async (query: { $queryRawUnsafe: Db['$queryRawUnsafe'] }) => ({
    journal: await pragma(query, 'journal_mode'),
    synchronous: await pragma(query, 'synchronous'),
    foreignKeys: await pragma(query, 'foreign_keys'),
    busyTimeout: await pragma(query, 'busy_timeout'),
    queryOnly: await pragma(query, 'query_only'),
  })

  test('write ahead, in full, with foreign keys, waiting 5 s for a lock; the reader cannot write', async () => {
    const database = opened(openDatabase)
    const expected = { journal: 'wal', synchronous: 2, foreignKeys: 1, busyTimeout: 5000 }
    const writer = await inTransaction((tx) => settings(tx), database)
    expect(writer).toEqual({ ...expected, queryOnly: 0 })
    expect(await settings(database)).toEqual({ ...expected, queryOnly: 1 })
  })

  test('a row that points at nobody is refused', async () => {
    const database = opened(openDatabase)
    const data = { tokenHash: 't', personId: 'nobody', expiresAt: new Date(0) }
    await expect(database.signInSession.create({ data })).rejects.toMatchObject({ code: 'P2003' })
  })

  test('a write that answers with rows goes to the writer', async () => {
    const database = opened(openDatabase)
    const rows = await database.$queryRaw`INSERT INTO "Counter" ("name", "next") VALUES ('job', 7) RETURNING "next"`
    expect(rows).toEqual([{ next: 7 }])
    expect(await counted(database)).toBe(7)
  })

  test('a database in memory is refused: two connections would be two databases', () => {
    expect(() => openDatabase(':memory:')).toThrow('needs a file path')
  })
})
