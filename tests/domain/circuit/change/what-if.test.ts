/**
 * Changes foretold by a circuit that was built from readings, held against the stage the
 * readings came from, changed in the same way and solved.
 */
import { describe, expect, test } from 'vitest'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { Change } from '@/lib/domain/circuit/change/change'
import { restatedAtMains } from '@/lib/domain/circuit/change/restated'
import { standardEffects } from '@/lib/domain/circuit/change/standard-effects'
import { type WhatIf, whatIf } from '@/lib/domain/circuit/change/what-if'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import { individualTube } from '@/lib/domain/model/individual-tube'
import { rectifierModel, typeModel } from '@/lib/domain/model/type-model'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { amps, ohms, ratio, siemens, volts } from '@/lib/domain/units'
import { circuitOf, curvesOf, facts, fullFacts, loadedGrid, MARKED, setOf, sheetOf, trueStage } from '../amp/read-amp'
import { given, refused, solved } from '../solved'

/** Grids read, every fact noted: nothing is left to assume. */
function wellRead(stage: OutputStage): AmpCircuit {
  const set = setOf(stage, solved(stage), { gridVolts: loadedGrid(-44 * stage.mainsFactor) })
  return circuitOf(stage, { set })
}

const foretold = (circuit: AmpCircuit, change: Change): WhatIf => given(whatIf(circuit, change))

const changedAt = (found: WhatIf, position: string) => {
  const one = found.sockets.find((each) => each.position === position)?.changed
  if (!one) throw new Error(`No ${position} after the change`)
  return one
}

function expectAs(found: WhatIf, truth: OutputStage): void {
  const solution = solved(truth)
  for (const idle of solution.tubes) {
    const then = changedAt(found, idle.socket)
    expect(then.plateAmps.value / idle.plateCurrent).toBeCloseTo(1, 8)
    expect(then.plateVolts / idle.plate).toBeCloseTo(1, 9)
    expect(then.plateWatts.value / idle.plateDissipation).toBeCloseTo(1, 8)
  }
  expect(found.reservoirVolts.changed / solution.reservoir).toBeCloseTo(1, 9)
}

describe('with everything read and noted, the change itself is met', () => {
  const stage = trueStage({ mainsFactor: ratio(238 / MARKED) })
  const circuit = wellRead(stage)

  test('no change is as read', () => {
    const found = foretold(circuit, {})
    expectAs(found, stage)
    expect(found.sockets[0]?.changed).toEqual(found.sockets[0]?.now)
  })

  test('grid at −40 V, marked mains', () => {
    const gridSupplies = [{ id: 'bias', voltage: volts(-40), range: null }]
    expectAs(foretold(circuit, { gridVolts: -40, wallVolts: MARKED }), {
      ...stage,
      gridSupplies,
      mainsFactor: ratio(1),
    })
  })

  test('253 V at the wall', () => {
    expectAs(foretold(circuit, { wallVolts: 253 }), { ...stage, mainsFactor: ratio(253 / MARKED) })
  })

  test('V4 pulled', () => {
    const found = foretold(circuit, { pulled: 'V4' })
    expectAs(found, { ...stage, tubes: stage.tubes.filter(({ socket }) => socket !== 'V4') })
    expect(found.sockets.find(({ position }) => position === 'V4')?.changed).toBeNull()
    expect(found.cautions.map(({ code }) => code)).toContain('pulled-for-a-look')
  })

  test('average EL34 in both sockets, 245 V, grid −36 V together', () => {
    const tubes = stage.tubes.map((one) => ({ ...one, tube: curvesOf('EL34') }))
    const gridSupplies = [{ id: 'bias', voltage: volts(-36), range: null }]
    const change: Change = {
      tubes: { all: { kind: 'type', designation: 'EL34' } },
      gridVolts: -36,
      mainsFactor: 245 / MARKED,
    }
    const found = foretold(circuit, change)
    expectAs(found, { ...stage, tubes, gridSupplies, mainsFactor: ratio(245 / MARKED) })
    expect(changedAt(found, 'V4').plateRatingWatts).toBe(25)
  })

  test('a stocked tube by its record in V5 alone: that tube’s own curves there, V4 as it is', () => {
    const type = given(typeModel('6L6'))
    const record = {
      point: { plateToCathode: volts(250), screenToCathode: volts(250), gridToCathode: volts(-14) },
      plateCurrent: { value: amps(0.083), standard: amps(0.0005) },
      transconductance: { value: siemens(0.0064), standard: siemens(0.0001) },
      screenCurrent: null,
    }
    const tube = given(individualTube(type, [record]))
    const variant = findTubeType('6L6GC', HANDBOOK_ONLY)
    if (!variant) throw new Error('No 6L6GC')
    const found = foretold(circuit, {
      tubes: { bySocket: { V5: { kind: 'individual', variant, tube, mark: 'T-0147' } } },
    })
    const tubes = stage.tubes.map((one) => (one.socket === 'V5' ? { ...one, tube: tube.parameters } : one))
    expectAs(found, { ...stage, tubes })
    expect(changedAt(found, 'V5')).toMatchObject({ mark: 'T-0147', isFitted: false })
    expect(changedAt(found, 'V4').isFitted).toBe(true)
  })
})

describe('a tube rectifier swapped', () => {
  const diode = (type: string) => given(rectifierModel(type))
  const supply = { openCircuit: volts(480), sourceResistance: ohms(60), rectifier: diode('5U4G'), drawn: amps(0) }
  const stage = trueStage({ supply })
  const set = setOf(stage, solved(stage), { gridVolts: loadedGrid(-44) })
  const noted = { ...fullFacts(stage), rectifierType: '5U4G', openSupplyVolts: 480, reservoirMicrofarads: 47 }
  const circuit = circuitOf(stage, { facts: noted, set })

  test('5Y3GT for 5U4G is the stage with a 5Y3GT', () => {
    const found = foretold(circuit, { rectifier: '5Y3GT' })
    const truth = solved({ ...stage, supply: { ...supply, rectifier: diode('5Y3GT') } })
    expect(found.reservoirVolts.changed / truth.reservoir).toBeCloseTo(1, 4)
    expect(found.reservoirVolts.now / solved(stage).reservoir).toBeCloseTo(1, 9)
  })

  /** Order of supply volts as the trade knows it (common practice): silicon, 5AR4, 5V4, 5U4, 5Y3. */
  test('from silicon over 5AR4, 5V4 and 5U4 to 5Y3 the supply falls', () => {
    const reservoirs = ['', '5AR4', '5V4G', '5U4G', '5Y3GT'].map(
      (rectifier) => foretold(circuit, { rectifier }).reservoirVolts.changed,
    )
    expect([...reservoirs].sort((a, b) => b - a)).toEqual(reservoirs)
    expect(new Set(reservoirs).size).toBe(reservoirs.length)
  })

  test('47 µF is too much for a 5Y3GT, whose sheet prints 20 µF; silicon gives volts before the tubes draw', () => {
    const soft = foretold(circuit, { rectifier: '5Y3GT' }).cautions
    expect(soft).toContainEqual({ code: 'reservoir-too-large', designation: '5Y3GT', microfarads: 47, limit: 20 })
    const hard = foretold(circuit, { rectifier: '' }).cautions.find(({ code }) => code === 'volts-before-warm-up')
    expect(hard).toMatchObject({ openVolts: expect.closeTo(480, 0) })
    expect(foretold(circuit, { rectifier: '5AR4' }).cautions.map(({ code }) => code)).not.toContain(
      'volts-before-warm-up',
    )
  })

  test('the standard effects offer every rectifier of that base and silicon, and no output tube', () => {
    const offered = standardEffects(circuit).flatMap((one) => (one.kind === 'rectifier' ? [one.designation] : []))
    expect(offered).toEqual(expect.arrayContaining(['5Y3GT', '5V4G', '']))
    expect(offered).not.toContain('5U4G')
    expect(offered).not.toContain('6X4')
  })

  test('without a tube rectifier none is offered', () => {
    const kinds = standardEffects(wellRead(trueStage())).map(({ kind }) => kind)
    expect(kinds).toEqual(['mains-high', 'mains-low', 'pulled', 'pulled'])
  })
})

describe('restated at the marked mains', () => {
  test('a round read at 245 V is the round at 230 V, computed', () => {
    const stage = trueStage({ mainsFactor: ratio(245 / MARKED) })
    const found = given(restatedAtMains(wellRead(stage)))
    const truth = solved({ ...stage, mainsFactor: ratio(1) })
    expect(found).toMatchObject({ statedAtWallVolts: MARKED, computed: true })
    expect(found.readAtWallVolts).toBeCloseTo(245, 9)
    for (const [i, { restated, asRead }] of found.sockets.entries()) {
      expect(restated.plateAmps.value / (truth.tubes[i]?.plateCurrent ?? 0)).toBeCloseTo(1, 8)
      expect(restated.plateAmps.value).toBeLessThan(asRead.plateAmps.value)
      expect(restated.plateAmps.low).toBeLessThan(restated.plateAmps.value)
    }
    expect(found.assumptions.map(({ code }) => code)).toContain('all-follows-mains')
  })
})

describe('laws', () => {
  const circuit = circuitOf(trueStage(), { facts: { ...facts(), openSupplyVolts: 470 } })
  const currents = (change: Change) =>
    foretold(circuit, change).sockets.map(({ changed }) => changed?.cathodeAmps.value ?? 0)

  test('more negative grid volts never raise a current', () => {
    let before = currents({ gridVolts: -20 })
    for (let gridVolts = -22; gridVolts >= -70; gridVolts -= 2) {
      const next = currents({ gridVolts })
      for (const [i, value] of next.entries()) expect(value).toBeLessThan(before[i] ?? 0)
      before = next
    }
  })

  test('higher mains never lowers one', () => {
    let before = currents({ mainsFactor: 0.8 })
    for (let mainsFactor = 0.82; mainsFactor <= 1.2; mainsFactor += 0.02) {
      const next = currents({ mainsFactor })
      for (const [i, value] of next.entries()) expect(value).toBeGreaterThan(before[i] ?? 0)
      before = next
    }
  })

  test('a pulled tube raises the others’ plate volts through the source resistance; a stiff supply hardly stirs', () => {
    const rise = (one: AmpCircuit) => {
      const found = foretold(one, { pulled: 'V4' }).sockets.find(({ position }) => position === 'V5')
      return (found?.changed?.plateVolts ?? 0) - (found?.now.plateVolts ?? 0)
    }
    expect(rise(circuit)).toBeGreaterThan(1)
    const stiff = circuitOf(trueStage(), { facts: { ...facts(), screenFeed: 'own-supply', screenDropperOhms: 0 } })
    expect(Math.abs(rise(stiff))).toBeLessThan(0.1)
  })
})

describe('bands', () => {
  test('tubes that were read keep the band of their reading, new ones have that of their type and of the grid volts', () => {
    const circuit = circuitOf(trueStage())
    const width = ({ low, high, value }: { low: number; high: number; value: number }) => (high - low) / value
    const read = width(changedAt(foretold(circuit, {}), 'V4').plateAmps)
    const same = width(changedAt(foretold(circuit, { mainsFactor: 1.02 }), 'V4').plateAmps)
    const fresh = width(
      changedAt(foretold(circuit, { tubes: { all: { kind: 'type', designation: '6L6GC' } } }), 'V4').plateAmps,
    )
    expect(read).toBeLessThan(0.06)
    expect(same).toBeLessThan(0.07)
    expect(fresh).toBeGreaterThan(0.3)
  })

  test('grid volts that were read narrow the band of a new tube', () => {
    const stage = trueStage()
    const change: Change = { tubes: { all: { kind: 'type', designation: 'EL34' } } }
    const width = (one: AmpCircuit) => {
      const { low, high, value } = changedAt(foretold(one, change), 'V4').plateAmps
      return (high - low) / value
    }
    expect(width(wellRead(stage))).toBeLessThan(width(circuitOf(stage)))
  })
})

describe('screens strapped to the plates', () => {
  const stage = trueStage({ screenFeed: { kind: 'triode-strapped' } })
  const circuit = circuitOf(stage, { facts: facts({ screenFeed: 'triode-strapped', sourceOhms: 110 }) })

  test('both currents and powers count as the plate’s, and the screen is not given', () => {
    const truth = solved(stage).tubes[0]
    const found = changedAt(foretold(circuit, {}), 'V4')
    expect(found.screenAmps).toBeNull()
    expect(found.screenWatts).toBeNull()
    expect(found.plateAmps.value).toBeCloseTo(truth?.cathodeCurrent ?? 0, 9)
    expect(found.plateWatts.value).toBeCloseTo((truth?.plateDissipation ?? 0) + (truth?.screenDissipation ?? 0), 2)
  })
})

describe('cautions of another tube', () => {
  const circuit = wellRead(trueStage())
  const codes = (designation: string) =>
    foretold(circuit, { tubes: { all: { kind: 'type', designation } } }).cautions.map(({ code }) => code)

  test('an EL34 in a socket for a 6L6GC: pin 1 and 1.5 A of heater', () => {
    expect(codes('EL34')).toEqual(expect.arrayContaining(['other-base', 'heater-takes-more']))
  })

  test('an EL84 has another base, a 6L6GC none of this', () => {
    expect(codes('EL84')).toContain('other-base')
    expect(codes('6L6GC')).not.toContain('other-base')
    expect(codes('6L6GC')).not.toContain('heater-takes-more')
  })

  test('a 6V6GT at 450 V is told its printed limits', () => {
    expect(codes('6V6GT')).toContain('plate-volts-over')
  })

  test('every answer says that it is computed', () => {
    expect(codes('6L6GC')).toContain('computed-not-read')
  })
})

describe('a cathode resistor', () => {
  const cathodeStage = (resistance: number) =>
    trueStage(
      { biasResistors: [{ id: 'Rk', resistance: ohms(resistance) }], gridSupplies: [] },
      { gridSupply: null, biasResistor: 'Rk', tube: curvesOf('6L6') },
    )
  // Each has 1 Ω of its own that is read, and both share the rest.
  const stage = cathodeStage(300)
  const circuit = circuitOf(stage)

  test('of 390 Ω for 300 Ω is the stage with 390 Ω', () => {
    const found = foretold(circuit, { cathodeOhms: 390 })
    const truth = solved(cathodeStage(390)).tubes[0]
    expect(changedAt(found, 'V4').plateAmps.value / (truth?.plateCurrent ?? 0)).toBeCloseTo(1, 6)
    expect(found.biasResistors[0]?.changed?.volts).toBeGreaterThan(found.biasResistors[0]?.now?.volts ?? 0)
  })

  test('is held to its own window, never to that of grid-supplied bias', () => {
    const { window } = changedAt(foretold(circuit, {}), 'V4').verdict
    expect(window).toEqual({ low: 0.8, high: 1 })
    expect(changedAt(foretold(wellRead(trueStage()), {}), 'V4').verdict.window).toEqual({ low: 0.6, high: 0.7 })
  })

  test('must be there, and above 0 Ω', () => {
    expect(refused(whatIf(circuit, { cathodeOhms: 0 })).code).toBe('cathode-ohms-not-positive')
    expect(refused(whatIf(wellRead(trueStage()), { cathodeOhms: 300 })).code).toBe('no-cathode-resistor')
  })
})

describe('refused', () => {
  const circuit = wellRead(trueStage())
  const code = (change: Change) => refused(whatIf(circuit, change)).code

  test('what cannot be, by name', () => {
    expect(code({ tubes: { all: { kind: 'type', designation: '9Z9' } } })).toBe('type-not-known')
    expect(code({ tubes: { all: { kind: 'type', designation: '12AX7' } } })).toBe('not-an-output-tube')
    expect(code({ tubes: { bySocket: { V9: { kind: 'type', designation: '6L6GC' } } } })).toBe('unknown-socket')
    expect(code({ pulled: 'V9' })).toBe('unknown-socket')
    expect(code({ gridVolts: 5 })).toBe('grid-volts-not-negative')
    expect(code({ wallVolts: 20 })).toBe('mains-out-of-range')
    expect(code({ rectifier: '6L6GC' })).toBe('rectifier-not-known')
  })

  test('grid volts of a stage that has none', () => {
    const stage = trueStage(
      { biasResistors: [{ id: 'Rk', resistance: ohms(300) }], gridSupplies: [] },
      { gridSupply: null, biasResistor: 'Rk', senseResistance: ohms(0) },
    )
    const cathode = circuitOf(stage, { sheet: sheetOf(stage) })
    expect(refused(whatIf(cathode, { gridVolts: -40 })).code).toBe('no-grid-supply')
  })
})
