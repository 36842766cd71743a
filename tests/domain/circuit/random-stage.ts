/**
 * Random stages from a seed: `usual` ones, such as are built, and `absurd` ones, every
 * value drawn on a logarithmic scale over several decades, zero resistances and dead supplies included.
 */
import type { BiasResistor, GridSupply, OutputStage, OutputTube, ScreenFeed } from '@/lib/domain/circuit/output-stage'
import type { AmplifyingParameters } from '@/lib/domain/model/plate-curves'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'

/** Mulberry32, public domain: 32 bits of state, uniform on [0, 1). */
export function dice(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

type Dice = () => number

const between = (roll: Dice, low: number, high: number) => low + (high - low) * roll()
const decades = (roll: Dice, low: number, high: number) => low * (high / low) ** roll()
const orZero = (roll: Dice, chance: number, value: number) => (roll() < chance ? 0 : value)
const pick = <T>(roll: Dice, list: readonly T[]): T => list[Math.floor(roll() * list.length)] as T

/** Ranges of one sort of stage. */
type Kind = {
  readonly mostTubes: number
  readonly tube: (roll: Dice) => AmplifyingParameters
  readonly volts: (roll: Dice) => number
  readonly gridVolts: (roll: Dice) => number
  readonly sourceOhms: (roll: Dice) => number
  readonly halfOhms: (roll: Dice) => number
  readonly dropperOhms: (roll: Dice) => number
  readonly screenOhms: (roll: Dice) => number
  readonly senseOhms: (roll: Dice) => number
  readonly biasOhms: (roll: Dice) => number
  readonly drawn: (roll: Dice) => number
  readonly reverse: (roll: Dice) => number
  readonly rectifierK: (roll: Dice) => number
  readonly mains: (roll: Dice) => number
}

const usual: Kind = {
  mostTubes: 6,
  tube: (roll) =>
    roll() < 0.85
      ? {
          kind: 'pentode',
          p: decades(roll, 0.0004, 0.0018),
          mu: between(roll, 7, 20),
          muA: between(roll, 80, 500),
          r: between(roll, 0.05, 0.2),
          kp: between(roll, 20, 60),
        }
      : {
          kind: 'triode',
          mu: between(roll, 3.5, 10),
          x: between(roll, 1.3, 1.5),
          kg: decades(roll, 800, 3000),
          kp: between(roll, 30, 120),
          kvb: decades(roll, 50, 2000),
        },
  volts: (roll) => between(roll, 250, 550),
  gridVolts: (roll) => -between(roll, 8, 45),
  sourceOhms: (roll) => between(roll, 20, 200),
  halfOhms: (roll) => between(roll, 15, 250),
  dropperOhms: (roll) => orZero(roll, 0.2, between(roll, 100, 4700)),
  screenOhms: (roll) => orZero(roll, 0.2, between(roll, 100, 2200)),
  senseOhms: (roll) => orZero(roll, 0.3, pick(roll, [1, 10])),
  biasOhms: (roll) => between(roll, 100, 800),
  drawn: (roll) => orZero(roll, 0.2, between(roll, 0.002, 0.03)),
  reverse: (roll) => orZero(roll, 0.5, decades(roll, 1e-7, 5e-6)),
  rectifierK: (roll) => decades(roll, 0.0002, 0.0035),
  mains: (roll) => between(roll, 0.9, 1.1),
}

const absurd: Kind = {
  mostTubes: 8,
  tube: (roll) =>
    roll() < 0.75
      ? {
          kind: 'pentode',
          p: decades(roll, 1e-7, 0.1),
          mu: decades(roll, 0.5, 300),
          muA: decades(roll, 1, 30_000),
          r: orZero(roll, 0.05, decades(roll, 1e-3, 3)),
          kp: decades(roll, 1, 1000),
        }
      : {
          kind: 'triode',
          mu: decades(roll, 0.5, 300),
          x: between(roll, 1.1, 2),
          kg: decades(roll, 3, 1e6),
          kp: decades(roll, 1, 1000),
          kvb: decades(roll, 0.1, 1e6),
        },
  volts: (roll) => orZero(roll, 0.02, decades(roll, 1, 20_000)),
  gridVolts: (roll) => (roll() < 0.1 ? 1 : -1) * decades(roll, 0.01, 2000),
  sourceOhms: (roll) => orZero(roll, 0.1, decades(roll, 0.01, 1e6)),
  halfOhms: (roll) => orZero(roll, 0.1, decades(roll, 0.01, 1e6)),
  dropperOhms: (roll) => orZero(roll, 0.2, decades(roll, 0.01, 1e7)),
  screenOhms: (roll) => orZero(roll, 0.2, decades(roll, 0.01, 1e7)),
  senseOhms: (roll) => orZero(roll, 0.3, decades(roll, 0.01, 1e6)),
  biasOhms: (roll) => orZero(roll, 0.1, decades(roll, 0.01, 1e7)),
  drawn: (roll) => orZero(roll, 0.5, decades(roll, 1e-9, 1e-3)),
  reverse: (roll) => orZero(roll, 0.3, decades(roll, 1e-9, 1e-3)),
  rectifierK: (roll) => decades(roll, 1e-6, 0.1),
  mains: (roll) => decades(roll, 0.3, 3),
}

function screenFeed(roll: Dice, kind: Kind): ScreenFeed {
  const which = roll()
  if (which < 0.6) return { kind: 'dropper', resistance: ohms(kind.dropperOhms(roll)), drawn: amps(kind.drawn(roll)) }
  if (which < 0.85) return { kind: 'primary-tap', tap: ratio(pick(roll, [0, 0.2, 0.43, 1])) }
  return {
    kind: 'own-supply',
    openCircuit: volts(kind.volts(roll)),
    sourceResistance: ohms(kind.dropperOhms(roll)),
    drawn: amps(kind.drawn(roll)),
  }
}

const SUPPLIES = ['C1', 'C2']
const RESISTORS = ['R1', 'R2', 'R3']

function outputTube(roll: Dice, kind: Kind, socket: string, bias: string): OutputTube {
  return {
    socket,
    tube: kind.tube(roll),
    side: roll() < 0.5 ? 'a' : 'b',
    gridSupply: bias === 'cathode-resistor' ? null : pick(roll, SUPPLIES),
    gridLeak: ohms(between(roll, 1e5, 1e6)),
    reverseGridCurrent: amps(kind.reverse(roll)),
    screenResistance: ohms(kind.screenOhms(roll)),
    senseResistance: ohms(kind.senseOhms(roll)),
    biasResistor: bias === 'grid-supplied' ? null : pick(roll, RESISTORS),
  }
}

function randomStage(seed: number, kind: Kind): OutputStage {
  const roll = dice(seed)
  const bias = pick(roll, ['grid-supplied', 'cathode-resistor', 'mixed'])
  const count = 1 + Math.floor(roll() * kind.mostTubes)
  const supplies: GridSupply[] = SUPPLIES.map((id) => ({ id, voltage: volts(kind.gridVolts(roll)), range: null }))
  const resistors: BiasResistor[] = RESISTORS.map((id) => ({ id, resistance: ohms(kind.biasOhms(roll)) }))
  return {
    tubes: Array.from({ length: count }, (_, place) => outputTube(roll, kind, `V${place + 1}`, bias)),
    gridSupplies: supplies,
    biasResistors: resistors,
    halfPrimary: { a: ohms(kind.halfOhms(roll)), b: ohms(kind.halfOhms(roll)) },
    screenFeed: screenFeed(roll, kind),
    supply: {
      openCircuit: volts(kind.volts(roll)),
      sourceResistance: ohms(kind.sourceOhms(roll)),
      rectifier: roll() < 0.5 ? { kind: 'diode', k: kind.rectifierK(roll) } : null,
      drawn: amps(kind.drawn(roll)),
    },
    mainsFactor: ratio(kind.mains(roll)),
  }
}

export const usualStage = (seed: number): OutputStage => randomStage(seed, usual)
export const absurdStage = (seed: number): OutputStage => randomStage(seed, absurd)
