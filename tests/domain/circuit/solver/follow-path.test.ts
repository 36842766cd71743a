import { describe, expect, test } from 'vitest'
import { worstImbalance } from '@/lib/domain/circuit/solver/conservation'
import type { Descent } from '@/lib/domain/circuit/solver/damped-newton'
import { followPath } from '@/lib/domain/circuit/solver/follow-path'
import { layWires, newWiring } from '@/lib/domain/circuit/solver/wiring'
import { absurdStage, usualStage } from '../random-stage'
import { solved } from '../solved'

/** Seeds at which the path of solutions folds: two tubes share immense resistances. */
const FOLDED = [8630, 1_010_043, 1_016_480, 1_406_612, 1_077_848, 1_589_320]

describe('following the path of solutions', () => {
  test.each(FOLDED)('comes through the folds of stage %i', (seed) => {
    const wiring = newWiring()
    layWires(wiring, absurdStage(seed))
    const outcome: Descent = { converged: false, steps: 0 }
    followPath(wiring, outcome)
    expect(outcome.converged).toBe(true)
    expect(worstImbalance(wiring)).toBeLessThanOrEqual(1e-9)
  })

  test('on 30 usual stages it comes to the point that Newton finds directly, to 1e-9', () => {
    const wiring = newWiring()
    for (let seed = 1; seed <= 30; seed++) {
      layWires(wiring, usualStage(seed))
      const outcome: Descent = { converged: false, steps: 0 }
      followPath(wiring, outcome)
      expect(outcome.converged).toBe(true)
      expect(worstImbalance(wiring)).toBeLessThanOrEqual(1e-9)
      solved(usualStage(seed)).tubes.forEach(({ plateCurrent }, place) => {
        const found = wiring.currents[2 * place] ?? Number.NaN
        expect(Math.abs(found - plateCurrent)).toBeLessThanOrEqual(1e-9 * plateCurrent + 1e-15)
      })
    }
  })
})
