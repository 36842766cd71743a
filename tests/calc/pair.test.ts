import { expect, test } from 'vitest'
import { answer, faults } from './answers'

const tube = (mark: string, milliamps: number, milliampsPerVolt = 6) => ({ mark, milliamps, milliampsPerVolt })

// 70, 71, 72, 73 mA, all 6 mA/V: 70-71 and 72-73 are 0.2 yardsticks each of 5 mA; 71-72 first would leave 70 and 73 at 0.6.
test('the pairs of least sum are found, not the closest two first; each is told in yardsticks', async () => {
  const { pairs, singles, totalYardsticks } = await answer('pair', {
    tubes: [tube('A', 70), tube('B', 71), tube('C', 71.9), tube('D', 73)],
  })
  expect(pairs.map(({ marks }: { marks: string[] }) => marks)).toEqual([
    ['A', 'B'],
    ['C', 'D'],
  ])
  expect(totalYardsticks).toBeCloseTo(0.42, 6)
  expect(singles).toEqual([])
})

test('beyond a yardstick nothing is a pair; a mark twice and a missing transconductance are faults', async () => {
  const { pairs, singles } = await answer('pair', { tubes: [tube('A', 70), tube('B', 75.1)] })
  expect([pairs, singles]).toEqual([[], ['A', 'B']])
  expect((await faults('pair', { tubes: [tube('A', 70), tube('A', 71)] }))[0]).toMatchObject({ code: 'mark-twice' })
  const mixed = await faults('pair', { tubes: [tube('A', 70), { mark: 'B', milliamps: 71 }] })
  expect(mixed[0]).toMatchObject({ code: 'transconductance-missing', path: 'tubes' })
})
