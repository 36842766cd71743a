import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'

/** A small program in which each file breaks the one rule it is listed under, or none. */
const sources: Readonly<Record<string, string>> = {
  'lib/domain/pure.ts': `export const pure = 1`,
  'lib/domain/keeps.ts': `import { pure } from './pure'\nexport const k = pure`,
  'lib/domain/type-only.ts': `import type { Row } from '@/lib/store/row'\nexport type R = Row`,
  'lib/domain/dotted.ts': `import { row } from '../../lib/store/row'\nexport const r = row`,
  'lib/domain/package.ts': `import { z } from 'zod'\nexport const r = z`,
  'lib/domain/reads-a-file.ts': `import { readFileSync } from 'node:fs'\nexport const r = readFileSync`,
  'lib/domain/circle-a.ts': `import type { B } from './circle-b'\nexport type A = B | 1`,
  'lib/domain/circle-b.ts': `import type { A } from './circle-a'\nexport type B = A | 2`,
  'lib/domain/nowhere.ts': `import { gone } from '@/lib/domain/gone'\nexport const g = gone`,
  'lib/store/row.ts': `import { readFileSync } from 'node:fs'\nexport type Row = { a: 1 }\nexport const row = readFileSync`,
  'lib/store/client.ts': `import { client } from '@/generated/sqlite/client'\nexport const c = client`,
  'lib/store/mails.ts': `import { send } from '@/lib/mail/send'\nexport const s = send`,
  'lib/documents/paper.ts': `import { row } from '@/lib/store/row'\nexport const p = row`,
  'lib/mail/send.ts': `import { pure } from '@/lib/domain/pure'\nexport const send = pure`,
  'lib/mail/asks.ts': `import { row } from '@/lib/store/row'\nexport const a = row`,
  'lib/workflow/step.ts': `import { row } from '@/lib/store/row'\nexport const step = row`,
  'lib/workflow/session.ts': `import { who } from '@/lib/session'\nexport const s = who`,
  'lib/workflow/raw.ts': `import Database from 'better-sqlite3'\nexport const raw = Database`,
  'lib/workflow/screen.ts': `import { Card } from '@/app/card'\nexport const s = Card`,
  'lib/session.ts': `import { row } from '@/lib/store/row'\nexport const who = row`,
  'lib/setup/tool.ts': `export const tool = 1`,
  'app/card.tsx': `import { row } from '@/lib/store/row'\nexport const Card = () => <p>{String(row)}</p>`,
  'app/mails.ts': `import { send } from '@/lib/mail/send'\nexport const m = send`,
  'app/generated.ts': `import { client } from '@/generated/sqlite/client'\nexport const g = client`,
  'app/tool.ts': `import { tool } from '@/lib/setup/tool'\nexport const t = tool`,
  'app/client-type.tsx': `'use client'\nimport type { Row } from '@/lib/store/row'\nexport const T = (row: Row) => <p>{row.a}</p>`,
  'app/client-value.tsx': `// in the browser\n'use client'\nimport { row } from '@/lib/store/row'\nexport const V = () => <p>{String(row)}</p>`,
  'app/[id]/client-step.tsx': `'use client'\nimport { step } from '@/lib/workflow/step'\nexport const V = () => <p>{String(step)}</p>`,
  'seed/paper.ts': `import { p } from '@/lib/documents/paper'\nexport const d = p`,
  'seed/step.ts': `import { step } from '@/lib/workflow/step'\nexport const d = step`,
  'generated/sqlite/client.ts': `export const client = 1`,
  'lib/documents/draws.ts': `import Pdf from 'pdfkit'\nexport const d = Pdf`,
  'lib/mail/posts.ts': `import mailer from 'nodemailer'\nexport const p = mailer`,
  'lib/workflow/posts.ts': `import mailer from 'nodemailer'\nexport const p = mailer`,
  'app/draws.ts': `import Pdf from 'pdfkit'\nexport const d = Pdf`,
  'app/form.tsx': `import { z } from 'zod'\nexport const f = z`,
  'tsconfig.json': JSON.stringify({ compilerOptions: { jsx: 'react-jsx', paths: { '@/*': ['./*'] } } }),
}

const folder = mkdtempSync(join(tmpdir(), 'benchglow-imports-'))
let broken: readonly string[] = []

beforeAll(() => {
  for (const [path, text] of Object.entries(sources)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  for (const name of ['better-sqlite3', 'nodemailer', 'pdfkit', 'zod']) {
    const home = join(folder, 'node_modules', name)
    mkdirSync(home, { recursive: true })
    writeFileSync(join(home, 'package.json'), JSON.stringify({ name, main: 'index.js' }))
    writeFileSync(join(home, 'index.js'), 'module.exports = {}')
  }
  const { status, stdout, stderr } = spawnSync(process.execPath, ['lib/setup/check-imports.mjs', folder], {
    encoding: 'utf8',
  })
  expect(status, stderr).toBe(1)
  broken = stdout.split('\n').filter((line) => line.includes(' → '))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const rulesBrokenBy = (file: string) =>
  broken.filter((line) => line.startsWith(`${file} → `)).map((line) => /\((.*)\)$/.exec(line)?.[1])

test.each([
  ['lib/domain/type-only.ts', 'domain'],
  ['lib/domain/dotted.ts', 'domain'],
  ['lib/domain/package.ts', 'domain'],
  ['lib/domain/reads-a-file.ts', 'domain'],
  ['lib/domain/circle-a.ts', 'no-cycle'],
  ['lib/domain/circle-b.ts', 'no-cycle'],
  ['lib/domain/nowhere.ts', 'resolvable'],
  ['lib/store/mails.ts', 'store'],
  ['lib/documents/paper.ts', 'documents'],
  ['lib/mail/asks.ts', 'mail'],
  ['lib/workflow/session.ts', 'workflow'],
  ['lib/workflow/raw.ts', 'database-only-in-store'],
  ['lib/workflow/posts.ts', 'workflow'],
  ['app/draws.ts', 'app'],
  ['lib/workflow/screen.ts', 'lib-below-app'],
  ['app/mails.ts', 'app'],
  ['app/generated.ts', 'database-only-in-store'],
  ['app/tool.ts', 'setup-is-a-tool'],
  ['app/client-value.tsx', 'client-takes-types'],
  ['app/[id]/client-step.tsx', 'client-takes-types'],
  ['seed/paper.ts', 'seed'],
])('%s breaks the rule "%s"', (file, rule) => {
  expect(rulesBrokenBy(file)).toContain(rule)
})

test.each([
  'lib/domain/pure.ts',
  'lib/domain/keeps.ts',
  'lib/store/row.ts',
  'lib/store/client.ts',
  'lib/mail/send.ts',
  'lib/mail/posts.ts',
  'lib/documents/draws.ts',
  'app/form.tsx',
  'lib/workflow/step.ts',
  'lib/session.ts',
  'app/card.tsx',
  'app/client-type.tsx',
  'seed/step.ts',
])('%s keeps them all', (file) => {
  expect(rulesBrokenBy(file)).toEqual([])
})
