/**
 * Makes the data folder ready: migrates the shop's database and, when there is none yet,
 * fills a new one with the demo shop. BENCHGLOW_EMPTY=1 leaves a new one empty, so that
 * the first-run screen asks for the shop's own details.
 */
import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs'
import { join, resolve } from 'node:path'
import Database from 'better-sqlite3'
import { dataFolder } from '@/lib/store/database'
import { migrate, pendingMigrations } from './migrate'

const seedProgram = resolve(import.meta.dirname, '../../seed/demo-shop.ts')

export async function prepareShop(folder: string, { empty }: { readonly empty: boolean }): Promise<void> {
  mkdirSync(folder, { recursive: true })
  const database = join(folder, 'benchglow.db')
  if (existsSync(database)) return update(folder, database)
  if (!empty) return seedInto(folder)
  await migrate(database)
}

/** A migration is a script, not a transaction: the records as they were are kept beside it. */
async function update(folder: string, database: string): Promise<void> {
  const [first] = pendingMigrations(database)
  if (first === undefined) return
  const copy = join(folder, `before-${first}.db`)
  // A copy that is there is from a try that failed: it is the better one.
  if (!existsSync(copy)) await backUp(database, copy)
  try {
    await migrate(database)
  } catch (cause) {
    throw new Error(`The records could not be brought up to date. As they were, they lie in ${copy}`, { cause })
  }
}

async function backUp(database: string, copy: string): Promise<void> {
  const handle = new Database(database)
  try {
    await handle.backup(copy)
  } finally {
    handle.close()
  }
}

/** In a folder of its own that moves into place when whole: a seed cut short leaves no half shop. */
async function seedInto(folder: string): Promise<void> {
  console.log('Filling the demo shop …')
  const workshop = join(folder, '.seeding')
  rmSync(workshop, { recursive: true, force: true })
  await migrate(join(workshop, 'benchglow.db'))
  const { status } = spawnSync(process.execPath, ['--conditions=react-server', '--import', 'tsx', seedProgram], {
    cwd: resolve(import.meta.dirname, '../..'),
    env: { ...process.env, BENCHGLOW_DATA: workshop },
    stdio: 'inherit',
  })
  if (status !== 0) throw new Error(`The demo shop could not be filled: ${seedProgram} ended with ${status}`)
  // The database last: while it is missing, the next start begins again.
  const names = readdirSync(workshop).sort((a, b) => Number(a === 'benchglow.db') - Number(b === 'benchglow.db'))
  for (const name of names) renameSync(join(workshop, name), join(folder, name))
  rmSync(workshop, { recursive: true })
}

if (process.argv[1] === import.meta.filename) {
  await prepareShop(dataFolder(), { empty: process.env.BENCHGLOW_EMPTY === '1' })
}
