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

const WIRING = { gridLeakOhms: 470_000, biasResistor: 'Rk' }
const SUPPLIES = {
  biasResistors: [{ id: 'Rk', ohms: 130 }],
  halfPrimaryOhms: { A: 110, B: 120 },
  screenFeed: { kind: 'dropper', ohms: 1000, drawnMilliamps: 5 },
  supply: { openCircuitVolts: 345, sourceOhms: 120, rectifier: 'EZ81' },
}
const CIRCUIT = {
  sockets: [
    { socket: 'V3', side: 'A', ...WIRING },
    { socket: 'V4', side: 'B', ...WIRING },
  ],
  ...SUPPLIES,
}
const EL84 = (mark: string, milliamps: number, milliampsPerVolt: number, price: number) => ({
  ...{ mark, type: 'EL84', milliamps, milliampsPerVolt, price },
})
const IN_CIRCUIT = {
  set: { type: 'EL84', count: 2, plateToCathodeVolts: 300, screenToCathodeVolts: 290 },
  test: { instrument: 'Tester 1', plateVolts: 250, screenVolts: 250, gridVolts: -7.3 },
  stock: [EL84('A', 48, 11.3, 20), EL84('B', 44.5, 10.6, 18), EL84('C', 51, 11.9, 22), EL84('D', 47.4, 11.2, 9)],
  circuit: CIRCUIT,
}

/** What the tester is taken to be good for: ± 4 % and ± 10 %, 95 % bands (lib/domain/stock/test-record-of.ts). */
const record = (milliamps: number, slope: number) => ({
  ...{ plateToCathodeVolts: 250, screenToCathodeVolts: 250, gridToCathodeVolts: -7.3 },
  plateMilliamps: { value: milliamps, standard: 0.02 * milliamps },
  transconductanceMilliampsPerVolt: { value: slope, standard: 0.05 * slope },
})

test('in a circuit each tube is said to do what `predict` says of it with its like in the other socket', async () => {
  const { best, closestMatch, inWords } = await answer('choose', IN_CIRCUIT)
  expect(best.marks.toSorted()).toEqual(['A', 'D'])
  expect(closestMatch.marks.toSorted()).toEqual(['A', 'D'])
  expect(inWords).toMatch(/^4 tubes in stock fit/)
  for (const { mark, plateMilliamps, plateWatts } of best.inCircuit.tubes) {
    const { milliamps, milliampsPerVolt } = IN_CIRCUIT.stock.find((tube) => tube.mark === mark) ?? expect.fail(mark)
    const tube = { type: 'EL84', records: [record(milliamps, milliampsPerVolt)] }
    const { sockets } = await answer('predict', {
      given: 'circuit',
      sockets: CIRCUIT.sockets.map((socket) => ({ ...socket, tube })),
      ...SUPPLIES,
    })
    // The two halves of the primary differ, so one socket runs a little hotter: the hotter one counts.
    const hotter = sockets.toSorted(
      (a: { plateMilliamps: { value: number } }, b: { plateMilliamps: { value: number } }) =>
        b.plateMilliamps.value - a.plateMilliamps.value,
    )[0]
    expect(plateMilliamps.value).toBeCloseTo(hotter.plateMilliamps.value, 6)
    expect(plateMilliamps.high / hotter.plateMilliamps.high).toBeCloseTo(1, 2)
    expect(plateWatts.value).toBeCloseTo(hotter.plateWatts.value, 6)
  }
})

test('how the idle is set follows from the circuit, unless it is told; weights follow from that, unless they are told', async () => {
  const weighed = async (over: object) => (await answer('choose', { ...IN_CIRCUIT, ...over })).weights
  const wired = (wiring: readonly object[], more: object) => ({
    circuit: { ...CIRCUIT, sockets: CIRCUIT.sockets.map((socket, at) => ({ ...socket, ...wiring[at] })), ...more },
  })
  expect(await weighed({})).toMatchObject({ currentSpread: 1, slopeSpread: 0.5, aim: 0.5 })
  const own = [{ biasResistor: 'R1' }, { biasResistor: 'R2' }]
  const ownResistors = { biasResistors: own.map(({ biasResistor: id }) => ({ id, ohms: 270 })) }
  expect(await weighed(wired(own, ownResistors))).toMatchObject({ currentSpread: 0.7, slopeSpread: 0.7 })
  const trims = { gridSupplies: ['G1', 'G2'].map((id) => ({ id, volts: -9 })), biasResistors: [] }
  const grid = (at: number) => ({ gridSupply: trims.gridSupplies[at]?.id, biasResistor: undefined })
  expect(await weighed(wired([grid(0), grid(1)], trims))).toMatchObject({ currentSpread: 0.2, slopeSpread: 1 })
  expect(await weighed(wired([grid(0), grid(0)], trims))).toMatchObject({ currentSpread: 1, aim: 0 })
  expect(await weighed({ set: { ...IN_CIRCUIT.set, arrangement: 'individual-trims' } })).toMatchObject({
    currentSpread: 0.2,
  })
  const told = await weighed({ weights: { currentSpread: 0.1234567, price: 2 } })
  expect(told).toMatchObject({ currentSpread: 0.123, price: 2, slopeSpread: 0.5 })
})

test('a dear price weight takes the cheaper pair; an aim takes those that idle nearest to it', async () => {
  const flat = { currentSpread: 0.001, slopeSpread: 0, rarity: 0, confidence: 0, age: 0 }
  const cheap = await answer('choose', { ...IN_CIRCUIT, weights: { ...flat, price: 10, aim: 0 } })
  // 9 and 18 of 20, 18, 22 and 9.
  expect(cheap.best.marks.toSorted()).toEqual(['B', 'D'])
  const set = { ...IN_CIRCUIT.set, aimMilliamps: 45 }
  const aimed = await answer('choose', { ...IN_CIRCUIT, set, weights: { ...flat, price: 0, aim: 10 } })
  // The strongest two of 48, 44.5, 51 and 47.4 mA at the test point.
  expect(aimed.best.marks.toSorted()).toEqual(['A', 'C'])
})

test('a circuit that cannot be is refused at its place in the input', async () => {
  const refused = async (over: object, circuit: object = {}) =>
    (await faults('choose', { ...IN_CIRCUIT, circuit: { ...CIRCUIT, ...circuit }, ...over }))[0]
  expect(await refused({}, { sockets: CIRCUIT.sockets.slice(1) })).toEqual({
    code: 'other-count',
    path: 'circuit.sockets',
    sentence: 'circuit.sockets has 1; it must have 2, as many as the set has tubes.',
  })
  expect(await refused({}, { biasResistors: [{ id: 'R9', ohms: 130 }] })).toMatchObject({
    code: 'unknown-part',
    path: 'circuit.sockets[0].biasResistor',
    sentence: 'circuit.sockets[0].biasResistor is "Rk"; it must be an id of circuit.biasResistors.',
  })
  expect(await refused({}, { supply: { ...SUPPLIES.supply, rectifier: 'EL84' } })).toMatchObject({
    path: 'circuit.supply.rectifier',
  })
  const drained = { ...SUPPLIES.supply, drawnMilliamps: 4000 }
  expect(await refused({}, { supply: drained })).toMatchObject({
    code: 'supply-collapsed',
    path: 'circuit.supply.drawnMilliamps',
  })
  expect(await refused({ weights: { currentSpread: 0, slopeSpread: 0.0001 } })).toMatchObject({
    code: 'no-spread-weighed',
    path: 'weights',
  })
})
