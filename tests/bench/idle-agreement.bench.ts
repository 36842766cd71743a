/** The coupled operating point against ngspice, over 500 random stages: how far any voltage or current is off. */
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import type { Figure } from '@/lib/setup/bench'
import { usualStage } from '@/tests/domain/circuit/random-stage'
import { agreementWithNgspice } from '@/tests/reference/support/ngspice-agreement'
import { startNgspice } from '@/tests/reference/support/ngspice-engine'

export const name = 'idle-agreement'

const CIRCUITS = 500
/** Not the seeds of the test suite. */
const FIRST_SEED = 10_001

export async function run(): Promise<readonly Figure[]> {
  const engine = await startNgspice()
  let [worst, compared] = [0, 0]
  for (let seed = FIRST_SEED; seed < FIRST_SEED + CIRCUITS; seed++) {
    const stage = usualStage(seed)
    const solved = solveIdle(stage)
    if (!solved.ok) throw new Error(`Stage ${seed} has no operating point: ${JSON.stringify(solved.fault)}`)
    const agreement = await agreementWithNgspice(engine, stage, solved.value)
    if (Number.isNaN(agreement.worst)) throw new Error(`Stage ${seed}: ${agreement.quantity}`)
    if (agreement.worst > worst) {
      worst = agreement.worst
      console.error(`Worst so far, stage ${seed}: ${agreement.quantity}`)
    }
    compared += agreement.compared
  }
  const plain = { reference: null, better: 'higher' } as const
  return [
    { figure: 'circuits', value: CIRCUITS, unit: 'circuits', goal: 500, ...plain },
    { figure: 'voltages and currents compared', value: compared, unit: 'quantities', goal: null, ...plain },
    { figure: 'worst relative difference', value: worst, unit: '1', reference: null, goal: 1e-6, better: 'lower' },
  ]
}
