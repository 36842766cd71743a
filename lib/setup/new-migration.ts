/**
 * Writes the next migration: the difference between the schema the last migration left
 * behind and the schema as it stands. Usage: npm run migration -- add-warranty-claims
 *
 * Beside the migrations lies the schema the last of them leads to, so the comparison is
 * between two texts and needs no database.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { DiffTarget } from '@prisma/schema-engine-wasm'
import { migrationsFolder, noFilter, readMigrations, schemaPath, scriptOf } from './migrate'
import { withSchemaEngine } from './schema-engine'

const snapshotName = 'last-schema.prisma'

export type MigrationDraft = { readonly folder: string; readonly sql: string }

/** Null when the schema says nothing new. */
export async function draftMigration(name: string, at: Date, folder = migrationsFolder, schemaFile = schemaPath) {
  if (!/^[a-z0-9]+(-[a-z0-9]+)*$/.test(name))
    throw new Error(`Name a migration like add-warranty-claims, not "${name}"`)
  const schema = readFileSync(schemaFile, 'utf8')
  const sql = await schemaDifference(previousSchema(folder), schema)
  if (sql === '') return null
  const stamp = at.toISOString().replace(/\D/g, '').slice(0, 14)
  const draft = join(folder, `${stamp}_${name.replaceAll('-', '_')}`)
  mkdirSync(draft, { recursive: true })
  writeFileSync(join(draft, 'migration.sql'), `${sql}\n`)
  writeFileSync(join(folder, snapshotName), schema)
  writeFileSync(join(folder, 'migration_lock.toml'), 'provider = "sqlite"\n')
  return { folder: draft, sql } satisfies MigrationDraft
}

function previousSchema(folder: string): string | null {
  if (readMigrations(folder).migrationDirectories.length === 0) return null
  const snapshot = join(folder, snapshotName)
  if (!existsSync(snapshot)) throw new Error(`${snapshot} is missing: the next migration starts from it`)
  return readFileSync(snapshot, 'utf8')
}

async function schemaDifference(before: string | null, after: string): Promise<string> {
  const target = (content: string): DiffTarget => ({
    tag: 'schemaDatamodel',
    files: [{ path: 'schema.prisma', content }],
  })
  const { stdout } = await withSchemaEngine(':memory:', [['schema.prisma', after]], (engine) =>
    engine.diff({
      from: before === null ? { tag: 'empty' } : target(before),
      to: target(after),
      script: true,
      exitCode: null,
      filters: noFilter,
    }),
  )
  return scriptOf(stdout)
}

if (process.argv[1] === import.meta.filename) {
  const draft = await draftMigration(process.argv[2] ?? '', new Date())
  console.log(draft ? `${draft.folder}\n\n${draft.sql}` : 'The schema says nothing the migrations do not.')
}
