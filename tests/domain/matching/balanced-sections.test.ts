import { describe, expect, it } from 'vitest'
import { byBalance } from '@/lib/domain/matching/balanced-sections'
import type { TwinCandidate } from '@/lib/domain/matching/candidate'
import { money } from '@/lib/domain/money'
import { amps, siemens } from '@/lib/domain/units'
import { aTest, aTube } from './tubes'

type Section = readonly [milliamps: number, slope: number | null]

function twin(mark: string, one: Section, other: Section, price = 2000): TwinCandidate {
  const [first, second] = [one, other].map(([milliamps, slope]) => ({
    plateCurrent: amps(milliamps / 1000),
    transconductance: slope === null ? null : siemens(slope / 1000),
  })) as [TwinCandidate['sections'][0], TwinCandidate['sections'][1]]
  return { ...aTube(mark, { price: money(price) }), test: aTest(), sections: [first, second] }
}

describe('the twin with the best balanced sections', () => {
  it('1.0/1.1 mA and 1.60/1.60 mA/V: 10 % in current is one yardstick', () => {
    const [only] = byBalance([twin('A', [1.1, 1.6], [1, 1.6])])
    expect(only?.current).toBeCloseTo(0.1, 9)
    expect(only?.transconductance).toBe(0)
    expect(only?.imbalance).toBeCloseTo(1, 5)
  })

  it('orders by both spreads together, then price, then mark; strength does not count', () => {
    const twins = [
      twin('T-10', [1, 1.6], [1, 1.6]),
      twin('T-9', [0.5, 0.9], [0.5, 0.9]),
      twin('T-8', [1, 1.6], [1, 1.6], 2500),
      twin('T-1', [1, 1.6], [1.05, 1.6]),
      twin('T-2', [1, 1.6], [1.02, 1.8]),
    ]
    expect(byBalance(twins).map(({ candidate }) => candidate.mark)).toEqual(['T-9', 'T-10', 'T-8', 'T-1', 'T-2'])
  })

  it('sections read in current alone come last; a dead section is left out', () => {
    const twins = [twin('A', [1, null], [1, null]), twin('B', [1, 1.6], [1.2, 1.6]), twin('C', [1, 1.6], [0, 1.6])]
    expect(byBalance(twins).map(({ candidate }) => candidate.mark)).toEqual(['B', 'A'])
  })

  it('30 % apart is what makers allow, 31 % is not', () => {
    expect(byBalance([twin('A', [1, 1.6], [1.3, 1.6])])[0]?.within).toBe(true)
    expect(byBalance([twin('A', [1, 1.6], [1.31, 1.6])])[0]?.within).toBe(false)
    expect(byBalance([twin('A', [1, 1.6], [1, 2.2])])[0]?.within).toBe(false)
  })
})
