import { expect, test } from 'vitest'
import { USUAL_SPREAD_RULE } from '@/lib/domain/pairing/spread-rule'
import { planningRun, startPlanning } from '@/lib/planning/planning-run'
import type { Progress } from '@/lib/planning/worker/task'
import { randomTubes } from '@/tests/domain/pairing/random-tubes'

const rule = USUAL_SPREAD_RULE

test('pairs come back from the thread as they would from a call, with progress told before', async () => {
  const told: Progress[] = []
  const run = startPlanning('pair', { tubes: randomTubes(1, 60), rule }, (progress) => told.push(progress))
  expect(planningRun(run.id)?.id).toBe(run.id)
  const outcome = await run.result
  if (!outcome.ok || !outcome.value.ok) throw new Error(JSON.stringify(outcome))
  const { pairs, singles } = outcome.value.value
  expect(2 * pairs.length + singles.length).toBe(60)
  expect(told.at(-1)).toMatchObject({ stage: 'pairing-round', figures: { missing: 0 } })
  expect([run.state(), run.progress()]).toEqual(['ended', told.at(-1)])
})

// By order of events, not by time: timers of this thread are served between start and end of the computation.
test('this thread goes on serving while the other computes, and a cancel ends it', async () => {
  const events: string[] = []
  const run = startPlanning('quads', { tubes: randomTubes(2, 400), rule, size: 4, seconds: 60 }, ({ stage }) => {
    if (events.at(-1) === 'served') events.push(stage)
  })
  const served = setInterval(() => events.at(-1) !== 'served' && events.push('served'), 1)
  while (!events.includes('pricing') || events.length < 8) await new Promise((resolve) => setTimeout(resolve, 5))
  events.push('cancel')
  run.cancel()
  const outcome = await run.result
  clearInterval(served)
  events.push('ended')
  expect(outcome).toEqual({ ok: false, fault: { kind: 'cancelled' } })
  expect(events.slice(0, 8).filter((event) => event === 'served').length).toBeGreaterThanOrEqual(4)
  expect(events.indexOf('cancel')).toBeLessThan(events.indexOf('ended'))
})

test('one that waits its turn can be cancelled before it starts', async () => {
  const first = startPlanning('quads', { tubes: randomTubes(3, 300), rule, size: 4, seconds: 60 })
  const second = startPlanning('pair', { tubes: randomTubes(4, 10), rule })
  // The thread of the test before may take a moment to go.
  while (first.state() === 'waiting') await new Promise((resolve) => setTimeout(resolve, 5))
  expect([first.state(), second.state()]).toEqual(['running', 'waiting'])
  second.cancel()
  first.cancel()
  expect(await second.result).toEqual({ ok: false, fault: { kind: 'cancelled' } })
  expect((await first.result).ok).toBe(false)
})

test('an error in the thread becomes a fault with its name', async () => {
  const { result } = startPlanning('throw-error', { message: 'out of steps' })
  expect(await result).toEqual({ ok: false, fault: { kind: 'failed', name: 'RangeError', message: 'out of steps' } })
})

test('a thread that goes without a word becomes a fault, and the next computation starts all the same', async () => {
  const gone = startPlanning('end-thread', { code: 7 })
  const next = startPlanning('pair', { tubes: randomTubes(5, 4), rule })
  expect(await gone.result).toEqual({
    ok: false,
    fault: { kind: 'failed', name: 'thread-ended', message: 'The thread ended with code 7' },
  })
  expect((await next.result).ok).toBe(true)
})

test('an unknown run is null', () => {
  expect(planningRun('no such run')).toBeNull()
})
