import { expect, test } from 'vitest'
import { solveAbsurd } from './absurd-run'

/** `supply-collapsed` is an answer: the rest of the amp draws more than the supply can give. It must stay the exception. */
test('20,000 absurdly wide random stages: each is solved to 1e-9 or its supply has collapsed', () => {
  const run = solveAbsurd(1, 20_000)
  expect(run.failed).toEqual([])
  expect(run.solved + run.collapsed).toBe(20_000)
  expect(run.collapsed).toBeLessThan(2_000)
  expect(run.worstImbalance).toBeLessThanOrEqual(1e-9)
}, 180_000)
