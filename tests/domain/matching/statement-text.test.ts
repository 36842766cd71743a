import { describe, expect, it } from 'vitest'
import type { MatchingFormat } from '@/lib/domain/matching/matching-text'
import type { MatchGrade, MatchStatement } from '@/lib/domain/matching/proposal'
import { matchStatementText } from '@/lib/domain/matching/statement-text'
import { formatMoney } from '@/lib/domain/money'
import { amps } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { MATCHED_PAIR } from '@/tests/support/matched-pair'

const format: MatchingFormat = {
  words: wordsFor('US'),
  formatMoney: (amount) => formatMoney(amount, 'USD', 'en-US'),
}

const AT_POINT: MatchStatement = { ...MATCHED_PAIR, firstTested: '2031-05-01' }

const PREDICTED: MatchStatement = {
  ...AT_POINT,
  predicted: {
    ...{ readOn: '2031-05-07', lowest: amps(0.037), highest: amps(0.0382), plusMinus: amps(0.004) },
    ...{ apartPlusMinus: amps(0.001), instruments: ['Bench tester 1', 'Bench tester 2'] },
  },
}

const said = (statement: MatchStatement, match: MatchGrade) => matchStatementText({ ...statement, match }, format)

describe('a set that is called matched on the screen', () => {
  it.each(['both', 'current-only'] as const)(
    '%s: carries days of test, instrument, test point and tolerance',
    (match) => {
      const text = said(AT_POINT, match)
      expect(text).toContain(
        'Tested from May 1, 2031 to May 6, 2031 on Bench tester 1 at plate 250 V, screen 250 V, grid −12.5 V',
      )
      expect(text).toContain('Matched within 5 mA')
      expect(text).toContain('A match is void without these.')
    },
  )

  it.each(['both', 'current-only'] as const)(
    '%s, as predicted: says so instead of a test point, with the day the amplifier was read',
    (match) => {
      const text = said(PREDICTED, match)
      expect(text).toContain('Predicted idle in this amplifier, not measured')
      expect(text).toContain('in the circuit as read on May 7, 2031')
      expect(text).toContain('Tested from May 1, 2031 to May 6, 2031 on Bench tester 1 and Bench tester 2.')
      expect(text).toContain('Matched within 5 mA')
    },
  )

  it.each([AT_POINT, PREDICTED])(
    'uncertain or outside is never called matched, nor is anything void without it',
    (statement) => {
      for (const match of ['uncertain', 'outside'] as const) {
        expect(said(statement, match)).not.toContain('Matched within')
        expect(said(statement, match)).not.toContain('void without')
      }
      expect(said(statement, 'uncertain')).toContain('Uncertain: within 5 mA and 10 %')
      expect(said(statement, 'outside')).toContain('Not matched: outside 5 mA or 10 %.')
    },
  )
})
