import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { migrate, migrationsFolder, schemaDrift } from '@/lib/setup/migrate'
import { draftMigration } from '@/lib/setup/new-migration'
import { prepareShop } from '@/lib/setup/prepare-shop'

let folder = ''
let path = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'benchglow-migrate-'))
  path = join(folder, 'shop.db')
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function rows<T>(sql: string): readonly T[] {
  const database = new Database(path, { readonly: true })
  try {
    return database.prepare<[], T>(sql).all()
  } finally {
    database.close()
  }
}

function execute(sql: string) {
  const database = new Database(path)
  database.exec(sql)
  database.close()
}

describe('the migrations of the shop', () => {
  const names = readdirSync(migrationsFolder).filter((name) => /^\d{14}_/.test(name))

  test('are applied once, oldest first, and then never again', async () => {
    expect(await migrate(path)).toEqual(names)
    expect(await migrate(path)).toEqual([])
  })

  test('lead to just what the schema says', async () => {
    await migrate(path)
    expect(await schemaDrift(path)).toBe('')
  })

  test('lead to just what the schema says, and a column that differs would be seen', async () => {
    await migrate(path)
    execute('ALTER TABLE "Counter" ADD COLUMN "surplus" TEXT')
    expect(await schemaDrift(path)).toContain('"new_Counter"')
  })

  test('what was noted of noise stays as it was, and microphony is not made up', async () => {
    const before = names.filter((name) => !name.endsWith('_microphony'))
    const scripts = before.map((name) => readFileSync(join(migrationsFolder, name, 'migration.sql'), 'utf8'))
    const script = readFileSync(
      join(migrationsFolder, names.find((name) => name.endsWith('_microphony')) ?? '', 'migration.sql'),
      'utf8',
    )
    execute(scripts.join('\n'))
    execute(`PRAGMA foreign_keys = OFF; INSERT INTO "TubeTest" ("id", "tubeId", "testedAt", "testedBy", "instrumentName", "noise")
      VALUES ('t', 'a', 0, 'Ines', 'Tester', 'rings when tapped')`)
    execute(script)
    expect(rows('SELECT noise, microphony FROM "TubeTest"')).toEqual([{ noise: 'rings when tapped', microphony: null }])
  })

  // The format of Prisma's own tool: the checksum is the SHA-256 of the script (from memory).
  test('are recorded with the checksum of their script, as the tool of the database client records them', async () => {
    await migrate(path)
    const recorded = rows<{ migration_name: string; checksum: string; done: number }>(
      `SELECT migration_name, checksum, finished_at IS NOT NULL AS done FROM _prisma_migrations ORDER BY migration_name`,
    )
    const expected = names.map((name) => ({
      migration_name: name,
      checksum: createHash('sha256')
        .update(readFileSync(join(migrationsFolder, name, 'migration.sql')))
        .digest('hex'),
      done: 1,
    }))
    expect(recorded).toEqual(expected)
  })
})

describe('a new migration', () => {
  const schema = (fields: string) => `datasource db {
  provider = "sqlite"
}

model Tube {
  mark String @id
${fields}
}
`
  const draft = (name: string, fields: string, at: string) => {
    const file = join(folder, 'schema.prisma')
    writeFileSync(file, schema(fields))
    return draftMigration(name, new Date(at), join(folder, 'migrations'), file)
  }

  test('says the difference to the one before, and keeps the rows that are there', async () => {
    const first = await draft('tubes', '  price Int', '2026-01-02T03:04:05Z')
    expect(first?.folder).toBe(join(folder, 'migrations', '20260102030405_tubes'))
    await migrate(path, join(folder, 'migrations'))
    execute(`INSERT INTO "Tube" VALUES ('T-1', 900)`)

    const second = await draft('add-shelf', `  price Int\n  shelf String @default("A")`, '2026-01-03T00:00:00Z')
    expect(second?.sql).toContain('"shelf" TEXT NOT NULL DEFAULT')
    expect(await migrate(path, join(folder, 'migrations'))).toEqual(['20260103000000_add_shelf'])
    expect(rows('SELECT * FROM "Tube"')).toEqual([{ mark: 'T-1', price: 900, shelf: 'A' }])
  })

  test('is not written when the schema says nothing new', async () => {
    await draft('tubes', '  price Int', '2026-01-02T03:04:05Z')
    expect(await draft('nothing', '  price Int', '2026-01-03T00:00:00Z')).toBeNull()
    expect(readdirSync(join(folder, 'migrations')).filter((name) => name.startsWith('2026'))).toHaveLength(1)
  })

  test('has a name of small words', async () => {
    await expect(draft('Add Shelf', '  price Int', '2026-01-02T03:04:05Z')).rejects.toThrow('not "Add Shelf"')
  })

  test('that fails is named, and blocks the next start instead of leaving a half-changed shop in use', async () => {
    await draft('tubes', '  price Int', '2026-01-02T03:04:05Z')
    await draft('add-shelf', `  price Int\n  shelf String @default("A")`, '2026-01-03T00:00:00Z')
    const script = join(folder, 'migrations', '20260103000000_add_shelf', 'migration.sql')
    writeFileSync(script, 'ALTER TABLE "Nowhere" ADD COLUMN "shelf" TEXT;\n')
    const again = () => migrate(path, join(folder, 'migrations'))
    await expect(again()).rejects.toThrow('Nowhere')
    await expect(again()).rejects.toThrow('20260103000000_add_shelf')
  })
})

describe('making a shop ready', () => {
  test('keeps a copy of the records as they were before a migration changes them', async () => {
    await prepareShop(folder, { empty: true })
    path = join(folder, 'benchglow.db')
    execute(`INSERT INTO "Counter" VALUES ('job', 7)`)
    await prepareShop(folder, { empty: true })
    expect(readdirSync(folder)).toEqual(['benchglow.db'])

    // As if it had come with an update of the program; its tables are there already, so it fails.
    const [first] = rows<{ migration_name: string }>('SELECT migration_name FROM _prisma_migrations')
    execute(`DELETE FROM _prisma_migrations WHERE migration_name = '${first?.migration_name}'`)
    await expect(prepareShop(folder, { empty: true })).rejects.toThrow(/As they were.*before-/)
    // A second try must not put the half-changed records in the place of the copy.
    execute(`UPDATE "Counter" SET "next" = 0`)
    await expect(prepareShop(folder, { empty: true })).rejects.toThrow()
    path = join(folder, `before-${first?.migration_name}.db`)
    expect(rows('SELECT * FROM "Counter"')).toEqual([{ name: 'job', next: 7 }])
  })
})
