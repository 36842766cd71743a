import { expect, test } from 'vitest'
import { loadCalculator } from '@/lib/calc/calculators'
import { answer, faults } from './answers'

// 70.1 and 70.4 mA lie 0.3 mA apart, 5.95/5.9 − 1 = 0.847 %; 74 and 75.5 mA 1.5 mA, cheaper by 32. Worked by hand.
test('the example: closest are T-1 and T-2; T-3 and T-4 do as well within the yardsticks for 32 less; 6L6G is over its print', async () => {
  const { best, closestMatch, bestValue, leftOut } = await answer('choose', (await loadCalculator('choose')).example)
  expect(closestMatch.marks.toSorted()).toEqual(['T-1', 'T-2'])
  expect(closestMatch.spread).toEqual({ milliamps: 0.3, percent: 0.8475 })
  expect(bestValue.marks.toSorted()).toEqual(['T-3', 'T-4'])
  expect(closestMatch.price - bestValue.price).toBe(32)
  expect([closestMatch.marks.join(), bestValue.marks.join()]).toContain(best.marks.join())
  const lost = leftOut.find(({ mark }: { mark: string }) => mark === 'T-5')
  expect(lost.inWords).toMatch(/360 V/)
})

test('an empty stock: no set, and what would help is said; an unknown type and a mark given twice are faults', async () => {
  const { example } = await loadCalculator('choose')
  const given = example as { stock: object[] }
  const none = await answer('choose', { ...given, stock: [] })
  expect(none.best).toBeNull()
  const [first] = given.stock
  expect((await faults('choose', { ...given, stock: [first, first] }))[0]).toMatchObject({
    code: 'mark-twice',
    path: 'stock[1].mark',
  })
  const odd = await faults('choose', { ...given, stock: [{ ...first, type: '6XYZ9' }] })
  expect(odd[0]).toMatchObject({ code: 'tube-not-known', path: 'stock[0].type' })
})
