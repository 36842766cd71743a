import { describe, expect, it } from 'vitest'
import { USUAL_YARDSTICKS } from '@/lib/domain/matching/match-limits'
import { matchStatement } from '@/lib/domain/matching/match-statement'
import {
  arrangementText,
  exclusionText,
  figure,
  lostText,
  type MatchingFormat,
  proposalText,
  relaxationText,
  tubeCautionText,
} from '@/lib/domain/matching/matching-text'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { matchStatementText, testStatementText } from '@/lib/domain/matching/statement-text'
import { formatMoney, money } from '@/lib/domain/money'
import { volts, watts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { aDemand, aTest, aTube, readTube, someLimits } from './tubes'

const US: MatchingFormat = { words: wordsFor('US'), formatMoney: (amount) => formatMoney(amount, 'USD', 'en-US') }
const UK: MatchingFormat = { words: wordsFor('UK'), formatMoney: (amount) => formatMoney(amount, 'GBP', 'en-GB') }

const stock = [
  readTube('T-1', 70, 6),
  readTube('T-2', 71, 6.1),
  readTube('T-3', 74, 6.3, 2500),
  readTube('T-4', 78, 6.9, 2000),
]
const proposal = proposeSet(stock, aDemand(2), someLimits())

describe('sentences name value and bound', () => {
  it('voltage over rating', () => {
    const reason = {
      code: 'plate-voltage-over-rating',
      designation: '6V6GT',
      voltage: volts(412.5),
      rating: volts(315),
    } as const
    expect(exclusionText(reason, US)).toBe('Plate to cathode is 413 V here, 98 V above the printed 315 V of the 6V6GT.')
    expect(exclusionText(reason, UK)).toMatch(/^Anode to cathode/)
    expect(tubeCautionText(reason, UK)).toContain('Good old valves often stand more')
  })

  it('whole volts, as a meter is no better; closer to the limit, as fine as it takes', () => {
    const at = (voltage: number, rating: number) =>
      exclusionText(
        { code: 'plate-voltage-over-rating', designation: '6L6G', voltage: volts(voltage), rating: volts(rating) },
        US,
      )
    expect(at(449.95, 360)).toBe('Plate to cathode is 450 V here, 90 V above the printed 360 V of the 6L6G.')
    expect(at(360.4, 360)).toBe('Plate to cathode is 360.4 V here, 0.4 V above the printed 360 V of the 6L6G.')
    const power = (dissipation: number) =>
      exclusionText(
        { code: 'idle-over-dissipation', designation: '6L6G', dissipation: watts(dissipation), rating: watts(19) },
        US,
      )
    // 6L6G 19 W against 46.7 mA at 450 V: 21.01 W.
    expect(power(21.01)).toMatch(/^Idle is 21 W on the plate, above the 19 W rating/)
    expect(power(19.04)).toMatch(/^Idle is 19\.04 W on the plate, above the 19 W rating/)
  })

  it('dissipation, age, price, test point', () => {
    expect(
      exclusionText(
        { code: 'idle-over-dissipation', designation: '6V6GT', dissipation: watts(13.2), rating: watts(12) },
        US,
      ),
    ).toContain('13.2 W on the plate, above the 12 W rating of the 6V6GT')
    expect(exclusionText({ code: 'test-too-old', testedAt: '2030-01-05', ageDays: 500, maximumDays: 365 }, US)).toBe(
      'Tested Jan 5, 2030, 500 days ago; the limit is 365 days.',
    )
    expect(exclusionText({ code: 'over-price-cap', price: money(4001), cap: money(4000) }, US)).toBe(
      'Costs $40.01 alone; the set may cost $40.00.',
    )
    const { testPoint } = aTest()
    expect(
      exclusionText({ code: 'other-test-point', testPoint, setTestPoint: { ...testPoint, screenVoltage: null } }, US),
    ).toBe(
      'Tested at plate 250 V, screen 250 V, grid −14 V; the set at plate 250 V, grid −14 V. Readings at different points do not compare.',
    )
  })

  it('what a set loses', () => {
    expect(proposal.leastPrice && lostText(proposal.leastPrice, US)).toBe(
      'Against the best set: wider by 3 mA; transconductance wider by 7.86 %; cheaper by $35.00.',
    )
    expect(proposal.closest && lostText(proposal.closest, US)).toBeNull()
    const even = proposeSet(
      ['A', 'B', 'C', 'D'].map((mark) => readTube(mark, 70, 6)),
      aDemand(2),
      someLimits(),
    )
    expect(even.next[0] && lostText(even.next[0], US)).toBe(
      'Equal in every figure to the best set; its marks come later.',
    )
  })

  it('a match and what voids it', () => {
    const statement = proposal.closest && matchStatement(proposal.closest, USUAL_YARDSTICKS)
    expect(statement && matchStatementText(statement, US)).toBe(
      'Tested on May 1, 2031 on Bench tester 1 at plate 250 V, screen 250 V, grid −14 V (plate ±0.5 V, screen ±0.5 V, grid ±0.05 V): 1 mA apart, 1.67 % in transconductance. Matched within 5 mA and 10 %. A match is void without these.',
    )
  })

  it('what lies outside the yardsticks is called no match, and claims none that could be void', () => {
    const pair = [readTube('A', 50, 5), readTube('B', 56, 5.8)]
    const { closest } = proposeSet(pair, aDemand(2), someLimits())
    const text = closest && matchStatementText(matchStatement(closest, USUAL_YARDSTICKS), US)
    // 56 − 50 = 6 mA and 5.8 / 5 − 1 = 16 %, by hand.
    expect(text).toMatch(/6 mA apart, 16 % in transconductance\. Not matched: outside 5 mA or 10 %\.$/)
  })

  it('a single tube matches nothing: it says where its figures come from, and no caution speaks of a match', () => {
    const { closest } = proposeSet([readTube('T-1', 70, null)], aDemand(1), someLimits())
    const statement = closest && matchStatement(closest, USUAL_YARDSTICKS)
    expect(statement && testStatementText(statement, US)).toBe(
      'Tested on May 1, 2031 on Bench tester 1 at plate 250 V, screen 250 V, grid −14 V.',
    )
    expect(closest?.cautions).toEqual([])
  })

  it('a triode has no screen whose tolerance could be stated', () => {
    const test = aTest({ testPoint: { ...aTest().testPoint, screenVoltage: null } })
    const { closest } = proposeSet([aTube('A', { test }), aTube('B', { test })], aDemand(2), someLimits())
    const statement = closest && matchStatement(closest, USUAL_YARDSTICKS)
    expect(statement && matchStatementText(statement, US)).toContain('grid −14 V (plate ±0.5 V, grid ±0.05 V)')
  })

  it('sides, the whole proposal, and what would help', () => {
    expect(proposal.closest && arrangementText(proposal.closest, US)).toBe(
      'One side T-1, 70 mA; the other T-2, 71 mA; 1 mA of plate current between the sides at the test point.',
    )
    expect(proposalText(proposal, 2, US)).toContain('4 tubes in stock fit these sockets. Best set of 2: 1 mA apart')
    const none = proposeSet([aTube('A')], aDemand(2), someLimits())
    expect(proposalText(none, 2, UK)).toBe('1 valve in stock fits these sockets; 2 are wanted.')
    const empty = (count: number) => proposalText(proposeSet([], aDemand(count), someLimits()), count, UK)
    expect(empty(2)).toBe('No valve in stock fits these sockets; 2 are wanted.')
    expect(empty(1)).toBe('No valve in stock fits this socket; 1 is wanted.')
    expect(relaxationText({ limit: 'test-age', tubes: 2, sets: 1, neededDays: 400, neededPrice: null }, US)).toBe(
      'Accept older tests, 2 tubes more: at least 1 set. The first set appears at 400 days.',
    )
  })

  it('figures carry no idle zeros and no minus zero', () => {
    expect([figure(100, 2), figure(0.5, 2), figure(-14, 2), figure(-0.0001, 2), figure(70, 0)]).toEqual([
      '100',
      '0.5',
      '−14',
      '0',
      '70',
    ])
  })
})
