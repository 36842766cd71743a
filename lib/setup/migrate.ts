/** Brings a database file up to the newest migration. Running it again changes nothing. */
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import type { MigrationList } from '@prisma/schema-engine-wasm'
import Database from 'better-sqlite3'
import { withSchemaEngine } from './schema-engine'

export const migrationsFolder = resolve(import.meta.dirname, '../../prisma/migrations')
export const schemaPath = resolve(import.meta.dirname, '../../prisma/schema.prisma')
export const noFilter = { externalTables: [], externalEnums: [] }

/** Answers the names of the migrations it applied, oldest first. */
export async function migrate(path: string, folder: string = migrationsFolder): Promise<readonly string[]> {
  mkdirSync(dirname(path), { recursive: true })
  return withSchemaEngine(path, [[schemaPath, readFileSync(schemaPath, 'utf8')]], async (engine) => {
    const migrationsList = readMigrations(folder)
    const { appliedMigrationNames } = await engine.applyMigrations({ migrationsList, filters: noFilter })
    return appliedMigrationNames
  })
}

/** The names of the migrations an existing file still lacks, oldest first. */
export function pendingMigrations(path: string, folder: string = migrationsFolder): readonly string[] {
  const names = readMigrations(folder).migrationDirectories.map((directory) => directory.path)
  const handle = new Database(path)
  try {
    const known = handle.prepare(`SELECT 1 FROM sqlite_master WHERE name = '_prisma_migrations'`).get()
    if (!known) return names
    const done = handle.prepare<[], string>(
      'SELECT migration_name FROM _prisma_migrations WHERE finished_at IS NOT NULL',
    )
    const finished = new Set(done.pluck().all())
    return names.filter((name) => !finished.has(name))
  } finally {
    handle.close()
  }
}

export function readMigrations(folder: string): MigrationList {
  const names = existsSync(folder)
    ? readdirSync(folder, { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .map((entry) => entry.name)
        .sort()
    : []
  const lockfile = join(folder, 'migration_lock.toml')
  return {
    baseDir: folder,
    lockfile: { path: 'migration_lock.toml', content: existsSync(lockfile) ? readFileSync(lockfile, 'utf8') : null },
    shadowDbInitScript: '',
    migrationDirectories: names.map((name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok', value: readFileSync(join(folder, name, 'migration.sql'), 'utf8') },
      },
    })),
  }
}

/** What would still have to change for the file to be what the schema says, as SQL; empty when they agree. */
export async function schemaDrift(path: string, schemaFile: string = schemaPath): Promise<string> {
  const content = readFileSync(schemaFile, 'utf8')
  const { stdout } = await withSchemaEngine(path, [[schemaFile, content]], (engine) =>
    engine.diff({
      from: { tag: 'schemaDatasource', files: [{ path: schemaFile, content }], configDir: dirname(schemaFile) },
      to: { tag: 'schemaDatamodel', files: [{ path: schemaFile, content }] },
      script: true,
      exitCode: null,
      filters: noFilter,
    }),
  )
  return scriptOf(stdout)
}

/** The engine answers a comment when there is nothing to do. */
export function scriptOf(stdout: string | null): string {
  const sql = stdout?.trim() ?? ''
  return sql === '-- This is an empty migration.' ? '' : sql
}
