import { expect, test } from 'vitest'
import { shareBelow } from '@/lib/domain/pairing/normal-share'
import { type ReadTube, USUAL_SPREAD_RULE } from '@/lib/domain/pairing/spread-rule'
import { testNext, type Untested } from '@/lib/domain/pairing/test-next'
import { amps, siemens } from '@/lib/domain/units'
import { gaussian, generator } from './random-tubes'

// Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1.
test.each([
  [0, 0.5],
  [0.5, 0.691462461274013],
  [1, 0.841344746068543],
  [2, 0.977249868051821],
  [3, 0.99865010196837],
  [-1, 0.158655253931457],
])('the normal share below %d is %d', (z, share) => {
  expect(shareBelow(10 + 2 * z, 10, 2)).toBeCloseTo(share, 14)
})

const single = (mark: string, milliamps: number, milliampsPerVolt: number | null): ReadTube => ({
  mark,
  plateCurrent: amps(milliamps / 1000),
  transconductance: milliampsPerVolt === null ? null : siemens(milliampsPerVolt / 1000),
})

type Spread = { readonly milliamps: number; readonly milliampsPerVolt: number | null; readonly sure?: number }

const untested = (mark: string, { milliamps, milliampsPerVolt, sure = 1 }: Spread): Untested => ({
  mark,
  expected: {
    plateCurrent: amps(milliamps / 1000),
    transconductance: milliampsPerVolt === null ? null : siemens(milliampsPerVolt / 1000),
  },
  deviation: { plateCurrent: amps(0.004 / sure), transconductance: siemens(0.0004 / sure) },
})

// One single at the mean, within 5 mA of 4 mA deviation: share between -1.25 and 1.25 = 0.7887005.
test('one single at the middle, by current alone: the share within one yardstick', () => {
  const [worth] = testNext(
    [untested('U', { milliamps: 35, milliampsPerVolt: null })],
    [single('S', 35, null)],
    USUAL_SPREAD_RULE,
    2,
  )
  expect(worth?.expectedSets).toBeCloseTo(0.7887, 2)
})

// Two singles 12 mA apart: between -11 … -1 and 1 … 11 mA of the middle, either side 0.398 - 0.003.
test('two singles on either side add up where their reaches do not overlap', () => {
  const singles = [single('S', 29, null), single('T', 41, null)]
  const [worth] = testNext([untested('U', { milliamps: 35, milliampsPerVolt: null })], singles, USUAL_SPREAD_RULE, 2)
  expect(worth?.expectedSets).toBeCloseTo(2 * (0.59871 - 0.5 + 0.40129 - 0.00298 - 0.09871), 1)
})

test('a quad needs three singles that go together: two are worth nothing, three apart neither', () => {
  const tube = untested('U', { milliamps: 35, milliampsPerVolt: 5 })
  const worth = (singles: readonly ReadTube[]) => testNext([tube], singles, USUAL_SPREAD_RULE, 4)[0]?.expectedSets
  expect(worth([single('A', 35, 5), single('B', 35, 5)])).toBe(0)
  expect(worth([single('A', 30, 5), single('B', 35, 5), single('C', 40, 5)])).toBe(0)
  expect(worth([single('A', 34, 5), single('B', 35, 5), single('C', 36, 5)])).toBeGreaterThan(0.2)
})

test('the ranking: near the singles first, the surer of two next, equal ones by mark', () => {
  const singles = [single('S', 35, 5), single('T', 36, 5.1)]
  const tubes = [
    untested('U-10', { milliamps: 48, milliampsPerVolt: 7 }),
    untested('U-9', { milliamps: 48, milliampsPerVolt: 7 }),
    untested('U-2', { milliamps: 35, milliampsPerVolt: 5 }),
    untested('U-1', { milliamps: 35, milliampsPerVolt: 5, sure: 4 }),
  ]
  expect(testNext(tubes, singles, USUAL_SPREAD_RULE, 2).map(({ mark }) => mark)).toEqual(['U-1', 'U-2', 'U-9', 'U-10'])
})

// The same question asked of chance: read the tube 40 000 times and count.
test.each([2, 4])('sets of %i: the expected number is what 40 000 made-up readings give', (size) => {
  const random = generator(4711)
  const singles = Array.from({ length: 14 }, (_, place) =>
    single(`S-${place}`, 35 + 6 * gaussian(random), 5.2 * (1 + 0.09 * gaussian(random))),
  )
  const tube = untested('U', { milliamps: 36, milliampsPerVolt: 5.1 })
  const [worth] = testNext([tube], singles, USUAL_SPREAD_RULE, size)
  let sets = 0
  for (let round = 0; round < 40_000; round += 1) {
    const read = single('U', 36 + 4 * gaussian(random), Math.max(0.5, 5.1 + 0.4 * gaussian(random)))
    if (someSet([read], singles, size)) sets += 1
  }
  expect(worth?.expectedSets).toBeGreaterThan(0.05)
  // Three deviations of the count, tenths of a yardstick, and normal in steps against normal in mA/V.
  expect(Math.abs((worth?.expectedSets ?? 0) - sets / 40_000)).toBeLessThan(0.02)
})

/** Whether some of the tubes complete those taken to a set within both yardsticks. */
function someSet(taken: readonly ReadTube[], tubes: readonly ReadTube[], size: number): boolean {
  const currents = taken.map(({ plateCurrent }) => plateCurrent)
  const slopes = taken.map(({ transconductance }) => transconductance ?? 0)
  if (Math.max(...currents) - Math.min(...currents) > 0.005) return false
  if (Math.max(...slopes) > 1.1 * Math.min(...slopes)) return false
  if (taken.length === size) return true
  return tubes.some((tube, place) => someSet([...taken, tube], tubes.slice(place + 1), size))
}
