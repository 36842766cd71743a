import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import { amps, ohms, volts } from '@/lib/domain/units'
import { usualStage } from './random-stage'
import { solved } from './solved'
import { gridSupplied, tubeIn } from './stage-fixture'

const seed = fc.integer({ min: 1, max: 1_000_000 })
const close = (one: number, two: number, share: number) =>
  Math.abs(one - two) <= share * Math.max(Math.abs(one), Math.abs(two), 1e-9)

/** The same stage with every tube like its first and one grid supply for all. */
function alike(stage: OutputStage, gridVolts: number): OutputStage {
  const [first] = stage.tubes
  return {
    ...stage,
    tubes: stage.tubes.map((tube) => ({ ...tube, tube: first?.tube ?? tube.tube, gridSupply: 'bias' })),
    gridSupplies: [{ id: 'bias', voltage: volts(gridVolts), range: null }],
  }
}

const total = (stage: OutputStage) => solved(stage).tubes.reduce((sum, tube) => sum + tube.cathodeCurrent, 0)

describe('laws of the operating point', () => {
  test('a more negative grid never raises the current', () => {
    const grid = fc.double({ min: -90, max: -1, noNaN: true })
    fc.assert(
      fc.property(seed, grid, grid, (which, one, two) => {
        const [cold, hot] = [
          total(alike(usualStage(which), Math.min(one, two))),
          total(alike(usualStage(which), Math.max(one, two))),
        ]
        // Equal grids may differ in the last bits.
        expect(hot).toBeGreaterThanOrEqual(cold * (1 - 1e-11))
      }),
      { numRuns: 300 },
    )
  })

  test('a larger shared bias resistor never raises the current', () => {
    const resistance = fc.double({ min: 1, max: 5000, noNaN: true })
    fc.assert(
      fc.property(seed, resistance, resistance, (which, one, two) => {
        const hung = (value: number): OutputStage => {
          const stage = alike(usualStage(which), -5)
          return {
            ...stage,
            tubes: stage.tubes.map((tube) => ({ ...tube, biasResistor: 'R1' })),
            biasResistors: [{ id: 'R1', resistance: ohms(value) }],
          }
        }
        const [small, large] = [total(hung(Math.min(one, two))), total(hung(Math.max(one, two)))]
        expect(small).toBeGreaterThanOrEqual(large * (1 - 1e-11))
      }),
      { numRuns: 300 },
    )
  })

  test('tubes and currents times s, resistances over s: the same voltages, s times the current', () => {
    const factor = fc.double({ min: 0.1, max: 10, noNaN: true })
    fc.assert(
      fc.property(seed, factor, (which, s) => {
        const stage = usualStage(which)
        const [one, other] = [solved(stage), solved(scaled(stage, s))]
        expect(close(one.reservoir, other.reservoir, 1e-10)).toBe(true)
        one.tubes.forEach((tube, place) => {
          const twin = other.tubes[place]
          expect(close(tube.plate, twin?.plate ?? 0, 1e-10)).toBe(true)
          expect(close(tube.cathode, twin?.cathode ?? 0, 1e-9)).toBe(true)
          expect(close(s * tube.plateCurrent, twin?.plateCurrent ?? 0, 1e-9)).toBe(true)
          expect(close(s * tube.screenCurrent, twin?.screenCurrent ?? 0, 1e-9)).toBe(true)
        })
      }),
      { numRuns: 300 },
    )
  })

  test('the order of the tubes does not matter', () => {
    fc.assert(
      fc.property(seed, (which) => {
        const stage = usualStage(which)
        const forth = solved(stage).tubes
        const back = solved({ ...stage, tubes: [...stage.tubes].reverse() }).tubes.toReversed()
        forth.forEach((tube, place) => {
          expect(close(tube.plateCurrent, back[place]?.plateCurrent ?? 0, 1e-9)).toBe(true)
        })
      }),
      { numRuns: 200 },
    )
  })

  test('currents balance at every node to 1e-9, worked from the voltages shown', () => {
    fc.assert(
      fc.property(seed, (which) => {
        const stage = usualStage(which)
        const { tubes, reservoir, rectifierDrop, supplyCurrent, biasResistors, worstImbalance } = solved(stage)
        expect(worstImbalance).toBeLessThanOrEqual(1e-9)
        const { openCircuit, sourceResistance } = stage.supply
        const drop = openCircuit * stage.mainsFactor - rectifierDrop - reservoir
        expect(close(drop / sourceResistance, supplyCurrent, 1e-9)).toBe(true)
        for (const { id, voltage } of biasResistors) {
          const resistance = stage.biasResistors.find((one) => one.id === id)?.resistance ?? 0
          const hung = tubes.filter((_, place) => stage.tubes[place]?.biasResistor === id)
          const current = hung.reduce((sum, tube) => sum + tube.cathodeCurrent, 0)
          expect(close(voltage / resistance, current, 1e-9)).toBe(true)
        }
      }),
      { numRuns: 300 },
    )
  })
})

describe('limits', () => {
  test('a resistance going to zero goes to the circuit without it', () => {
    const at = (value: number) =>
      solved(gridSupplied({ tubes: [tubeIn('V1', { screenResistance: ohms(value), senseResistance: ohms(value) })] }))
    const differences = [1, 0.01, 0.0001].map((value) =>
      Math.abs((at(value).tubes[0]?.plateCurrent ?? 0) - (at(0).tubes[0]?.plateCurrent ?? 0)),
    )
    expect(differences[1]).toBeLessThan((differences[0] ?? 0) / 50)
    expect(differences[2]).toBeLessThan((differences[1] ?? 0) / 50)
  })

  test('an immense bias resistor leaves next to no current, and the cathode near cutoff', () => {
    const stage = gridSupplied({
      tubes: [tubeIn('V1', { gridSupply: null, biasResistor: 'Rk' })],
      biasResistors: [{ id: 'Rk', resistance: ohms(1e9) }],
    })
    const [tube] = solved(stage).tubes
    expect(tube?.cathodeCurrent).toBeLessThan(1e-6)
    // Cutoff at these volts: Vg2/µ + Va/µa, about 53 V; the soft tail holds on beyond it.
    expect(tube?.cathode).toBeGreaterThan(53)
    expect(tube?.cathode).toBeLessThan(465)
  })

  test('two equal tubes on one side share equally', () => {
    const [one, two] = solved(gridSupplied({ tubes: [tubeIn('V1'), tubeIn('V2')] })).tubes
    expect(one?.plateCurrent).toBe(two?.plateCurrent)
  })
})

function scaled(stage: OutputStage, s: number): OutputStage {
  const feed = stage.screenFeed
  return {
    ...stage,
    tubes: stage.tubes.map((tube) => ({
      ...tube,
      tube:
        tube.tube.kind === 'pentode' ? { ...tube.tube, p: tube.tube.p * s } : { ...tube.tube, kg: tube.tube.kg / s },
      gridLeak: ohms(tube.gridLeak / s),
      reverseGridCurrent: amps(tube.reverseGridCurrent * s),
      screenResistance: ohms(tube.screenResistance / s),
      senseResistance: ohms(tube.senseResistance / s),
    })),
    biasResistors: stage.biasResistors.map(({ id, resistance }) => ({ id, resistance: ohms(resistance / s) })),
    halfPrimary: { a: ohms(stage.halfPrimary.a / s), b: ohms(stage.halfPrimary.b / s) },
    screenFeed:
      feed.kind === 'primary-tap' || feed.kind === 'triode-strapped'
        ? feed
        : feed.kind === 'dropper'
          ? { ...feed, resistance: ohms(feed.resistance / s), drawn: amps(feed.drawn * s) }
          : { ...feed, sourceResistance: ohms(feed.sourceResistance / s), drawn: amps(feed.drawn * s) },
    supply: {
      ...stage.supply,
      sourceResistance: ohms(stage.supply.sourceResistance / s),
      rectifier: stage.supply.rectifier && { kind: 'diode', k: stage.supply.rectifier.k * s },
      drawn: amps(stage.supply.drawn * s),
    },
  }
}
