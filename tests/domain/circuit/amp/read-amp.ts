/**
 * An invented amplifier whose truth is known: a stage is solved, and what a meter without
 * error would show of it becomes the readings. Circuits built from these can be held
 * against the stage they came from.
 */
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { plainSocket, type Socket } from '@/lib/domain/amp/socket'
import { NO_SUPPLY_FACTS, type SupplyFacts } from '@/lib/domain/amp/supply-facts'
import type { ReadingSet, SocketEntry } from '@/lib/domain/bench/reading-set'
import { type AmpCircuit, ampCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { CircuitGiven } from '@/lib/domain/circuit/amp/circuit-given'
import type { IdleSolution, TubeIdle } from '@/lib/domain/circuit/idle-solution'
import type { OutputStage, OutputTube } from '@/lib/domain/circuit/output-stage'
import { scaledTube } from '@/lib/domain/model/tube-scales'
import { typeModel } from '@/lib/domain/model/type-model'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'
import { BENCH_SHOP } from '@/tests/support/bench-shop'
import { given, solved } from '../solved'

export const MARKED = 230

export const curvesOf = (typeId: string) => given(typeModel(typeId)).parameters

/** Two 6L6GC that differ, grid-supplied, on one adjustment; 5U4G; some sag. */
export function trueStage(over: Partial<OutputStage> = {}, tube: Partial<OutputTube> = {}): OutputStage {
  const average = curvesOf('6L6')
  const common = {
    gridSupply: 'bias',
    gridLeak: ohms(220_000),
    reverseGridCurrent: amps(0),
    screenResistance: ohms(470),
    senseResistance: ohms(1),
    biasResistor: null,
    ...tube,
  }
  return {
    tubes: [
      { socket: 'V4', side: 'a', tube: scaledTube(average, [0.08, 0, 0]), ...common },
      { socket: 'V5', side: 'b', tube: scaledTube(average, [-0.06, 0, 0]), ...common },
    ],
    gridSupplies: [{ id: 'bias', voltage: volts(-44), range: null }],
    biasResistors: [],
    halfPrimary: { a: ohms(40), b: ohms(44) },
    screenFeed: { kind: 'dropper', resistance: ohms(500), drawn: amps(0.008) },
    supply: { openCircuit: volts(470), sourceResistance: ohms(110), rectifier: null, drawn: amps(0.004) },
    mainsFactor: ratio(1),
    ...over,
  }
}

const resistorOf = ({ biasResistors }: OutputStage, id: string | null): number | null =>
  biasResistors.find((one) => one.id === id)?.resistance ?? null

export function sheetOf(stage: OutputStage, types: readonly string[] = []): AmpSheet {
  const sharing = (id: string | null) => stage.tubes.filter(({ biasResistor }) => biasResistor === id).length
  const sockets = stage.tubes.map(
    (tube, place): Socket => ({
      ...plainSocket(tube.socket, 'output', types[place] ?? '6L6GC'),
      id: tube.socket,
      place,
      biasKind: tube.gridSupply === null ? 'cathode-resistor' : 'grid-supplied',
      side: tube.side === 'a' ? 'A' : 'B',
      cathodeOhms: resistorOf(stage, tube.biasResistor),
      cathodeSharedBy: tube.biasResistor === null ? 1 : sharing(tube.biasResistor),
      senseOhms: tube.senseResistance === 0 ? null : tube.senseResistance,
      screenOhms: tube.screenResistance,
      halfPrimaryOhms: stage.halfPrimary[tube.side],
      halfSharedBy: stage.tubes.filter(({ side }) => side === tube.side).length,
    }),
  )
  const amp = {
    id: 'amp',
    customerId: 'customer',
    make: 'Corvane',
    model: 'Tilt 60',
    serial: '0611',
    mainsVolts: MARKED,
    protectionClass: 'I' as const,
    fuse: 'T 2 A',
    outputClass: stage.tubes.length > 1 ? ('push-pull' as const) : ('single-ended' as const),
    plateLoadOhms: null,
    note: '',
    version: 1,
  }
  return { amp, sockets }
}

/** What a meter shows at one socket; `method` picks which drop is among it. */
function entryOf(idle: TubeIdle, tube: OutputTube, method: SocketEntry['method']): SocketEntry {
  const sense = tube.senseResistance * idle.cathodeCurrent
  return {
    socketId: idle.socket,
    method,
    plateVolts: idle.plate,
    cathodeVolts: idle.cathode,
    screenVolts: idle.screen,
    gridVolts: null,
    senseDropVolts: method === 'cathode-sense' ? sense : null,
    halfDropVolts: null,
    screenDropVolts: tube.screenResistance * idle.screenCurrent,
  }
}

export function setOf(stage: OutputStage, solution: IdleSolution, over: Partial<SocketEntry> = {}): ReadingSet {
  const method = stage.tubes.every(({ senseResistance }) => senseResistance > 0) ? 'cathode-sense' : 'cathode-bias'
  return {
    id: 'set',
    jobId: 'job',
    phase: 'before',
    takenAt: new Date('2026-03-01T10:00:00Z'),
    takenBy: 'Somebody',
    instrumentId: 'meter',
    instrumentName: 'Bench meter',
    calibratedOn: null,
    meter: { id: 'Bench meter', percentOfReading: 0.5, counts: 2, displayCounts: 6000, inputResistance: ohms(1e7) },
    wallVolts: MARKED * stage.mainsFactor,
    warmupMinutes: 15,
    signalState: 'no signal',
    resistorTolerancePercent: 1,
    copperWarmingCelsius: 0,
    note: '',
    version: 1,
    entries: solution.tubes.map((idle, i) => ({ ...entryOf(idle, stage.tubes[i] as OutputTube, method), ...over })),
  }
}

export const facts = (over: Partial<SupplyFacts> = {}): SupplyFacts => ({ ...NO_SUPPLY_FACTS, ...over })

/** All that the true stage could tell of its supply. */
export const fullFacts = (stage: OutputStage): SupplyFacts =>
  facts({
    openSupplyVolts: stage.supply.openCircuit,
    sourceOhms: stage.supply.sourceResistance,
    rectifierType: '',
    screenFeed: 'own-supply',
    screenDropperOhms: stage.screenFeed.kind === 'dropper' ? stage.screenFeed.resistance : null,
    gridLeakOhms: 220_000,
  })

export function circuitGiven(stage: OutputStage, over: Partial<CircuitGiven> = {}): CircuitGiven {
  const solution = solved(stage)
  return {
    sheet: sheetOf(stage),
    group: 'output',
    facts: fullFacts(stage),
    set: setOf(stage, solution),
    shop: BENCH_SHOP,
    records: {},
    ...over,
  }
}

export const circuitOf = (stage: OutputStage, over: Partial<CircuitGiven> = {}): AmpCircuit =>
  given(ampCircuit(circuitGiven(stage, over)))

/** What a meter of 10 MΩ shows at a grid behind 220 kΩ. */
export const loadedGrid = (gridVolts: number): number => gridVolts / (1 + 0.22 / 10)

export const codesOf = ({ assumptions }: { readonly assumptions: readonly { readonly code: string }[] }): string[] =>
  assumptions.map(({ code }) => code)
