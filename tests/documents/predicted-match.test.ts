import { expect, test } from 'vitest'
import { paperText } from '@/lib/documents/paper-text'
import { quotePaper } from '@/lib/documents/quote-paper'
import { sampleQuote } from '@/lib/documents/samples'
import { amps } from '@/lib/domain/units'

const withPredicted = (apartPlusMinus: number | null) => {
  const sample = sampleQuote('UK')
  const predicted = {
    readOn: '2026-09-20',
    plusMinus: amps(0.0054),
    apartPlusMinus: apartPlusMinus === null ? null : amps(apartPlusMinus),
  }
  return paperText(quotePaper({ ...sample, matches: sample.matches.map((match) => ({ ...match, predicted })) }))
}

test('a match by predicted idle says in which amplifier, as read when, how well it is known, and that it is not measured', () => {
  expect(withPredicted(0.0011)).toContain(
    'by the idle predicted in this amplifier as read 20 Sept 2026, known to ±5.40 mA, their differences to ±1.10 mA (95 %), not measured; anode current within 0.80 mA (tolerance 5 mA)',
  )
})

test('it names no test point, as the tubes may have been tested at different ones', () => {
  const [line] = withPredicted(0.0011)
    .split('\n')
    .filter((text) => text.includes('Matched 6L6GC'))
  expect(line).not.toMatch(/at 400 V/)
  expect(withPredicted(null)).not.toContain('their differences')
})
