import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'

const sources: Readonly<Record<string, string>> = {
  'lib/domain/pure.ts': 'export const pure = 1',
  'lib/store/row.ts': 'export const row = 1',
  'lib/calc/keeps.ts': `import { readFile } from 'node:fs/promises'\nimport { z } from 'zod'\nimport { pure } from '@/lib/domain/pure'\nexport const k = [readFile, z, pure]`,
  'lib/calc/stores.ts': `import { row } from '@/lib/store/row'\nexport const s = row`,
  'lib/workflow/calculates.ts': `import { k } from '@/lib/calc/keeps'\nexport const c = k`,
  'app/calculates.ts': `import { k } from '@/lib/calc/keeps'\nexport const c = k`,
  'node_modules/zod/package.json': JSON.stringify({ name: 'zod', main: 'index.js' }),
  'node_modules/zod/index.js': 'module.exports = {}',
  'tsconfig.json': JSON.stringify({ compilerOptions: { paths: { '@/*': ['./*'] } } }),
}

const folder = mkdtempSync(join(tmpdir(), 'benchglow-calc-imports-'))
let broken: readonly string[] = []

beforeAll(() => {
  for (const [path, text] of Object.entries(sources)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
  const { stdout } = spawnSync(process.execPath, ['lib/setup/check-imports.mjs', folder], { encoding: 'utf8' })
  broken = stdout.split('\n').filter((line) => line.includes(' → '))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

test('a calculator takes the domain, zod and built-ins, and nobody takes a calculator', () => {
  const rules = broken.map((line) => [line.split(' → ')[0], /\((.*)\)$/.exec(line)?.[1]])
  expect(rules.filter(([, rule]) => rule?.startsWith('calc')).sort()).toEqual([
    ['app/calculates.ts', 'calc-is-a-tool'],
    ['lib/calc/stores.ts', 'calc'],
    ['lib/workflow/calculates.ts', 'calc-is-a-tool'],
  ])
})
