import { expect, it } from 'vitest'
import { groupedSentences } from '@/app/_components/circuit/grouped-sentences'

const said = (...pairs: readonly [string, string][]) =>
  groupedSentences(pairs.map(([socket, sentence]) => ({ socket, sentence })))

it('what is said alike of V4 and V5 is said once, the rest stays', () => {
  expect(said(['V4', 'V4: too hot.'], ['V5', 'V5: too hot.'], ['V6', 'V6: too cold.'], ['', 'Read it.'])).toEqual([
    'Each of V4 and V5: too hot.',
    'V6: too cold.',
    'Read it.',
  ])
})

it('V1 is not taken for a part of V10', () => {
  expect(said(['V1', 'V1 and V10 differ.'], ['V2', 'V2 and V10 differ.'])).toEqual([
    'Each of V1 and V2 and V10 differ.',
  ])
})

it('the same sentence of the same socket stands once', () => {
  expect(said(['V4', 'In V4 it glows.'], ['V4', 'In V4 it glows.'])).toEqual(['In V4 it glows.'])
})
