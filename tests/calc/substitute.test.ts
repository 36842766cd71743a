import { expect, test } from 'vitest'
import { answer, faults } from './answers'

type Answered = { type: string; answer: string; findings: { check: string; weight: string; sentence: string }[] }
const asked = async (given: object): Promise<Answered[]> => (await answer('substitute', given)).answers

// Base drawings 7AC and 8ET and heater currents of 0.9 A and 1.5 A: handbook.
test('EL34 for 6L6GC wants pin 1 linked; the winding of 4 A would carry 4.5 A', async () => {
  const heaterWinding = { limitAmps: 4, drawnAmps: 3.3 }
  const [one] = await asked({ made: '6L6GC', proposed: ['EL34'], count: 2, heaterWinding })
  expect(one?.answer).toBe('with-changes')
  expect(one?.findings.map(({ sentence }) => sentence).join(' ')).toMatch(
    /Pin 1 .* link it .*pin 8.*would carry 4.5 A/s,
  )
})

test('asked of none by name it lists all of the kind and base; asked of nothing it knows it says which', async () => {
  const all = await asked({ made: '12AX7' })
  expect(all.map(({ type }) => type)).toEqual(expect.arrayContaining(['12AT7', '12AU7', '5751', 'ECC83']))
  expect(all.find(({ type }) => type === '6SN7GTB')).toBeUndefined()
  const [fault] = await faults('substitute', { made: '6L6GC', proposed: ['EL34', '6XYZ9'] })
  expect(fault).toMatchObject({ code: 'tube-not-known', path: 'proposed[1]' })
})

test('without measured volts nothing is promised', async () => {
  const [one] = await asked({ made: '6L6GC', proposed: ['6L6GC'] })
  expect(one?.answer).toBe('cannot-say')
})
