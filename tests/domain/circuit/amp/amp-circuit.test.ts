import { describe, expect, test } from 'vitest'
import { ampCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'
import { refused, solved } from '../solved'
import { circuitGiven, circuitOf, codesOf, curvesOf, facts, loadedGrid, setOf, sheetOf, trueStage } from './read-amp'

/** Largest difference of any current or node voltage, as a share. */
function apart(stage: OutputStage, over: Parameters<typeof circuitOf>[1] = {}): number {
  const truth = solved(stage)
  const { solution } = circuitOf(stage, over)
  const shares = truth.tubes.flatMap((tube, i) => {
    const found = solution.tubes[i]
    if (!found) return [Number.NaN]
    return (['plateCurrent', 'screenCurrent', 'plate', 'screen'] as const).map((key) =>
      Math.abs(found[key] / tube[key] - 1),
    )
  })
  return Math.max(...shares, Math.abs(solution.reservoir / truth.reservoir - 1))
}

const cathodeStage = (over: Partial<OutputStage> = {}): OutputStage =>
  trueStage(
    { biasResistors: [{ id: 'Rk', resistance: ohms(300) }], gridSupplies: [], ...over },
    { gridSupply: null, biasResistor: 'Rk', senseResistance: ohms(0) },
  )

describe('round trip: the circuit built from readings gives the readings', () => {
  test('grid-supplied, everything noted and every drop read: to 1e-9', () => {
    expect(apart(trueStage())).toBeLessThan(1e-9)
  })

  test('at 245 V where 230 V is marked', () => {
    expect(apart(trueStage({ mainsFactor: ratio(245 / 230) }))).toBeLessThan(1e-9)
  })

  test('nothing noted of the supply', () => {
    expect(apart(trueStage(), { facts: facts() })).toBeLessThan(1e-9)
  })

  test('screens on a tap and strapped', () => {
    const tapped = trueStage({ screenFeed: { kind: 'primary-tap', tap: ratio(0.43) } })
    const ultralinear = facts({ screenFeed: 'ultralinear-tap', ultralinearTapPercent: 43, sourceOhms: 110 })
    expect(apart(tapped, { facts: ultralinear })).toBeLessThan(1e-9)
    const strapped = trueStage({ screenFeed: { kind: 'triode-strapped' } })
    const circuit = circuitOf(strapped, { facts: facts({ screenFeed: 'triode-strapped', sourceOhms: 110 }) })
    const truth = solved(strapped)
    for (const [i, { cathodeCurrent }] of circuit.solution.tubes.entries()) {
      expect(cathodeCurrent / (truth.tubes[i]?.cathodeCurrent ?? 0)).toBeCloseTo(1, 9)
    }
  })

  test('a tube rectifier: its drop at the current read is part of the open-circuit volts', () => {
    const diode = { kind: 'diode' as const, k: 0.000771 }
    const stage = trueStage({
      supply: { openCircuit: volts(480), sourceResistance: ohms(60), rectifier: diode, drawn: amps(0) },
    })
    const noted = { ...facts({ rectifierType: '5U4G', sourceOhms: 60, screenDropperOhms: 500 }) }
    expect(apart(stage, { facts: noted })).toBeLessThan(1e-6)
    const { stage: found } = circuitOf(stage, { facts: noted })
    expect(found.supply.rectifier?.k).toBeCloseTo(0.000771, 5)
    expect(found.supply.openCircuit).toBeGreaterThan(475)
  })

  test('a shared cathode resistor, read as one drop for both: the sum is met, the split is equal', () => {
    const stage = cathodeStage()
    const truth = solved(stage)
    const { solution } = circuitOf(stage)
    const sum = (list: readonly { readonly cathodeCurrent: number }[]) =>
      list.reduce((total, { cathodeCurrent }) => total + cathodeCurrent, 0)
    expect(sum(solution.tubes) / sum(truth.tubes)).toBeCloseTo(1, 9)
    expect(solution.biasResistors[0]?.voltage).toBeCloseTo(truth.biasResistors[0]?.voltage ?? 0, 8)
    expect(solution.tubes[0]?.cathodeCurrent).toBeCloseTo(solution.tubes[1]?.cathodeCurrent ?? 0, 12)
  })
})

describe('what the readings fix is found again', () => {
  test('noted 470 V and 110 Ω: the rest of the amplifier draws 4 mA and 8 mA behind the dropper', () => {
    const { stage, assumptions } = circuitOf(trueStage())
    expect(stage.supply.drawn).toBeCloseTo(0.004, 9)
    expect(stage.screenFeed.kind === 'dropper' && stage.screenFeed.drawn).toBeCloseTo(0.008, 9)
    expect(stage.supply.openCircuit).toBeCloseTo(470, 9)
    expect(codesOf({ assumptions })).toContain('rest-from-sag')
  })

  test('open-circuit volts alone give the source resistance, a little high for the rest of the draw', () => {
    const circuit = circuitOf(trueStage(), { facts: { ...facts(), openSupplyVolts: 470, screenDropperOhms: 500 } })
    const said = circuit.assumptions.find(({ code }) => code === 'source-from-sag')
    expect(circuit.stage.supply.sourceResistance).toBeGreaterThan(110)
    expect(circuit.stage.supply.sourceResistance).toBeLessThan(125)
    expect(said).toEqual({ code: 'source-from-sag', ohms: circuit.stage.supply.sourceResistance })
  })

  test('neither: taken as stiff, and said', () => {
    const circuit = circuitOf(trueStage(), { facts: facts() })
    expect(circuit.stage.supply.sourceResistance).toBe(0)
    expect(codesOf(circuit)).toContain('supply-taken-stiff')
  })

  test('open-circuit volts below the volts read are put aside, and said', () => {
    const circuit = circuitOf(trueStage(), { facts: facts({ openSupplyVolts: 400 }) })
    expect(codesOf(circuit)).toContain('supply-facts-contradict')
  })

  test('grid volts read through 220 kΩ with 10 MΩ are corrected by 2.2 %, and the tubes come out as they are', () => {
    const stage = trueStage()
    const set = setOf(stage, solved(stage), { gridVolts: loadedGrid(-44) })
    const { stage: found, assumptions } = circuitOf(stage, { set })
    expect(found.gridSupplies[0]?.voltage).toBeCloseTo(-44, 9)
    const average = curvesOf('6L6')
    const [strong, weak] = found.tubes.map(({ tube }) => (tube.kind === 'pentode' ? tube.p : 0))
    const p = average.kind === 'pentode' ? average.p : 0
    expect(Math.log((strong ?? 0) / p)).toBeCloseTo(0.08, 6)
    expect(Math.log((weak ?? 0) / p)).toBeCloseTo(-0.06, 6)
    expect(assumptions).toContainEqual({ code: 'grid-loading-corrected', percent: expect.closeTo(2.2, 9) })
  })

  test('grid volts nobody read are implied by average tubes: −44 V lies in the band', () => {
    const circuit = circuitOf(trueStage())
    const said = circuit.assumptions.find((one) => one.code === 'grid-volts-implied')
    if (said?.code !== 'grid-volts-implied') throw new Error('not said')
    expect(said.sockets).toEqual(['V4', 'V5'])
    expect(Math.abs(said.volts + 44)).toBeLessThan(said.plusMinusVolts)
    expect(circuit.stage.gridSupplies[0]?.voltage).toBeCloseTo(said.volts, 12)
  })

  test('noted grid volts go before implied ones, read ones before noted', () => {
    const stage = trueStage()
    const noted = { ...circuitGiven(stage).facts, gridSupplyVolts: -43 }
    expect(circuitOf(stage, { facts: noted }).stage.gridSupplies[0]?.voltage).toBe(-43)
    const set = setOf(stage, solved(stage), { gridVolts: loadedGrid(-44) })
    expect(circuitOf(stage, { facts: noted, set }).stage.gridSupplies[0]?.voltage).toBeCloseTo(-44, 9)
  })

  test('a cathode resistor not on the sheet is the volts across it over the current read by a sense resistor', () => {
    const stage = trueStage(
      { biasResistors: [{ id: 'Rk', resistance: ohms(300) }], gridSupplies: [] },
      { gridSupply: null, biasResistor: 'Rk' },
    )
    const sheet = sheetOf(stage)
    const sockets = sheet.sockets.map((one) => ({ ...one, cathodeOhms: null }))
    const circuit = circuitOf(stage, { sheet: { ...sheet, sockets } })
    expect(circuit.stage.biasResistors[0]?.resistance).toBeGreaterThan(280)
    expect(codesOf(circuit)).toContain('cathode-resistor-from-readings')
  })
})

describe('said, never hidden', () => {
  test('a socket that was not read draws as the others do', () => {
    const stage = trueStage()
    const set = setOf(stage, solved(stage))
    const circuit = circuitOf(stage, { set: { ...set, entries: set.entries.slice(0, 1) } })
    expect(circuit.sockets.map(({ wasRead }) => wasRead)).toEqual([true, false])
    expect(circuit.assumptions).toContainEqual({ code: 'socket-not-read', sockets: ['V5'] })
    const [one, other] = circuit.solution.tubes
    expect(other?.plateCurrent).toBeCloseTo(one?.plateCurrent ?? 0, 9)
  })

  test('nothing of the screens read: each assumption has its name', () => {
    const stage = trueStage()
    const set = setOf(stage, solved(stage), { screenVolts: null, screenDropVolts: null })
    const sheet = sheetOf(stage)
    const sockets = sheet.sockets.map((one) => ({ ...one, screenOhms: null, halfPrimaryOhms: null }))
    expect(codesOf(circuitOf(stage, { facts: facts(), set, sheet: { ...sheet, sockets } })).sort()).toEqual([
      'current-is-estimate',
      'grid-volts-implied',
      'half-primary-not-known',
      'rectifier-taken-solid-state',
      'screen-feed-taken-own',
      'screen-resistor-not-known',
      'screen-volts-not-read',
      'supply-taken-stiff',
    ])
  })
})

describe('refused', () => {
  test('nothing read, a type nobody knows, no bias kind, a dead socket', () => {
    const stage = trueStage()
    const set = setOf(stage, solved(stage))
    const code = (over: Parameters<typeof circuitGiven>[1]) => refused(ampCircuit(circuitGiven(stage, over))).code
    expect(code({ set: { ...set, entries: [] } })).toBe('no-current-read')
    expect(code({ sheet: sheetOf(stage, ['6L6GC', '9Z9']) })).toBe('type-not-known')
    expect(code({ sheet: sheetOf(stage, ['6L6GC', '']) })).toBe('type-not-noted')
    const sheet = sheetOf(stage)
    const sockets = sheet.sockets.map((one) => ({ ...one, biasKind: '' as const }))
    expect(code({ sheet: { ...sheet, sockets } })).toBe('bias-kind-not-noted')
    expect(code({ set: setOf(stage, solved(stage), { senseDropVolts: 0, screenDropVolts: null }) })).toBe('socket-dead')
    expect(code({ group: 'none' })).toBe('no-output-socket')
  })

  test('a tube that at the grid volts read draws next to nothing of what its type would', () => {
    const stage = trueStage()
    const set = setOf(stage, solved(stage), { gridVolts: -5 })
    expect(refused(ampCircuit(circuitGiven(stage, { set })))).toMatchObject({
      code: 'socket-unlike-type',
      socket: 'V4',
    })
  })
})
