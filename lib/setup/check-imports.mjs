/**
 * Holds the import rules of .dependency-cruiser.cjs over a folder (this one unless named).
 * Through the package's API: its command line refuses Node 20, which its code runs on.
 * Usage: node lib/setup/check-imports.mjs [folder]
 */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { cruise } from 'dependency-cruiser'
import extractOptions from 'dependency-cruiser/config-utl/extract-depcruise-options'
import extractTsConfig from 'dependency-cruiser/config-utl/extract-ts-config'
import { root } from './freshness.mjs'
import { runCommand, Trouble } from './trouble.mjs'

const searched = ['app', 'lib', 'seed', 'tests']

async function checkImports(folder) {
  process.chdir(folder)
  const options = await extractOptions(join(root, '.dependency-cruiser.cjs'))
  const present = searched.filter((name) => existsSync(name))
  const { output } = await cruise(present, options, undefined, { tsConfig: extractTsConfig('tsconfig.json') })
  const files = output.modules.filter(({ source }) => /\.tsx?$/.test(source) && !source.startsWith('node_modules'))
  const imports = files.reduce((sum, file) => sum + file.dependencies.length, 0)
  // Without its parser the cruiser reads no TypeScript and finds every rule kept.
  if (imports === 0) throw new Trouble('No import was read: @swc/core is missing, or the folder holds no TypeScript.')
  const broken = output.modules.flatMap(({ source, dependencies }) =>
    dependencies.flatMap(({ resolved, rules = [] }) => rules.map(({ name }) => `${source} → ${resolved}  (${name})`)),
  )
  for (const line of broken) console.log(line)
  console.log(`${files.length} files, ${imports} imports, ${broken.length} against the rules`)
  return broken.length === 0 ? 0 : 1
}

await runCommand(() => checkImports(process.argv[2] ?? root))
