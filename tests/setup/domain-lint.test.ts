import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'

const banned: readonly (readonly [line: string, reason: string])[] = [
  ['export const at = Date.now()', 'no clock'],
  ['export const at = new Date()', 'no clock'],
  ['export const at = new Date', 'no clock'],
  ['export const at = Date()', 'no clock'],
  ['export const read = Date.now', 'no clock'],
  ['export const at = performance.now()', 'performance'],
  ['export const pick = Math.random()', 'no chance'],
  ['export const { random } = Math', 'no chance'],
  ['export const id = crypto.randomUUID()', 'crypto'],
  ['export const path = process.env.HOME', 'process'],
  ['export const page = fetch("/")', 'fetch'],
  ['export const all = globalThis', 'globalThis'],
  ['console.log(1)', 'console'],
]
const allowed = ['export const day = new Date(0)', 'export const half = Math.round(1.5)']

const folder = mkdtempSync(join(tmpdir(), 'benchglow-lint-'))
let found: readonly string[] = []

beforeAll(() => {
  for (const path of ['biome.json', 'lib/setup/lint']) cpSync(path, join(folder, path), { recursive: true })
  for (const home of ['lib/domain', 'lib/workflow']) {
    mkdirSync(join(folder, home), { recursive: true })
    for (const [index, line] of [...banned.map(([text]) => text), ...allowed].entries()) {
      writeFileSync(join(folder, home, `probe-${index}.ts`), `${line}\n`)
    }
  }
  const biome = resolve('node_modules/.bin/biome')
  const lint = ['lint', '--reporter=github', '--max-diagnostics=none', 'lib/domain', 'lib/workflow']
  const { stdout, status } = spawnSync(biome, lint, { cwd: folder, encoding: 'utf8' })
  expect(status).toBe(1)
  found = stdout.split('\n').filter((line) => line.startsWith('::error'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const errorsIn = (home: string, index: number) => found.filter((line) => line.includes(`${home}/probe-${index}.ts,`))

test.each(banned.map(([line, reason], index) => ({ line, reason, index })))(
  'the domain may not say: $line',
  ({ reason, index }) => {
    expect(errorsIn('lib/domain', index)).toEqual([expect.stringContaining(reason)])
  },
)

test.each(allowed.map((line, index) => ({ line, index: banned.length + index })))(
  'the domain may say: $line',
  ({ index }) => {
    expect(errorsIn('lib/domain', index)).toEqual([])
  },
)

test('the bans hold in the domain only', () => {
  expect(found.filter((line) => line.includes('lib/workflow'))).toEqual([])
})
