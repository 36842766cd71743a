/**
 * A four-tube operating point, against ngspice in the same process and, where the command
 * `ngspice` is installed, against one run of it.
 *
 * ngspice gets its best case: its own default tolerances, which stop at 1e-3, and our
 * solution as its starting point. Reading the netlist is part of its time, as building
 * the circuit from the stage is part of ours. The rounds alternate and the median of each
 * side counts, so that a busy machine is as unkind to both.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { performance } from 'node:perf_hooks'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import type { Figure } from '@/lib/setup/bench'
import { gridSupplied, softRectifier } from '@/tests/domain/circuit/stage-fixture'
import { nodesOf } from '@/tests/reference/support/ngspice-agreement'
import { startNgspice } from '@/tests/reference/support/ngspice-engine'
import { ngspiceNetlist } from '@/tests/reference/support/ngspice-netlist'

export const name = 'idle-speed'

const ROUNDS = 41
const SOLVES_A_ROUND = 1000
const PROCESS_RUNS = 15

/** Four tubes, two a side, screen resistors, dropper, rectifier tube: nothing left out that the solver knows. */
const stage: OutputStage = gridSupplied({ supply: { ...gridSupplied().supply, rectifier: softRectifier } })

function solveMicroseconds(): number {
  const began = performance.now()
  for (let count = 0; count < SOLVES_A_ROUND; count++) {
    if (!solveIdle(stage).ok) throw new Error('The stage has no operating point')
  }
  return (1000 * (performance.now() - began)) / SOLVES_A_ROUND
}

function netlist(): string {
  const solved = solveIdle(stage)
  if (!solved.ok) throw new Error(JSON.stringify(solved.fault))
  return ngspiceNetlist(stage, nodesOf(stage, solved.value), { tolerances: 'defaults' })
}

type Times = { readonly ours: number; readonly theirs: number }

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN

/** Microseconds. `theirs` runs ngspice once. */
async function alternate(rounds: number, theirs: () => Promise<unknown>): Promise<Times> {
  const [ours, others]: [number[], number[]] = [[], []]
  for (let round = 0; round < rounds; round++) {
    ours.push(solveMicroseconds())
    const began = performance.now()
    await theirs()
    others.push(1000 * (performance.now() - began))
  }
  return { ours: median(ours), theirs: median(others) }
}

async function inProcess(text: string): Promise<Times> {
  const engine = await startNgspice()
  await engine.operatingPoint(text)
  for (let warm = 0; warm < 20; warm++) solveMicroseconds()
  return alternate(ROUNDS, () => engine.operatingPoint(text))
}

const isInstalled = (): boolean => !spawnSync('ngspice', ['--version']).error

/** Null where the command is not installed. */
async function oneProcess(text: string): Promise<Times | null> {
  if (!isInstalled()) return null
  const folder = mkdtempSync(join(tmpdir(), 'benchglow-bench-'))
  try {
    const file = join(folder, 'idle.cir')
    writeFileSync(file, `${text}\n`)
    return await alternate(PROCESS_RUNS, async () => {
      const { error, status, stdout, stderr } = spawnSync('ngspice', ['-b', file], { encoding: 'utf8' })
      if (error || status !== 0 || !stdout.includes('No. of Data Rows : 1')) {
        throw new Error(`ngspice ended with ${status}: ${stderr}`)
      }
    })
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

export async function run(): Promise<readonly Figure[]> {
  const text = netlist()
  const { ours, theirs } = await inProcess(text)
  const process = await oneProcess(text)
  if (process === null) console.error('The command ngspice is not installed: one process of it was not timed')
  const times = { unit: '×', reference: null, better: 'higher' } as const
  return [
    { figure: 'four-tube solve', value: ours, unit: 'µs', reference: theirs, goal: null, better: 'lower' },
    { figure: 'quicker than ngspice in this process', value: theirs / ours, goal: 500, ...times },
    ...(process === null
      ? []
      : [{ figure: 'quicker than one ngspice process', value: process.theirs / process.ours, goal: 2000, ...times }]),
  ]
}
