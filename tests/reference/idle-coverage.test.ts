/**
 * Does the 95 % band hold 95 % of the time? Monte Carlo after JCGM 101:2008 (support/idle-draws.ts):
 * a true amplifier is drawn, its readings are spoiled within the limits that the meter and
 * the parts are allowed, and every band is asked whether it holds the truth. The generator
 * is seeded, so a run can be repeated. The bench `bounds-coverage` draws more, of more cases.
 */
import { describe, expect, test } from 'vitest'
import { COVERAGE_CASES, coverageOf, drawing, drawnIdle } from './support/idle-draws'

const DRAWS = 20_000
const NAMES = [
  'sense resistor, screen current stated',
  'sense resistor, screen share assumed',
  'cathode resistor of two tubes, screen share assumed',
  'half primary measured cold, screen share assumed',
  'half primary of two tubes measured cold, screen current stated',
]

describe('coverage of the 95 % band', () => {
  const cases = COVERAGE_CASES.filter(({ name }) => NAMES.includes(name))

  test('every name stands for a case', () => expect(cases.length).toBe(NAMES.length))

  test.each(cases)(
    '$name: between 93 and 97 % of 20,000 truths, of every quantity',
    (given) => {
      const found = coverageOf(given, DRAWS)
      expect(found.length).toBeGreaterThanOrEqual(5)
      expect(found.filter(({ percent }) => !(percent >= 93 && percent <= 97))).toEqual([])
    },
    60_000,
  )

  test('a meter and a resistor worse than they claim are found out: coverage falls below 93 %', () => {
    const [given] = cases
    if (!given) throw new Error('No case')
    const draw = drawing(20250104)
    let held = 0
    for (let n = 0; n < 4000; n++) {
      // Its limits are drawn four times as wide as stated.
      const { truth, found } = drawnIdle(given, { ...draw, limits: (halfWidth) => draw.limits(4 * halfWidth) })
      const { low, high } = found.plateWatts
      if (low <= truth.plateWatts && truth.plateWatts <= high) held++
    }
    expect((100 * held) / 4000).toBeLessThan(93)
  })
})
