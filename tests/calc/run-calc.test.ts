import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { runCalc } from '@/lib/calc/run-calc'

const folder = mkdtempSync(join(tmpdir(), 'benchglow-calc-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const RESERVOIR = '{"capacitanceMicrofarads": 100, "chargedVolts": 450, "bleederKilohms": 220, "safeVolts": 60}'
writeFileSync(join(folder, 'reservoir.json'), RESERVOIR)

const run = (args: readonly string[], standardInput: string | null = null) =>
  runCalc(args, {
    folder,
    terminal: standardInput === null,
    readStandardInput: async () => standardInput ?? '',
  })

const faultOf = async (args: readonly string[], standardInput: string | null = null) => {
  const { code, stdout, stderr } = await run(args, standardInput)
  expect([code, stdout]).toEqual([2, ''])
  return JSON.parse(stderr)
}

test('a file, "-" and nothing all give the same answer', async () => {
  const fromFile = await run(['discharge', 'reservoir.json'])
  expect(fromFile).toMatchObject({ code: 0, stderr: '' })
  expect(JSON.parse(fromFile.stdout).seconds).toBe(44.33)
  expect(await run(['discharge', '-'], RESERVOIR)).toEqual(fromFile)
  expect(await run(['discharge'], RESERVOIR)).toEqual(fromFile)
})

test('a designation, or several, stand in for JSON', async () => {
  const one = JSON.parse((await run(['tube', '6V6GTA'])).stdout)
  expect(one.designation).toBe('6V6GTA')
  expect(JSON.parse((await run(['tube'], '{"designation": "6V6GTA"}')).stdout)).toEqual(one)
  const two = JSON.parse((await run(['tube', 'EL34', 'CV511'])).stdout)
  expect(two.map((card: { designation: string }) => card.designation)).toEqual(['EL34', '6V6GT'])
})

test('every designation of the list is answered', async () => {
  const list: Record<string, string[]> = JSON.parse((await run(['tube', '--list'])).stdout)
  expect(Object.keys(list)).toEqual(['output', 'small-signal', 'rectifier'])
  const all = Object.values(list).flat()
  const { code, stdout } = await run(['tube', ...all])
  expect(code).toBe(0)
  expect(JSON.parse(stdout)).toHaveLength(all.length)
})

test.each([
  [['tube', 'ZZ9'], null, { code: 'tube-not-known', path: 'designation' }],
  [['discharge'], null, { code: 'no-input', path: '' }],
  [['discharge'], '', { code: 'input-empty', path: '' }],
  [['discharge'], '{', { code: 'not-json', line: 1, column: 2 }],
  [['discharge', 'gone.json'], null, { code: 'file-not-found' }],
  [['discharge', '.'], null, { code: 'file-not-readable' }],
  [['discharge', 'a.json', 'b.json'], null, { code: 'too-many-arguments' }],
  [['discharge', '--exmaple'], null, { code: 'unknown-option' }],
  [['frobnicate'], null, { code: 'unknown-calculator' }],
  [['constructor'], null, { code: 'unknown-calculator' }],
])('%j with %j exits 2', async (args, standardInput, fault) => {
  expect(await faultOf(args, standardInput)).toMatchObject({ ...fault, sentence: expect.stringMatching(/\.$/) })
})

test('two faults: the first, and the rest under "more"', async () => {
  const { more, ...first } = await faultOf(['discharge'], RESERVOIR.replace('100', '"x"').replace('60', '-1'))
  expect(first.path).toBe('capacitanceMicrofarads')
  expect(more.map(({ path }: { path: string }) => path)).toEqual(['safeVolts'])
})

test('--help fits a screen and names every calculator', async () => {
  const { code, stdout } = await run(['--help'])
  expect(code).toBe(0)
  expect(stdout.split('\n').length).toBeLessThan(25)
  for (const name of ['tube', 'idle', 'predict', 'discharge']) expect(stdout).toContain(`  ${name} `)
  expect((await run(['idle', '--help'])).stdout).toBe(stdout)
})

test('as a command: JSON on the standard output, faults on the error stream, exit codes 0 and 2', () => {
  const command = (args: readonly string[], input: string) =>
    spawnSync(process.execPath, ['--import', 'tsx', 'lib/calc/calc.ts', ...args], {
      input,
      encoding: 'utf8',
      env: { ...process.env, INIT_CWD: folder },
    })
  const good = command(['discharge', '-'], RESERVOIR)
  expect([good.status, good.stderr]).toEqual([0, ''])
  expect(JSON.parse(good.stdout).energyJoules).toBe(10.13)
  expect(command(['discharge', 'reservoir.json'], '').stdout).toBe(good.stdout)
  const bad = command(['discharge'], '{"chargedVolts": 1e999}')
  expect([bad.status, bad.stdout]).toEqual([2, ''])
  expect(JSON.parse(bad.stderr).code).toBe('missing')
})
