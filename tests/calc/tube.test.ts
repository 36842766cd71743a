import { expect, test } from 'vitest'
import { answer } from './answers'

// 12 W against 14 W: design-centre and design-maximum ratings of the 6V6 family, "6V6GTA" data sheet as transcribed
// on a builder's page, and a tube encyclopaedia page on the 6V6.
test('a 6V6GT has 12 W design-centre, a 6V6GTA 14 W design-maximum, each with its source', async () => {
  const [gt, gta] = await Promise.all(['6V6GT', '6V6GTA'].map((designation) => answer('tube', { designation })))
  expect([gt.ratings.system, gt.ratings.limits.plateWatts.value]).toEqual(['design-centre', 12])
  expect([gta.ratings.system, gta.ratings.limits.plateWatts.value]).toEqual(['design-maximum', 14])
  expect(gta.ratings.limits.plateWatts).toMatchObject({ basis: 'published', confidence: null })
  expect(gta.ratings.limits.plateWatts.source).toMatch(/6V6GTA data sheet/)
})

test('every number of a card says where it is from', async () => {
  const card = await answer('tube', { designation: 'EL34' })
  const rows = card.operatingRows.flatMap((row: { figures: object }) => Object.values(row.figures))
  const numbers = [...Object.values(card.ratings.limits), ...rows, card.heaters[0].volts, card.heaters[0].amps]
  expect(numbers.length).toBeGreaterThan(20)
  for (const one of numbers) {
    expect(one).toMatchObject({ basis: expect.stringMatching(/^(published|from-memory)$/), source: expect.any(String) })
  }
})

test('a 6V6 has plate on pin 3, screen on 4, grid on 5, and a heater of 6.3 V, 0.45 A, 2.835 W', async () => {
  const { base, heaters } = await answer('tube', { designation: '6V6GTA' })
  const electrode = (pin: number) => base.pins.find((one: { pin: number }) => one.pin === pin).electrode
  expect([3, 4, 5].map(electrode)).toEqual(['a', 'g2', 'g1'])
  expect([base.eia, base.pinCount]).toEqual(['7AC', 8])
  expect(heaters[0]).toMatchObject({ volts: { value: 6.3 }, amps: { value: 0.45 }, watts: 2.835 })
})

test('CV511 is another number of 6V6GT; 6L6WGC is a special-quality 6L6GC whose figures stand in', async () => {
  expect(await answer('tube', { designation: 'CV511' })).toMatchObject({
    designation: '6V6GT',
    resolution: 'other-number',
    ratingsStandIn: false,
  })
  const ruggedised = await answer('tube', { designation: '6L6WGC' })
  expect(ruggedised).toMatchObject({ designation: '6L6GC', resolution: 'special-quality', ratingsStandIn: true })
  expect(ruggedised.resolutionSentence).toMatch(/Its own sheet decides/)
})

test('similar types stand apart from numbers of the same tube', async () => {
  const { equivalents } = await answer('tube', { designation: '6V6GTA' })
  const numbers = (list: { number: string }[]) => new Set(list.map(({ number }) => number))
  const [same, similar] = [numbers(equivalents.otherNumbers), numbers(equivalents.similarOnly)]
  expect(same.has('CV511')).toBe(true)
  expect([...same].filter((one) => similar.has(one))).toEqual([])
  expect(equivalents.variants.map((one: { plateWatts: { value: number } }) => one.plateWatts.value)).toContain(12)
})

test('a type without a screen has no screen share', async () => {
  expect((await answer('tube', { designation: '12AX7' })).typicalScreenShare).toBeNull()
  const { typicalScreenShare } = await answer('tube', { designation: 'EL34' })
  expect(typicalScreenShare).toMatchObject({ percentOfCathodeCurrent: expect.any(Number), basis: 'handbook-rows' })
})
