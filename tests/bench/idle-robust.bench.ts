/** 1,000,000 absurdly wide random stages: each is solved, or its supply has collapsed under constant draw. */
import { performance } from 'node:perf_hooks'
import type { Figure } from '@/lib/setup/bench'
import { solveAbsurd } from '@/tests/domain/circuit/absurd-run'

export const name = 'idle-robust'

const STAGES = 1_000_000
/** Not the seeds of the test suite. */
const FIRST_SEED = 1_000_001

export async function run(): Promise<readonly Figure[]> {
  const began = performance.now()
  const run = solveAbsurd(FIRST_SEED, STAGES)
  const seconds = (performance.now() - began) / 1000
  for (const failure of run.failed.slice(0, 10)) console.error(failure)
  const watched = { reference: null, goal: null, better: 'lower' } as const
  const least = { reference: null, better: 'lower' } as const
  return [
    { figure: 'stages', value: STAGES, unit: 'stages', reference: null, goal: 1_000_000, better: 'higher' },
    { figure: 'without an answer', value: run.failed.length, unit: 'stages', goal: 0, ...least },
    { figure: 'worst imbalance at a node', value: run.worstImbalance, unit: '1', goal: 1e-9, ...least },
    // Refused before solving; a bench of nothing but these would show nothing.
    { figure: 'supply collapsed', value: run.collapsed, unit: 'stages', goal: STAGES / 10, ...least },
    { figure: 'solved by stepping', value: run.stepped, unit: 'stages', ...watched },
    { figure: 'most steps', value: run.mostSteps, unit: 'steps', ...watched },
    { figure: 'whole run', value: seconds, unit: 's', ...watched },
  ]
}
