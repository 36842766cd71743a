import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, inject } from 'vitest'
import { closeDatabase, type Db, db } from '@/lib/store/database'

/** A migrated, empty database file of one's own. The caller removes the folder. */
export function copyOfTemplate(): { readonly folder: string; readonly path: string } {
  const folder = mkdtempSync(join(tmpdir(), 'benchglow-test-'))
  const path = join(folder, 'benchglow.db')
  copyFileSync(inject('templateDatabase'), path)
  return { folder, path }
}

/**
 * Gives the test file an empty shop and points `db()`, and so everything in lib/store and
 * lib/workflow, at it. Call it once, at the top of the file.
 */
export function freshDatabase(): Db {
  const { folder } = copyOfTemplate()
  process.env.BENCHGLOW_DATA = folder
  afterAll(async () => {
    await closeDatabase()
    rmSync(folder, { recursive: true, force: true })
  })
  return db()
}
