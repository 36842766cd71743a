import { expect, test } from 'vitest'
import { answer, faults } from './answers'

const exactMeter = { percentOfReading: 0, counts: 0, displayCounts: 6000 }
const meter = { percentOfReading: 0.5, counts: 2, displayCounts: 6000 }
const halfPrimary = {
  method: 'half-primary-drop',
  dropMillivolts: 1594.4,
  ohms: 41,
  tolerancePercent: 0,
  possibleWarmingCelsius: 0,
}
const grounded = { socket: 'V3', type: 'EL34', plateVolts: 450, cathodeVolts: 0 }
const idle = (sockets: readonly object[], more: object = {}) =>
  answer('idle', { bias: 'grid-supplied', meter: exactMeter, sockets, ...more })

// 0.7 · 25 W / 450 V = 38.89 mA; 38.89 mA · 41 Ω = 1.594 V. Worked by hand.
test('1.594 V over a 41 Ω half primary at 450 V is 38.9 mA, 17.5 W, 70 % of 25 W', async () => {
  const { sockets, balance } = await idle([{ ...grounded, current: halfPrimary }])
  expect(sockets[0].plateMilliamps.value).toBeCloseTo(38.89, 2)
  expect(sockets[0].plateWatts.value).toBeCloseTo(17.5, 2)
  expect(sockets[0].plateRatingWatts).toBe(25)
  expect(sockets[0].platePercent.value).toBeCloseTo(70, 1)
  expect(balance).toBeNull()
})

test('aimed at 70 % of 25 W at 450 V the meter should show 1.59 V over 41 Ω', async () => {
  const cold = { ...grounded, current: { ...halfPrimary, dropMillivolts: 820 } }
  const { sockets } = await idle([cold], { windowPercent: { low: 65, high: 75 } })
  const { percent, plateMilliamps, changeMilliamps, meterShows } = sockets[0].target
  expect(percent).toBe(70)
  expect(plateMilliamps).toBeCloseTo(38.89, 2)
  expect(changeMilliamps).toBeCloseTo(18.9, 1)
  expect(meterShows).toEqual({ across: 'V3 half primary', ohms: 41, millivolts: 1594 })
  expect(sockets[0].verdict.verdict).toBe('under')
})

// 50 mA less 5 mA, (325.05 − 0.05) V: 45 mA · 325 V = 14.625 W. Worked by hand.
test('50 mV over 1 Ω less 5 mA of screen current at 325 V is 14.6 W, over the 12 W of a 6V6GT', async () => {
  const { sockets } = await idle([
    {
      socket: 'V1',
      type: '6V6GT',
      plateVolts: 325.05,
      current: { method: 'cathode-sense', dropMillivolts: 50, ohms: 1, tolerancePercent: 0 },
      screenCurrent: { source: 'stated', milliamps: 5, standardMilliamps: 0 },
    },
  ])
  const [{ plateMilliamps, plateWatts, plateRatingWatts, ratingSystem, verdict, cautions }] = sockets
  expect([plateMilliamps.value, plateWatts.value]).toEqual([45, 14.63])
  expect([plateRatingWatts, ratingSystem]).toEqual([12, 'design-centre'])
  expect(verdict).toMatchObject({ verdict: 'over', overRating: 'yes' })
  expect(verdict.reason).toMatch(/too hot for the window of 60 % to 70 %/)
  expect(cautions.map((one: { code: string }) => one.code)).toEqual(['plate-volts-over'])
})

// Limits of the drop alone: gain 0.206 mA, counts 0.2 mA, resistor 0.412 mA. Twice the standard uncertainty would be
// 0.58 mA; of 4,000,000 drawn sums of the three, equally likely between their limits, 95.45 % lie within 0.55 mA.
test('41.2 mV over 1 Ω ± 1 % on a 0.5 % + 2 counts meter is 41.20 ± 0.55 mA', async () => {
  const current = { method: 'cathode-sense', dropMillivolts: 41.2, ohms: 1, tolerancePercent: 1 }
  const { sockets } = await idle([{ socket: 'V4', type: 'EL34', plateVolts: 450, current }], { meter })
  expect(sockets[0].cathodeMilliamps).toEqual({
    value: 41.2,
    plusMinus: 0.55,
    low: 40.65,
    high: 41.75,
    estimate: false,
  })
  expect(sockets[0].plateMilliamps.estimate).toBe(true)
  expect(sockets[0].estimates[0].code).toBe('screen-share-assumed')
  expect(sockets[0].contributions[0].source).toBe('screen-share')
})

const shared = {
  method: 'cathode-bias',
  dropVolts: 20,
  ohms: 250,
  tolerancePercent: 1,
  sharedBy: 2,
  part: 'cathode resistor',
}
const pair = ['V1', 'V2'].map((socket, index) => ({
  socket,
  type: '6V6GT',
  side: index === 0 ? 'A' : 'B',
  plateVolts: 320,
  current: shared,
}))

// 20 V / 250 Ω = 80 mA, half of it 40 mA each.
test('two tubes on one 250 Ω resistor with 20 V: 40 mA of cathode current each, and how alike is not said', async () => {
  const { sockets, balance } = await answer('idle', { bias: 'cathode-resistor', meter: exactMeter, sockets: pair })
  expect(sockets.map((one: { cathodeMilliamps: { value: number } }) => one.cathodeMilliamps.value)).toEqual([40, 40])
  expect(sockets[0].verdict.windowPercent).toEqual({ low: 80, high: 100 })
  expect(balance).toMatchObject({ spread: null, fromSum: true })
  expect(balance.sentences[0]).toMatch(/only their sum/)
})

test('UK words: valve and anode', async () => {
  const dead = await idle([{ ...grounded, current: { ...halfPrimary, dropMillivolts: 0 } }], { words: 'UK' })
  expect(dead.sockets[0].cautions[0].sentence).toMatch(/anode.*valve/)
})

const refused = async (sockets: readonly object[], more: object = {}) =>
  (await faults('idle', { bias: 'cathode-resistor', meter, sockets, ...more })).map(({ code, path }) => [code, path])

test('what cannot be is refused with its place', async () => {
  const half = { ...grounded, current: halfPrimary }
  expect(await refused([{ ...half, type: 'ZZ9' }])).toEqual([['tube-not-known', 'sockets[0].type']])
  expect(await refused([{ ...half, type: '12AX7' }])).toEqual([['not-an-output-tube', 'sockets[0].type']])
  expect(await refused([{ ...half, cathodeVolts: undefined }])).toEqual([
    ['missing-cathode-voltage', 'sockets[0].cathodeVolts'],
  ])
  expect(await refused([half, half])).toEqual([['socket-twice', 'sockets[1].socket']])
  expect(await refused([half], { windowPercent: { low: 70, high: 60 } })).toEqual([
    ['window-upside-down', 'windowPercent.low'],
  ])
  expect(await refused([{ ...half, current: { ...shared, part: undefined } }])).toEqual([
    ['part-not-named', 'sockets[0].current.part'],
  ])
})

test('one resistor has one reading, and no more sockets than share it', async () => {
  const [v1, v2] = pair
  const other = { ...v2, current: { ...shared, dropVolts: 21 } }
  expect(await refused([v1 as object, other])).toEqual([['part-differs', 'sockets[1].current.part']])
  const third = { ...v2, socket: 'V3' }
  expect(await refused([...pair, third])).toEqual([['part-shared-by-more', 'sockets[2].current.part']])
})

test('faults of several sockets are told together', async () => {
  const current = { ...halfPrimary }
  const bad = ['V1', 'V2'].map((socket) => ({ ...grounded, socket, cathodeVolts: 100, plateVolts: 20, current }))
  expect(await refused(bad)).toEqual([
    ['plate-below-cathode', 'sockets[0].plateVolts'],
    ['plate-below-cathode', 'sockets[1].plateVolts'],
  ])
})
