/**
 * The stage as numbers, ready for the solver.
 *
 * All wires are linear, so every node voltage follows from the tube currents alone:
 *   V = V₀ − R·x,   x = (Ia, Ig2) of each tube in turn,
 * with the supply's own drop E − Rs·I − (I/k)^(2/3) as the only curved part. The
 * unknowns are therefore the 2n currents and not the nodes; a resistance of zero needs
 * no special case, and Newton's steps are those of the nodal equations (the method is
 * blind to a linear change of unknowns).
 *
 * `plateBy`, `screenBy`, `cathodeBy` hold R: how far a voltage to the cathode, or the
 * cathode itself, moves per ampere of each unknown, without the supply's part.
 */

import { MOST_TUBES, type OutputStage, type OutputTube } from '@/lib/domain/circuit/output-stage'
import { type AmplifyingParameters, CURVE_NUMBERS, type DiodeParameters } from '@/lib/domain/model/plate-curves'
import { at } from './dense-lu'

export const MOST_UNKNOWNS = 2 * MOST_TUBES
/** A. Nothing on a bench can tell it from zero. */
export const NO_CURRENT = 1e-18
const SQUARE = MOST_UNKNOWNS * MOST_UNKNOWNS
const DEAD: AmplifyingParameters = { kind: 'pentode', p: 1e-9, mu: 1, muA: 1, r: 0, kp: 1 }

const perTube = () => new Float64Array(MOST_TUBES)
const perUnknown = () => new Float64Array(MOST_UNKNOWNS)

export function newWiring() {
  return {
    count: 0,
    parameters: new Array<AmplifyingParameters>(MOST_TUBES).fill(DEAD),
    side: new Uint8Array(MOST_TUBES),
    /** Place of the bias resistor; MOST_TUBES stands for chassis. */
    group: new Uint8Array(MOST_TUBES),
    groupCount: 0,
    groupResistance: new Float64Array(MOST_TUBES + 1),
    grid: perTube(),
    screenResistance: perTube(),
    senseResistance: perTube(),
    half: new Float64Array(2),
    supplyVolts: 0,
    supplyResistance: 0,
    rectifier: null as DiodeParameters | null,
    drawn: 0,
    feed: 'dropper' as Exclude<OutputStage['screenFeed']['kind'], 'triode-strapped'>,
    feedVolts: 0,
    feedResistance: 0,
    feedDrawn: 0,
    tap: 0,
    plateBy: new Float64Array(SQUARE),
    screenBy: new Float64Array(SQUARE),
    cathodeBy: new Float64Array(SQUARE),
    // What follows is written anew for every set of currents.
    reservoir: 0,
    supplyCurrent: 0,
    rectifierDrop: 0,
    /** Of Rs and rectifier together, dV/dI. */
    supplySlope: 0,
    screenNode: 0,
    tapNode: new Float64Array(2),
    plateNode: new Float64Array(2),
    groupNode: new Float64Array(MOST_TUBES + 1),
    screen: perTube(),
    cathode: perTube(),
    curves: new Float64Array(MOST_TUBES * CURVE_NUMBERS),
    currents: perUnknown(),
    misfit: perUnknown(),
  }
}

export type Wiring = ReturnType<typeof newWiring>

function placeOf(list: readonly { readonly id: string }[], id: string | null): number {
  if (id === null) return MOST_TUBES
  for (let place = 0; place < list.length; place++) if (list[place]?.id === id) return place
  throw new Error(`No part is called "${id}"`)
}

function layTube(wiring: Wiring, stage: OutputStage, tube: OutputTube, i: number): void {
  const { gridSupply, gridLeak, reverseGridCurrent } = tube
  const supplied = gridSupply === null ? 0 : (stage.gridSupplies[placeOf(stage.gridSupplies, gridSupply)]?.voltage ?? 0)
  wiring.parameters[i] = tube.tube
  wiring.side[i] = tube.side === 'a' ? 0 : 1
  wiring.grid[i] = supplied * stage.mainsFactor + gridLeak * reverseGridCurrent
  wiring.screenResistance[i] = tube.screenResistance
  wiring.senseResistance[i] = tube.senseResistance
  wiring.group[i] = layGroup(wiring, stage, tube.biasResistor)
}

/** Only resistors that a tube uses get a place, so there are never more than tubes. */
function layGroup(wiring: Wiring, stage: OutputStage, id: string | null): number {
  if (id === null) return MOST_TUBES
  for (let earlier = 0; earlier < wiring.count; earlier++) {
    if (stage.tubes[earlier]?.biasResistor === id) return wiring.group[earlier] as number
  }
  const place = wiring.groupCount++
  wiring.groupResistance[place] = stage.biasResistors[placeOf(stage.biasResistors, id)]?.resistance ?? 0
  return place
}

/** Strapped to the plate is a tap at the plate's end of the winding. */
function layTap(wiring: Wiring, tap: number): void {
  wiring.feed = 'primary-tap'
  wiring.feedVolts = 0
  wiring.feedDrawn = 0
  wiring.feedResistance = 0
  wiring.tap = tap
}

function layFeed(wiring: Wiring, { screenFeed, mainsFactor }: OutputStage): void {
  if (screenFeed.kind === 'triode-strapped' || screenFeed.kind === 'primary-tap') {
    layTap(wiring, screenFeed.kind === 'triode-strapped' ? 1 : screenFeed.tap)
    return
  }
  wiring.feed = screenFeed.kind
  wiring.feedVolts = screenFeed.kind === 'own-supply' ? screenFeed.openCircuit * mainsFactor : 0
  wiring.feedDrawn = screenFeed.drawn
  wiring.feedResistance = screenFeed.kind === 'dropper' ? screenFeed.resistance : screenFeed.sourceResistance
  wiring.tap = 0
}

/** How the voltages of tube i answer to the plate and the screen current of tube j. */
function layPair(wiring: Wiring, i: number, j: number): void {
  const half = wiring.side[i] === wiring.side[j] ? at(wiring.half, at8(wiring.side, i)) : 0
  const group = at8(wiring.group, i)
  const shared = group === at8(wiring.group, j) ? at(wiring.groupResistance, group) : 0
  const cathode = shared + (i === j ? at(wiring.senseResistance, i) : 0)
  const ownScreen = i === j ? at(wiring.screenResistance, i) : 0
  const tapped = wiring.feed === 'primary-tap' ? wiring.tap * half : 0
  const place = i * MOST_UNKNOWNS + 2 * j
  wiring.plateBy[place] = half + cathode
  wiring.plateBy[place + 1] = tapped + cathode
  wiring.screenBy[place] = tapped + cathode
  wiring.screenBy[place + 1] = tapped + wiring.feedResistance + ownScreen + cathode
  wiring.cathodeBy[place] = cathode
  wiring.cathodeBy[place + 1] = cathode
}

const at8 = (numbers: Uint8Array, place: number): number => numbers[place] as number

/** Only for a stage that `stageFault` let pass. */
export function layWires(wiring: Wiring, stage: OutputStage): void {
  const { supply, halfPrimary, mainsFactor } = stage
  wiring.supplyVolts = supply.openCircuit * mainsFactor
  wiring.supplyResistance = supply.sourceResistance
  wiring.rectifier = supply.rectifier
  wiring.drawn = supply.drawn
  wiring.half[0] = halfPrimary.a
  wiring.half[1] = halfPrimary.b
  wiring.groupCount = 0
  layFeed(wiring, stage)
  for (let i = 0; i < stage.tubes.length; i++) {
    wiring.count = i
    layTube(wiring, stage, stage.tubes[i] as OutputTube, i)
  }
  wiring.count = stage.tubes.length
  for (let i = 0; i < wiring.count; i++) for (let j = 0; j < wiring.count; j++) layPair(wiring, i, j)
}
