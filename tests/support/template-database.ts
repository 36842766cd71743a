/** Before any test: the generated client, and one migrated database file that every test file copies. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import type { TestProject } from 'vitest/node'
import { migrate } from '@/lib/setup/migrate'

declare module 'vitest' {
  export interface ProvidedContext {
    readonly templateDatabase: string
  }
}

export default async function setup(project: TestProject) {
  execFileSync(process.execPath, [resolve('lib/setup/bootstrap.mjs'), 'client'], { stdio: 'inherit' })
  const folder = mkdtempSync(join(tmpdir(), 'benchglow-tests-'))
  const template = join(folder, 'template.db')
  await migrate(template)
  project.provide('templateDatabase', template)
  return () => rmSync(folder, { recursive: true, force: true })
}
