/**
 * `npm test`: makes the clone ready, then the quick checks, the tests and the browser
 * tests. Its last line is the sum: `N passed, N failed`. A check that fails counts as one
 * failed, and so does a run that reported nothing. Touches neither the shop's data nor its port.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { bootstrap } from './bootstrap.mjs'
import { run, runNode } from './child.mjs'
import { ensureChromium } from './chromium.mjs'
import { countsOfPlaywright, countsOfVitest, sum } from './test-counts.mjs'
import { Trouble } from './trouble.mjs'

const none = { passed: 0, failed: 0 }
const oneFailed = { passed: 0, failed: 1 }

/** A step that cannot even run is a failure with its reason, and the others still run. */
async function counted(title, work) {
  console.log(`\n── ${title}`)
  try {
    return await work()
  } catch (error) {
    console.error(error instanceof Trouble ? error.message : error)
    return oneFailed
  }
}

async function check() {
  const { code } = await run('npm', ['run', '--silent', 'check'], { shell: process.platform === 'win32' })
  return code === 0 ? none : oneFailed
}

async function unit(report) {
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
  const { code } = await runNode(['node_modules/vitest/vitest.mjs', 'run', ...reporters])
  return countsFrom(report, countsOfVitest, code)
}

async function browser(report, data) {
  await ensureChromium()
  const { code } = await runNode(['node_modules/@playwright/test/cli.js', 'test'], {
    env: { E2E_REPORT: report, E2E_DATA: data },
  })
  return countsFrom(report, countsOfPlaywright, code)
}

function countsFrom(report, counts, code) {
  if (!existsSync(report)) throw new Trouble('The run ended without a report; the lines above say why.')
  return counts(JSON.parse(readFileSync(report, 'utf8')), code)
}

async function everything() {
  const ready = await counted('Making ready', () => bootstrap(['build']).then(() => none))
  if (ready.failed > 0) return ready
  const folder = mkdtempSync(join(tmpdir(), 'benchglow-test-run-'))
  try {
    return sum([
      await counted('Checks', check),
      await counted('Tests', () => unit(join(folder, 'vitest.json'))),
      await counted('Browser tests', () => browser(join(folder, 'playwright.json'), join(folder, 'shops'))),
    ])
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

// The data of the shop is out of reach of anything started here.
delete process.env.BENCHGLOW_DATA
delete process.env.PORT
delete process.env.HOST
const { passed, failed } = await everything()
process.exitCode = failed > 0 || passed === 0 ? 1 : 0
console.log(`\n${passed} passed, ${failed} failed`)
