import { describe, expect, test } from 'vitest'
import { answer, faults } from './answers'

const at = (plate: number, screen: number, grid: number) => ({
  plateToCathodeVolts: plate,
  screenToCathodeVolts: screen,
  gridToCathodeVolts: grid,
})
const atVoltages = (type: string, point: object, records: readonly object[] = []) =>
  answer('predict', { given: 'voltages', tube: { type, records }, at: point })
const holds = ({ low, high }: { low: number; high: number }, value: number) => low < value && value < high

describe('at voltages', () => {
  // A row put aside from the fit. From memory: US receiving-tube handbooks, 6V6, class A1, 315/225/−13 V.
  test('a 6V6 at 315/225/−13 V: the printed 34 mA and 2.2 mA lie in the band', async () => {
    const { plateMilliamps, screenMilliamps, tube } = await atVoltages('6V6', at(315, 225, -13))
    expect(holds(plateMilliamps, 34)).toBe(true)
    expect(Math.abs(plateMilliamps.value / 34 - 1)).toBeLessThan(0.12)
    expect(holds(screenMilliamps, 2.2)).toBe(true)
    expect(tube).toMatchObject({ knownBy: 'type', againstType: { perveance: 1, mu: 1, screenShare: 1 } })
  })

  test('watts are volts times amperes, and per cent those of the variant: 14 W of a 6V6GTA', async () => {
    const { plateMilliamps, plateWatts, platePercent, plateRatingWatts } = await atVoltages('6V6GTA', at(300, 250, -14))
    expect(plateRatingWatts).toBe(14)
    expect(plateWatts.value / ((300 * plateMilliamps.value) / 1000)).toBeCloseTo(1, 1)
    expect(platePercent.value / (plateWatts.value / 0.14)).toBeCloseTo(1, 1)
  })

  const point = at(250, 250, -12.5)
  const record = {
    ...point,
    plateMilliamps: { value: 52, standard: 0.52 },
    transconductanceMilliampsPerVolt: { value: 4.5, standard: 0.09 },
  }
  test('a tube tested at the very point draws what was read: 52 mA ± 2 %', async () => {
    const { plateMilliamps, tube, standardPercent } = await atVoltages('6V6', point, [record])
    expect(plateMilliamps.value).toBeCloseTo(52, 6)
    expect(plateMilliamps.high - plateMilliamps.low).toBeCloseTo(4 * 0.52, 1)
    expect(standardPercent).toMatchObject({ ofCurves: 0, ofTube: 1, together: 1 })
    expect(tube.knownBy).toBe('current-and-transconductance')
  })

  test('two records that disagree by 30 % are cautioned', async () => {
    const other = { ...record, plateMilliamps: { value: 68, standard: 0.68 } }
    const { tube, cautions } = await atVoltages('6V6', point, [record, other])
    expect(tube.recordsAgree.chiSquare).toBeGreaterThan(100)
    expect(cautions.map((one: { code: string }) => one.code)).toContain('records-disagree')
  })

  test('a triode needs no screen volts and shows no screen current', async () => {
    const { plateMilliamps, screenMilliamps, screenWatts } = await atVoltages('12AX7', {
      plateToCathodeVolts: 250,
      gridToCathodeVolts: -2,
    })
    // 1.2 mA at 250 V, −2 V. From memory: US receiving-tube handbooks.
    expect(holds(plateMilliamps, 1.2)).toBe(true)
    expect([screenMilliamps, screenWatts]).toEqual([null, null])
  })

  test('a positive grid and a plate below the knee are cautioned, stand-in curves too', async () => {
    const codes = async (type: string, point: object) =>
      (await atVoltages(type, point)).cautions.map((one: { code: string }) => one.code)
    expect(await codes('6V6', at(20, 250, 1))).toEqual(
      expect.arrayContaining(['grid-not-negative', 'plate-below-knee']),
    )
    expect(await codes('KT77', at(250, 250, -13))).toContain('curves-stand-in')
  })
})

type Stage = Record<string, unknown>
const single = (changes: Stage = {}): Stage => ({
  given: 'circuit',
  service: 'single-ended-class-a',
  sockets: [{ socket: 'V2', tube: { type: '6L6' }, biasResistor: 'Rk' }],
  biasResistors: [{ id: 'Rk', ohms: 170 }],
  halfPrimaryOhms: { A: 0 },
  screenFeed: { kind: 'dropper', ohms: 0 },
  supply: { openCircuitVolts: 263.7, sourceOhms: 0 },
  ...changes,
})
const gridSupplied = (volts: number, changes: Stage = {}): Stage =>
  single({
    sockets: [{ socket: 'V2', tube: { type: '6L6' }, gridSupply: 'bias' }],
    biasResistors: [],
    gridSupplies: [{ id: 'bias', volts }],
    supply: { openCircuitVolts: 250, sourceOhms: 0 },
    ...changes,
  })
const shareOf = ({ value, low, high }: { value: number; low: number; high: number }) => (high - low) / (4 * value)

describe('in a circuit', () => {
  // A row put aside from the fit. From memory: US receiving-tube handbooks, 6L6, class A1, 250/250 V, 170 Ω: 75 and 5.4 mA.
  // Plate and screen volts are to the cathode, which 80.4 mA in 170 Ω lifts by 13.7 V.
  test('a 6L6 on 170 Ω with 250 V on plate and screen: the printed 75 mA lies in the band, within 12 %', async () => {
    const { sockets, circuit } = await answer('predict', single())
    const [{ plateMilliamps, screenMilliamps, gridToCathodeVolts }] = sockets
    expect(holds(plateMilliamps, 75)).toBe(true)
    expect(Math.abs(plateMilliamps.value / 75 - 1)).toBeLessThan(0.12)
    expect(holds(screenMilliamps, 5.4)).toBe(true)
    const [{ volts, milliamps, watts }] = circuit.biasResistors
    expect(volts).toBeCloseTo(0.17 * milliamps, 2)
    expect(watts).toBeCloseTo((volts * milliamps) / 1000, 2)
    expect(gridToCathodeVolts.value).toBeCloseTo(-volts, 1)
  })

  test('without a resistor anywhere it is the prediction at those voltages, band and all', async () => {
    const { sockets } = await answer('predict', gridSupplied(-14))
    const fixed = await atVoltages('6L6', at(250, 250, -14))
    for (const key of ['plateMilliamps', 'screenMilliamps', 'plateWatts', 'screenWatts', 'platePercent']) {
      expect(sockets[0][key], key).toEqual(fixed[key])
    }
  })

  // dI/I = e/(1 + g·Rk) at a fixed-voltage error e, g the slope of cathode current by cathode volts: by hand,
  // with 80 mA, 170 Ω and some 6.5 mA/V the band must shrink to about 1/(1 + 1.1).
  test('a cathode resistor holds a strong tube back: the band is about half as wide', async () => {
    const [fixed, held] = await Promise.all([gridSupplied(-14), single()].map((given) => answer('predict', given)))
    const ratio = shareOf(held.sockets[0].plateMilliamps) / shareOf(fixed.sockets[0].plateMilliamps)
    expect(ratio).toBeGreaterThan(0.35)
    expect(ratio).toBeLessThan(0.65)
  })

  test('Ohm on every resistor of a pair: 44 Ω and 41 Ω of primary, 80 Ω of supply, 470 Ω of dropper', async () => {
    const { circuit, sockets } = await answer('predict', {
      given: 'circuit',
      sockets: ['A', 'B'].map((side) => ({ socket: side, side, tube: { type: 'EL34' }, gridSupply: 'bias' })),
      gridSupplies: [{ id: 'bias', volts: -40 }],
      halfPrimaryOhms: { A: 41, B: 44 },
      screenFeed: { kind: 'dropper', ohms: 470, drawnMilliamps: 10 },
      supply: { openCircuitVolts: 460, sourceOhms: 80, drawnMilliamps: 5 },
    })
    const { reservoirVolts, screenNodeVolts, supplyMilliamps, sides } = circuit
    const screens = sockets[0].screenMilliamps.value + sockets[1].screenMilliamps.value
    expect(reservoirVolts).toBeCloseTo(460 - 0.08 * supplyMilliamps, 1)
    expect(sides.A.plateVolts).toBeCloseTo(reservoirVolts - 0.041 * sides.A.plateMilliamps, 0)
    expect(sides.B.plateVolts).toBeCloseTo(reservoirVolts - 0.044 * sides.B.plateMilliamps, 0)
    expect(supplyMilliamps).toBeCloseTo(sides.A.plateMilliamps + sides.B.plateMilliamps + screens + 15, 0)
    expect(screenNodeVolts).toBeCloseTo(reservoirVolts - 0.47 * (screens + 10), 0)
  })

  test('10 % more mains draws more; a rectifier tube draws less; both are said', async () => {
    const plain = await answer('predict', single())
    const high = await answer('predict', single({ mainsPercent: 115 }))
    const soft = await answer(
      'predict',
      single({ supply: { openCircuitVolts: 263.7, sourceOhms: 0, rectifier: '5Y3GT' } }),
    )
    const current = (one: typeof plain) => one.sockets[0].plateMilliamps.value
    expect(current(high)).toBeGreaterThan(current(plain))
    expect(current(soft)).toBeLessThan(current(plain))
    expect(soft.circuit.rectifierDropVolts).toBeGreaterThan(20)
    expect(high.cautions.map((one: { code: string }) => one.code)).toContain('heaters-off-nominal')
  })

  test('the window is that of the bias: 80 to 100 % on a cathode resistor, 60 to 70 % grid-supplied push-pull', async () => {
    const held = await answer('predict', single({ service: 'push-pull-class-ab' }))
    const fixed = await answer('predict', gridSupplied(-20, { service: 'push-pull-class-ab' }))
    expect(held.sockets[0].verdict.windowPercent).toEqual({ low: 80, high: 100 })
    expect(fixed.sockets[0].verdict.windowPercent).toEqual({ low: 60, high: 70 })
  })

  test('a primary tap and a screen supply of its own are taken', async () => {
    const tapped = await answer('predict', single({ screenFeed: { kind: 'primary-tap', tapPercent: 40 } }))
    expect(tapped.circuit.screenNodeVolts).toBeNull()
    const own = { kind: 'own-supply', openCircuitVolts: 200, sourceOhms: 0 }
    const low = await answer('predict', single({ screenFeed: own }))
    expect(low.circuit.screenNodeVolts).toBe(200)
    expect(low.sockets[0].plateMilliamps.value).toBeLessThan(tapped.sockets[0].plateMilliamps.value)
  })

  test('a strapped screen is put out as the plate’s: one current, more than the plate alone had', async () => {
    const [strapped, own] = await Promise.all(
      [{ kind: 'triode-strapped' }, { kind: 'dropper', ohms: 0 }].map(async (screenFeed) => {
        const { sockets } = await answer('predict', single({ screenFeed }))
        return sockets[0]
      }),
    )
    expect(strapped).toMatchObject({ screenMilliamps: null, screenWatts: null, screenToCathodeVolts: null })
    expect(own.screenMilliamps.value).toBeGreaterThan(0)
    expect(strapped.plateMilliamps.value).toBeGreaterThan(own.plateMilliamps.value)
  })
})

describe('refused', () => {
  const refused = async (given: unknown) => (await faults('predict', given)).map(({ code, path }) => [code, path])
  const voltages = (tube: object, point: object) => ({ given: 'voltages', tube, at: point })

  test('a tube or point that cannot be predicted, with its place', async () => {
    expect(await refused(voltages({ type: '6V6' }, { plateToCathodeVolts: 250, gridToCathodeVolts: -12 }))).toEqual([
      ['screen-volts-missing', 'at.screenToCathodeVolts'],
    ])
    expect(await refused(voltages({ type: '5Y3GT' }, at(250, 250, -12)))).toEqual([['no-curves', 'tube.type']])
    expect(await refused(voltages({ type: '6V6', section: 'second' }, at(250, 250, -12)))).toEqual([
      ['no-curves', 'tube.type'],
    ])
    const far = { ...at(250, 250, -12.5), plateMilliamps: { value: 900, standard: 1 } }
    expect(await refused(voltages({ type: '6V6', records: [far] }, at(250, 250, -12)))).toEqual([
      ['unlike-the-type', 'tube.records'],
    ])
    const off = { ...at(250, 250, -200), plateMilliamps: { value: 10, standard: 1 } }
    expect(await refused(voltages({ type: '6V6', records: [off] }, at(250, 250, -12)))).toEqual([
      ['test-point-cut-off', 'tube.records'],
    ])
  })

  test('parts that are not there, names used twice, a supply that is overdrawn', async () => {
    expect(await refused(single({ biasResistors: [] }))).toEqual([['unknown-part', 'sockets[0].biasResistor']])
    expect(await refused(gridSupplied(-14, { gridSupplies: [] }))).toEqual([['unknown-part', 'sockets[0].gridSupply']])
    const twice = [
      { id: 'Rk', ohms: 170 },
      { id: 'Rk', ohms: 180 },
    ]
    expect(await refused(single({ biasResistors: twice }))).toEqual([['name-used-twice', 'biasResistors[1].id']])
    const overdrawn = { openCircuitVolts: 263.7, sourceOhms: 1000, drawnMilliamps: 500 }
    expect(await refused(single({ supply: overdrawn }))).toEqual([['supply-collapsed', 'supply.drawnMilliamps']])
    const noRectifier = { openCircuitVolts: 263.7, sourceOhms: 0, rectifier: '6L6' }
    expect(await refused(single({ supply: noRectifier }))).toEqual([['no-curves', 'supply.rectifier']])
  })
})
