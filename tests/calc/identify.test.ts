import { expect, test } from 'vitest'
import { answer, faults } from './answers'

test('the example: a 6V6GT in a metal can is named contradictory, the metal 6V6 leads, its years are a set', async () => {
  const { identify } = await import('@/lib/calc/identify/identify')
  const found = await answer('identify', identify.example)
  expect(found.state).toBe('contradictory')
  expect(found.contradictions[0]).toMatchObject({ basis: 'published' })
  expect(found.ranked[0]).toMatchObject({
    designation: '6V6',
    envelope: 'metal',
    ratings: { plateWatts: 12, system: 'design-centre' },
  })
  expect(found.ranked[0].years.spans).toEqual([1945, 1955, 1965, 1975, 1985, 1995].map((year) => [year, year]))
  expect(found.next.answers.length).toBeGreaterThan(1)
})

test('a print alone: its parts with meaning and source', async () => {
  const { print, ranked } = await answer('identify', { print: '5R4WGY' })
  expect(print[0].parts.map(({ text }: { text: string }) => text)).toEqual(['5', 'R', '4', 'W', 'G', 'Y'])
  expect(print[0].parts.every(({ source }: { source: string }) => source.length > 5)).toBe(true)
  expect(ranked[0]).toMatchObject({ designation: '5R4WGY', standing: 'special-quality' })
})

test('nothing told is an answer too: unknown, and the print to be read first', async () => {
  expect(await answer('identify', {})).toMatchObject({ state: 'unknown', next: { key: 'print' } })
})

test('makers come from the input only', async () => {
  const given = { print: '6V6', codes: '199', makers: [{ name: 'Quarrel Lane Valve Works', sourceCodes: ['199'] }] }
  const { remarks } = await answer('identify', given)
  expect(remarks.map(({ sentence }: { sentence: string }) => sentence)).toContain(
    'US source code 199: Quarrel Lane Valve Works.',
  )
})

test('plates are anodes where the shop says so', async () => {
  const { remarks } = await answer('identify', { choices: { plateColour: 'grey' }, words: 'UK' })
  expect(remarks[0].sentence).toMatch(/^Anode colour/)
})

test.each([
  [{ choices: { bulb: 'T-99' } }, 'not-a-choice', 'choices.bulb'],
  [{ choices: { bulbs: 'T-9' } }, 'unknown-key', 'choices.bulbs'],
  [{ print: 'x'.repeat(61) }, 'out-of-bounds', 'print'],
])('%j is refused', async (given, code, path) => {
  expect((await faults('identify', given))[0]).toMatchObject({ code, path })
})
