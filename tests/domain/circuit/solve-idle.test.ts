import { describe, expect, test } from 'vitest'
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import { WORST_IMBALANCE, worstImbalance } from '@/lib/domain/circuit/solver/conservation'
import { placeNodes } from '@/lib/domain/circuit/solver/node-voltages'
import { solveCurrents } from '@/lib/domain/circuit/solver/solve-currents'
import { layWires, newWiring } from '@/lib/domain/circuit/solver/wiring'
import { pentodeCurrents, triodeCurrents } from '@/lib/domain/model/plate-curves'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'
import { given, refused, solved, tubeOf } from './solved'
import { beam, cathodeBiased, gridSupplied, powerTriode, softRectifier, stiffRectifier, tubeIn } from './stage-fixture'

const stiff = { openCircuit: volts(400), sourceResistance: ohms(0), rectifier: null, drawn: amps(0) }
const onReservoir = { kind: 'dropper', resistance: ohms(0), drawn: amps(0) } as const
const bare = { screenResistance: ohms(0), senseResistance: ohms(0) }
const noPrimary = { a: ohms(0), b: ohms(0) }

describe('a circuit without resistances', () => {
  test('leaves the tube at its supplies, so it passes what its curves say at 400/400/−48 V', () => {
    const stage = gridSupplied({
      tubes: [tubeIn('V1', bare)],
      halfPrimary: noPrimary,
      screenFeed: onReservoir,
      supply: stiff,
    })
    const curves = pentodeCurrents(beam, 400, 400, -48)
    const [tube] = solved(stage).tubes
    expect(tube?.plateToCathode).toBe(400)
    expect(tube?.plateCurrent).toBeCloseTo(curves.plate, 14)
    expect(tube?.screenCurrent).toBeCloseTo(curves.screen, 14)
    expect(tube?.transconductance).toBeCloseTo(curves.plateByGrid, 14)
  })

  test('with the tap at the plate the screen follows the plate: triode-strapped through its resistor', () => {
    const stage = gridSupplied({
      tubes: [tubeIn('V1', { senseResistance: ohms(0), screenResistance: ohms(100) })],
      screenFeed: { kind: 'primary-tap', tap: ratio(1) },
      supply: stiff,
    })
    const { tubes, screenNode } = solved(stage)
    const [tube] = tubes
    expect(screenNode).toBeNull()
    expect((tube?.plate ?? 0) - (tube?.screen ?? 0)).toBeCloseTo(100 * (tube?.screenCurrent ?? 0), 11)
    expect(400 - (tube?.plate ?? 0)).toBeCloseTo(41 * (tube?.cathodeCurrent ?? 0), 11)
  })

  test('a triode passes what its curves say and has no screen current', () => {
    const tubes = [tubeIn('V1', { ...bare, tube: powerTriode })]
    const stage = gridSupplied({ tubes, halfPrimary: noPrimary, screenFeed: onReservoir, supply: stiff })
    const [tube] = solved(stage).tubes
    expect(tube?.plateCurrent).toBeCloseTo(triodeCurrents(powerTriode, 400, -48).plate, 14)
    expect(tube?.screenCurrent).toBe(0)
  })
})

describe('Ohm’s law along the way', () => {
  const { tubes, reservoir, screenNode, supplyCurrent, sides } = solved(gridSupplied())
  const plates = tubes.reduce((sum, tube) => sum + tube.plateCurrent, 0)
  const screens = tubes.reduce((sum, tube) => sum + tube.screenCurrent, 0)

  test('465 V less 80 Ω times all the current is the reservoir', () => {
    expect(supplyCurrent).toBeCloseTo(plates + screens + 0.015, 12)
    expect(reservoir).toBeCloseTo(465 - 80 * supplyCurrent, 10)
  })

  test('1 kΩ carries the screens and the 15 mA that the rest of the amp draws', () => {
    expect(reservoir - (screenNode ?? 0)).toBeCloseTo(1000 * (screens + 0.015), 10)
  })

  test('each half primary carries its own two plates', () => {
    const [v1, v2] = [tubeOf({ tubes } as never, 'V1'), tubeOf({ tubes } as never, 'V2')]
    expect(sides.a?.current).toBeCloseTo(v1.plateCurrent + v2.plateCurrent, 14)
    expect(reservoir - v1.plate).toBeCloseTo(41 * (v1.plateCurrent + v2.plateCurrent), 10)
  })

  test('a 5Y3GT-like rectifier, 0.269 mA/V^1.5, drops (I/k)^(2/3)', () => {
    const { supplyCurrent: current, rectifierDrop, biasResistors } = solved(cathodeBiased())
    expect(rectifierDrop).toBeCloseTo((current / 0.000269) ** (2 / 3), 9)
    expect(biasResistors[0]?.voltage).toBeCloseTo(250 * (biasResistors[0]?.current ?? 0), 11)
  })

  test('1.5 µA of reverse grid current in 220 kΩ lifts the grid 0.33 V, and the tube passes more', () => {
    const leaky = tubeIn('V1', { reverseGridCurrent: amps(1.5e-6) })
    const { tubes: pair } = solved(gridSupplied({ tubes: [leaky, tubeIn('V2')] }))
    expect((pair[0]?.grid ?? 0) - (pair[1]?.grid ?? 0)).toBeCloseTo(0.33, 12)
    expect(pair[0]?.plateCurrent).toBeGreaterThan(pair[1]?.plateCurrent ?? 1)
  })

  test('sense resistors, a shared resistor and grid volts add up in a mixed stage', () => {
    const mixed = { biasResistor: 'Rk', senseResistance: ohms(10) }
    const stage = gridSupplied({
      tubes: [tubeIn('V1', mixed), tubeIn('V2', { ...mixed, side: 'b' }), tubeIn('V3', { side: 'b' })],
      biasResistors: [{ id: 'Rk', resistance: ohms(47) }],
      gridSupplies: [{ id: 'bias', voltage: volts(-40), range: null }],
    })
    const solution = solved(stage)
    const [v1, v2, v3] = ['V1', 'V2', 'V3'].map((socket) => tubeOf(solution, socket))
    const shared = 47 * ((v1?.cathodeCurrent ?? 0) + (v2?.cathodeCurrent ?? 0))
    expect(v1?.cathode).toBeCloseTo(shared + 10 * (v1?.cathodeCurrent ?? 0), 11)
    expect(v3?.cathode).toBeCloseTo(1 * (v3?.cathodeCurrent ?? 0), 11)
    expect(v1?.gridToCathode).toBeCloseTo(-40 - (v1?.cathode ?? 0), 11)
  })
})

describe('changes that a bench knows', () => {
  test('10 % more mains lifts every supply by 10 %, the grid supply too', () => {
    const unloaded = gridSupplied({ gridSupplies: [{ id: 'bias', voltage: volts(-300), range: null }] })
    const high = solved({ ...unloaded, mainsFactor: ratio(1.1) })
    expect(high.tubes[0]?.grid).toBeCloseTo(-330, 10)
    expect(high.reservoir).toBeCloseTo(1.1 * 465 - 80 * 0.015, 6)
    expect(high.cautions).toEqual([])
    expect(solved({ ...unloaded, mainsFactor: ratio(1.2) }).cautions[0]?.code).toBe('heaters-off-nominal')
  })

  test('a stiffer rectifier raises the reservoir: 0.269 against 3.21 mA/V^1.5', () => {
    const supply = cathodeBiased().supply
    const soft = solved(cathodeBiased({ supply: { ...supply, rectifier: softRectifier } }))
    const hard = solved(cathodeBiased({ supply: { ...supply, rectifier: stiffRectifier } }))
    const silicon = solved(cathodeBiased({ supply: { ...supply, rectifier: null } }))
    expect(soft.reservoir).toBeLessThan(hard.reservoir)
    expect(hard.reservoir).toBeLessThan(silicon.reservoir)
  })
})

describe('what is refused', () => {
  const code = (change: Parameters<typeof gridSupplied>[0]) => refused(solveIdle(gridSupplied(change))).code

  test('no tube, and nine', () => {
    expect(code({ tubes: [] })).toBe('tube-count')
    expect(code({ tubes: Array.from({ length: 9 }, (_, place) => tubeIn(`V${place}`)) })).toBe('tube-count')
  })

  test('a part that is not there, a name used twice', () => {
    expect(code({ tubes: [tubeIn('V1', { gridSupply: 'none' })] })).toBe('unknown-part')
    expect(code({ tubes: [tubeIn('V1', { biasResistor: 'none' })] })).toBe('unknown-part')
    expect(code({ tubes: [tubeIn('V1'), tubeIn('V1')] })).toBe('name-used-twice')
  })

  test('a negative resistance and NaN, by part, quantity, value and unit', () => {
    expect(refused(solveIdle(gridSupplied({ halfPrimary: { a: ohms(-1), b: ohms(1) } })))).toMatchObject({
      code: 'value-out-of-range',
      quantity: 'half primary a',
      value: -1,
      unit: 'Ω',
    })
    const nan = Number.NaN as never
    expect(code({ tubes: [tubeIn('V1', { tube: { ...beam, kp: nan } })] })).toBe('value-out-of-range')
    expect(code({ gridSupplies: [{ id: 'bias', voltage: nan, range: null }] })).toBe('value-out-of-range')
    expect(code({ supply: { ...stiff, openCircuit: nan } })).toBe('value-out-of-range')
    expect(code({ mainsFactor: nan })).toBe('value-out-of-range')
  })

  test('6 A drawn from a supply of 465 V and 80 Ω: it has collapsed, to −16.2 V', () => {
    const supply = { ...gridSupplied().supply, drawn: amps(6) }
    const fault = refused(solveIdle(gridSupplied({ supply })))
    expect(fault).toMatchObject({ code: 'supply-collapsed', node: 'reservoir' })
    // The 15 mA of the screen node come on top.
    expect(fault.code === 'supply-collapsed' && fault.volts).toBeCloseTo(465 - 80 * 6.015, 10)
  })
})

describe('conservation', () => {
  test('is to the last bits at the solution, and seen to be broken one part in ten million off it', () => {
    const wiring = newWiring()
    layWires(wiring, cathodeBiased())
    expect(solveCurrents(wiring, false).converged).toBe(true)
    expect(worstImbalance(wiring)).toBeLessThan(1e-12)
    for (let k = 0; k < 4; k++) {
      const moved = wiring.currents.slice()
      moved[k] = (moved[k] ?? 0) * (1 + 1e-7)
      placeNodes(wiring, moved, 1)
      expect(worstImbalance(wiring)).toBeGreaterThan(WORST_IMBALANCE)
    }
  })
})

test('the start does not change the answer: from another stage’s solution the same to 1e-10', () => {
  const far = solved(gridSupplied({ gridSupplies: [{ id: 'bias', voltage: volts(-20), range: null }] }))
  const fresh = solved(gridSupplied())
  const warm = given(solveIdle(gridSupplied(), far))
  fresh.tubes.forEach((tube, place) => {
    expect((warm.tubes[place]?.plateCurrent ?? 0) / tube.plateCurrent).toBeCloseTo(1, 10)
  })
})

test('a positive grid and a plate below its knee are said, not hidden', () => {
  const stage = gridSupplied({
    tubes: [tubeIn('V1')],
    gridSupplies: [{ id: 'bias', voltage: volts(2), range: null }],
    halfPrimary: { a: ohms(5000), b: ohms(0) },
  })
  expect(solved(stage).cautions.map(({ code }) => code)).toEqual(['grid-not-negative', 'plate-below-knee'])
})
