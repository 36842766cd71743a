import { describe, expect, test } from 'vitest'
import { worstImbalance } from '@/lib/domain/circuit/conservation'
import type { Descent } from '@/lib/domain/circuit/damped-newton'
import { followPath } from '@/lib/domain/circuit/follow-path'
import { layWires, newWiring } from '@/lib/domain/circuit/wiring'
import { absurdStage, usualStage } from './random-stage'
import { solved } from './solved'

/** Seeds at which stepping alone gets stuck: two tubes share immense resistances and the path of solutions folds. */
const FOLDED = [8630, 1_010_043, 1_016_480]

describe('following the path of solutions', () => {
  test.each(FOLDED)('stage %i is solved in spite of its folds', (seed) => {
    const solution = solved(absurdStage(seed))
    expect(solution.stepped).toBe(true)
    expect(solution.worstImbalance).toBeLessThanOrEqual(1e-9)
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
