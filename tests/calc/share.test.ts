import { expect, test } from 'vitest'
import { loadCalculator } from '@/lib/calc/calculators'
import { answer, faults } from './answers'

const read = (mark: string, milliamps: number, over: object = {}) => ({
  ...{ mark, type: '6L6GC', milliamps, milliampsPerVolt: 6 },
  ...over,
})
const at = { instrument: 'Tester 1', plateVolts: 250, screenVolts: 250, gridVolts: -14 }
const pair = (job: string, over: object = {}) => ({ job, sets: [{ type: '6L6GC', count: 2, ...over }] })

// First come takes the closest pair, 70.1 and 70.4 mA, out of the four that the quad needs: worked by hand.
test('the example: the quad keeps its four, the pair gets the two others, first come serves one', async () => {
  const { jobs, proof, inWords } = await answer('share', (await loadCalculator('share')).example)
  expect(jobs.map(({ sets }: { sets: { marks: string[] }[] }) => sets[0]?.marks.sort())).toEqual([
    ['T-5', 'T-6'],
    ['T-1', 'T-2', 'T-3', 'T-4'],
  ])
  expect(proof).toMatchObject({ jobsServed: 2, jobsAtMost: 2, firstCome: 1, ended: 'proved' })
  // 83 − 80 = 3 mA; 6.5 / 6.4 − 1 = 1.5625 %.
  expect(jobs[0].sets[0].spread).toEqual({ milliamps: 3, percent: 1.563 })
  expect(inWords).toContain('First come, first served would serve 1 job: 1 fewer.')
})

test('a job that goes without is told what to buy, and one that never could which limit to give up', async () => {
  const stock = [read('T-1', 70), read('T-2', 78), read('T-3', 70, { price: 60, heldFor: 'B' })]
  const { jobs, buy } = await answer('share', { jobs: [pair('A'), pair('B')], test: at, stock })
  expect(jobs.map(({ served }: { served: boolean }) => served)).toEqual([false, true])
  expect(jobs[0].relax).toEqual([
    'Release what is held or stands on drafts: 1 set.',
    'Widen the tolerances: the closest set there is lies 8 mA apart, 0 % in transconductance.',
  ])
  expect(buy).toMatchObject([
    { job: 'A', tubes: 1, inWords: [expect.stringMatching(/^1 more 6L6GC .* read 73 to 83 mA and 5.46 to 6.6 mA\/V/)] },
  ])
})

test('printed voltages bind: a 6V6GT of 350 V has no place at 430 V unless allowed', async () => {
  const stock = [read('T-1', 45, { type: '6V6GT' }), read('T-2', 45, { type: '6V6GT' })]
  const jobs = [pair('A', { type: '6V6GT', plateToCathodeVolts: 430 })]
  const strict = await answer('share', { jobs, test: at, stock })
  expect(strict.proof.jobsServed).toBe(0)
  expect(strict.buy).toMatchObject([
    { job: 'A', tubes: null, inWords: [expect.stringMatching(/^Buying more of the type does not help/)] },
  ])
  expect(strict.leftOut[0].inWords).toMatch(/^Plate to cathode is 430 V here/)
  const allowed = await answer('share', { jobs, test: at, stock, limits: { allowOverPrintedRating: true } })
  expect(allowed.proof.jobsServed).toBe(1)
})

test('refuses a mark or a job that stands twice, and a type it does not know', async () => {
  const given = { jobs: [pair('A'), pair('A')], test: at, stock: [read('T-1', 70), read('T-1', 71)] }
  expect((await faults('share', given)).map(({ code, path }) => [code, path])).toEqual([
    ['mark-twice', 'stock[1].mark'],
    ['job-twice', 'jobs[1].job'],
  ])
  const unknown = { jobs: [pair('A', { type: '6XYZ9' })], test: at, stock: [] }
  expect(await faults('share', unknown)).toMatchObject([{ code: 'tube-not-known', path: 'jobs[0].sets[0].type' }])
})
