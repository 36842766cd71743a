/**
 * npm run fit              fits every curve and rewrites lib/domain/model/fitted-parameters.ts
 * npm run fit -- --check   fits and compares; exit 1 where the file is not what the rows give
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { fitAll } from './fit-all'
import { parameterFile } from './parameter-file'
import { firstDifference } from './same-table'

const file = fileURLToPath(new URL('../domain/model/fitted-parameters.ts', import.meta.url))
const text = parameterFile(fitAll())

if (process.argv.includes('--check')) {
  const difference = firstDifference(readFileSync(file, 'utf8'), text)
  console.log(
    difference === null ? 'The parameter file is current.' : `The parameter file is not current: ${difference}`,
  )
  process.exitCode = difference === null ? 0 : 1
} else {
  writeFileSync(file, text)
  console.log(`Wrote ${file}`)
}
