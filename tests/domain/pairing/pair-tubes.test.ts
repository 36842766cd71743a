import { expect, test } from 'vitest'
import { pairTubes, type TubePairs } from '@/lib/domain/pairing/pair-tubes'
import {
  type ReadTube,
  type SpreadRule,
  singleCostOf,
  stepsOf,
  USUAL_SPREAD_RULE,
  widthsOf,
  YARDSTICK_STEPS,
} from '@/lib/domain/pairing/spread-rule'
import { amps, ratio, siemens } from '@/lib/domain/units'
import { generator, randomTubes } from './random-tubes'

const tube = (mark: string, milliamps: number, milliampsPerVolt: number | null): ReadTube => ({
  mark,
  plateCurrent: amps(milliamps / 1000),
  transconductance: milliampsPerVolt === null ? null : siemens(milliampsPerVolt / 1000),
})

function paired(tubes: readonly ReadTube[], rule: SpreadRule = USUAL_SPREAD_RULE): TubePairs<ReadTube> {
  const result = pairTubes(tubes, rule)
  if (!result.ok) throw new Error(result.fault.kind)
  return result.value
}

const marks = ({ pairs, singles }: TubePairs<ReadTube>) => ({
  pairs: pairs.map(({ tubes }) => tubes.map(({ mark }) => mark).join('+')),
  singles: singles.map(({ mark }) => mark),
})

// By hand. Closest first would take B+C at 1 mA and leave A and D 7 mA apart, more than a yardstick.
test('30, 33, 34, 37 mA: two pairs 3 mA apart, not the closest pair and two singles', () => {
  const stock = [tube('A', 30, null), tube('B', 33, null), tube('C', 34, null), tube('D', 37, null)]
  const result = paired(stock)
  expect(marks(result)).toEqual({ pairs: ['A+B', 'C+D'], singles: [] })
  // 3 mA of 5 mA, twice.
  expect(result.totalSpread).toBe(2 * 60_000)
  expect(result.totalCost).toBe(result.proof.leastCost)
})

test('5 mA apart is a pair, 5.001 mA is not; 10 % apart is a pair, a microsiemens more is not', () => {
  expect(marks(paired([tube('A', 30, null), tube('B', 35, null)])).pairs).toEqual(['A+B'])
  expect(marks(paired([tube('A', 30, null), tube('B', 35.001, null)])).singles).toEqual(['A', 'B'])
  expect(marks(paired([tube('A', 30, 5), tube('B', 30, 5.5)])).pairs).toEqual(['A+B'])
  expect(marks(paired([tube('A', 30, 5), tube('B', 30, 5.501)])).singles).toEqual(['A', 'B'])
})

// The rule of the choice of a set: highest over lowest, less one, in whole microsiemens.
test('from 500 to 40 000 µS, tubes match in steps exactly when they match in microsiemens', () => {
  const random = generator(77)
  const { y: width } = widthsOf(USUAL_SPREAD_RULE)
  for (let round = 0; round < 20_000; round += 1) {
    const low = 500 + Math.floor(random() * 39_500)
    const high = Math.floor(low * 1.1) + Math.floor(random() * 3) - 1
    const [[, below], [, above]] = [low, high].map((microsiemens) =>
      stepsOf(tube('A', 30, microsiemens / 1000), USUAL_SPREAD_RULE),
    ) as [readonly [number, number], readonly [number, number]]
    expect({ low, high, match: above - below <= width }).toEqual({ low, high, match: 10 * (high - low) <= low })
  }
})

test('one yardstick of current is 100 000 steps, and of transconductance the same times its weight', () => {
  const [x, y] = stepsOf(tube('A', 35, 5.5), USUAL_SPREAD_RULE)
  const [x0, y0] = stepsOf(tube('B', 30, 5), USUAL_SPREAD_RULE)
  expect([x - x0, y - y0]).toEqual([YARDSTICK_STEPS, YARDSTICK_STEPS])
  const heavy = { ...USUAL_SPREAD_RULE, transconductanceWeight: 2.5 }
  expect(stepsOf(tube('A', 35, 5.5), heavy)[1] - stepsOf(tube('B', 30, 5), heavy)[1]).toBe(250_000)
})

// By hand: 1.2 mA of 5 mA is 24 000 steps; ln(5.2 / 5) / ln(1.1) = 0.41150 yardsticks.
test('1.2 mA and 5 to 5.2 mA/V apart is a spread of 24 000 + 41 150 steps', () => {
  expect(paired([tube('A', 30, 5), tube('B', 31.2, 5.2)]).pairs[0]?.spread).toBeCloseTo(24_000 + 41_150, -1)
})

test('the order of the tubes does not change the pairs, ties or not', () => {
  for (const coarse of [1, 100, 1000]) {
    const stock = randomTubes(coarse, 90, { microamps: 5 * coarse, microsiemens: coarse })
    const random = generator(coarse)
    const wanted = marks(paired(stock))
    for (let round = 0; round < 20; round += 1) {
      const other = [...stock].map((each) => ({ each, key: random() })).sort((a, b) => a.key - b.key)
      expect(marks(paired(other.map(({ each }) => each)))).toEqual(wanted)
    }
  }
})

test('as many pairs as can be: dear singles never make fewer pairs, and the widest pairs are taken for them', () => {
  const stock = [tube('A', 30, null), tube('B', 34.9, null), tube('C', 35, null), tube('D', 39.8, null)]
  const rule = { ...USUAL_SPREAD_RULE, singleCost: 20_000 }
  expect(marks(paired(stock, rule))).toEqual({ pairs: ['B+C'], singles: ['A', 'D'] })
  expect(marks(paired(stock, { ...rule, singleCost: 'most-sets' })).pairs).toEqual(['A+B', 'C+D'])
})

test('a single under "most sets" costs more than all pairs together could spread', () => {
  for (const [count, size] of [
    [2, 2],
    [101, 2],
    [100_000, 2],
    [100, 4],
  ] as const) {
    const most = singleCostOf({ ...USUAL_SPREAD_RULE, singleCost: 'most-sets' }, count, size)
    expect(size * most).toBeGreaterThan(Math.floor(count / size) * 200_001)
  }
})

test('a mark that comes twice, and transconductance on some tubes only, are refused with the mark', () => {
  const [a, b] = [tube('V-1', 30, 5), tube('V-2', 31, null)]
  expect(pairTubes([a, tube('V-1', 31, 5)], USUAL_SPREAD_RULE)).toEqual({
    ok: false,
    fault: { kind: 'mark-twice', mark: 'V-1' },
  })
  expect(pairTubes([a, b], USUAL_SPREAD_RULE)).toEqual({
    ok: false,
    fault: { kind: 'transconductance-missing', mark: 'V-2' },
  })
  expect(pairTubes([a, tube('V-3', 31, 5)], USUAL_SPREAD_RULE, () => false)).toEqual({
    ok: false,
    fault: { kind: 'stopped' },
  })
})

test('a yardstick so small that readings no longer fit is an error that says so', () => {
  const yardsticks = { plateCurrent: amps(1e-6), transconductance: ratio(0.1) }
  expect(() => paired([tube('A', 900, null), tube('B', 30, null)], { ...USUAL_SPREAD_RULE, yardsticks })).toThrow(
    /yardstick is too small/,
  )
})
