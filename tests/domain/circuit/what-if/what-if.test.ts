import { describe, expect, test } from 'vitest'
import { oneTubePulled } from '@/lib/domain/circuit/what-if/one-tube-pulled'
import { withMains } from '@/lib/domain/circuit/what-if/with-mains'
import { withRectifier } from '@/lib/domain/circuit/what-if/with-rectifier'
import { ratio } from '@/lib/domain/units'
import { given, refused, solved, tubeOf } from '../solved'
import { cathodeBiased, gridSupplied, softRectifier, stiffRectifier, tubeIn } from '../stage-fixture'

describe('what if', () => {
  test('mains 10 % high: every plate dissipates more, by less than the 33 % of the cube', () => {
    const high = given(withMains(gridSupplied(), ratio(1.1)))
    solved(gridSupplied()).tubes.forEach((tube, place) => {
      const change = (high.tubes[place]?.plateDissipation ?? 0) / tube.plateDissipation
      expect(change).toBeGreaterThan(1.1)
      expect(change).toBeLessThan(1.1 ** 3)
    })
  })

  test('rectifier from 0.269 to 3.21 mA/V^1.5 to silicon: hotter each time, and back is back', () => {
    const [soft, hard, silicon] = [softRectifier, stiffRectifier, null].map((k) =>
      given(withRectifier(cathodeBiased(), k)),
    )
    const first = (one: typeof soft) => one?.tubes[0]?.plateDissipation ?? Number.NaN
    expect(first(soft)).toBeLessThan(first(hard))
    expect(first(hard)).toBeLessThan(first(silicon))
    expect(soft).toEqual(solved(cathodeBiased()))
  })

  test('one of two on a shared resistor pulled: the other runs hotter, at a lower cathode', () => {
    const before = tubeOf(solved(cathodeBiased()), 'V1')
    const after = tubeOf(given(oneTubePulled(cathodeBiased(), 'V2')), 'V1')
    expect(after.plateDissipation).toBeGreaterThan(before.plateDissipation)
    expect(after.cathode).toBeLessThan(before.cathode)
  })

  test('the last tube cannot be pulled, nor one that is not there', () => {
    expect(refused(oneTubePulled(gridSupplied({ tubes: [tubeIn('V1')] }), 'V1')).code).toBe('tube-count')
    expect(refused(oneTubePulled(gridSupplied(), 'V9')).code).toBe('unknown-socket')
  })
})
