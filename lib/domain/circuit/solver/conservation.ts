/**
 * Kirchhoff's first law, node by node, from the node voltages alone.
 *
 * The current in a resistor is what Ohm's law gives between its two nodes, the current
 * of a tube what its equations give between its electrodes; their sum at each node must
 * vanish. Where a resistance is zero the two nodes are one and what flows on is taken.
 *
 * Returned is the worst imbalance of any node as a share of the largest current there.
 * Voltages are doubles: what four last bits of them are worth is not counted, of its own
 * ends through a resistor, of the highest supply through a tube's slopes. At 450 V and
 * 50 Ω that is 8e-15 A.
 */

import { MOST_TUBES } from '@/lib/domain/circuit/output-stage'
import { CURVE_NUMBERS } from '@/lib/domain/model/plate-curves'
import { at } from './dense-lu'
import { NO_CURRENT, type Wiring } from './wiring'

/** Inclusive. Above it a solution is not handed out. */
export const WORST_IMBALANCE = 1e-9

const LAST_BITS = 4 * Number.EPSILON

/** The node being summed: one at a time, so that nothing is allocated. */
const node = { total: 0, largest: 0, rounding: 0, worst: 0 }

function begin(): void {
  node.total = 0
  node.largest = 0
  node.rounding = 0
}

function enters(current: number): void {
  node.total += current
  if (Math.abs(current) > node.largest) node.largest = Math.abs(current)
}

function entersThrough(resistance: number, from: number, to: number, onward: number): number {
  const current = resistance > 0 ? (from - to) / resistance : onward
  if (resistance > 0) node.rounding += (LAST_BITS * Math.max(Math.abs(from), Math.abs(to))) / resistance
  enters(current)
  return current
}

function end(): void {
  const excess = Math.max(0, Math.abs(node.total) - node.rounding - NO_CURRENT)
  const share = excess === 0 ? 0 : excess / node.largest
  if (!(share <= node.worst)) node.worst = share
}

const plateOf = (wiring: Wiring, i: number) => at(wiring.curves, i * CURVE_NUMBERS)
const screenOf = (wiring: Wiring, i: number) => at(wiring.curves, i * CURVE_NUMBERS + 4)

/** What the last bits of its voltages are worth in a tube's current. */
const roundingOf = new Float64Array(MOST_TUBES)

function setRoundings(wiring: Wiring): void {
  const volts = LAST_BITS * highestVolts(wiring)
  for (let i = 0; i < wiring.count; i++) {
    let slopes = 0
    for (let k = 1; k < CURVE_NUMBERS; k++) if (k !== 4) slopes += Math.abs(at(wiring.curves, i * CURVE_NUMBERS + k))
    roundingOf[i] = volts * slopes
  }
}

function addSlopes(i: number): void {
  node.rounding += at(roundingOf, i)
}

/** Every voltage is a supply less the drops on the way. */
function highestVolts(wiring: Wiring): number {
  let highest = Math.max(Math.abs(wiring.supplyVolts), Math.abs(wiring.feedVolts))
  for (let i = 0; i < wiring.count; i++) highest = Math.max(highest, Math.abs(at(wiring.grid, i)))
  return highest
}

/** Screens and cathodes of the tubes: what Ohm's law brings in, the tube takes. */
function checkElectrodes(wiring: Wiring): void {
  for (let i = 0; i < wiring.count; i++) {
    const screenFrom = wiring.feed === 'primary-tap' ? at(wiring.tapNode, wiring.side[i] as number) : wiring.screenNode
    begin()
    addSlopes(i)
    entersThrough(at(wiring.screenResistance, i), screenFrom, at(wiring.screen, i), screenOf(wiring, i))
    enters(-screenOf(wiring, i))
    end()
    begin()
    addSlopes(i)
    enters(plateOf(wiring, i) + screenOf(wiring, i))
    const group = at(wiring.groupNode, wiring.group[i] as number)
    entersThrough(
      at(wiring.senseResistance, i),
      group,
      at(wiring.cathode, i),
      -plateOf(wiring, i) - screenOf(wiring, i),
    )
    end()
  }
}

function checkGroups(wiring: Wiring): void {
  for (let group = 0; group < wiring.groupCount; group++) {
    begin()
    let onward = 0
    for (let i = 0; i < wiring.count; i++) {
      if (wiring.group[i] !== group) continue
      addSlopes(i)
      const current = plateOf(wiring, i) + screenOf(wiring, i)
      onward += current
      enters(current)
    }
    entersThrough(at(wiring.groupResistance, group), 0, at(wiring.groupNode, group), -onward)
    end()
  }
}

/** Plate and tap of one side. Returns what the side takes from the reservoir. */
function checkSide(wiring: Wiring, side: number): number {
  let plates = 0
  let screens = 0
  begin()
  for (let i = 0; i < wiring.count; i++) {
    if (wiring.side[i] !== side) continue
    addSlopes(i)
    plates += plateOf(wiring, i)
    if (wiring.feed === 'primary-tap') screens += screenOf(wiring, i)
    enters(-plateOf(wiring, i))
  }
  const half = at(wiring.half, side)
  const lower = (1 - wiring.tap) * half
  const upper = wiring.tap * half
  const tap = at(wiring.tapNode, side)
  const plate = at(wiring.plateNode, side)
  entersThrough(lower, tap, plate, plates)
  end()
  const rounding = node.rounding
  begin()
  node.rounding = rounding
  enters(lower > 0 ? (plate - tap) / lower : -plates)
  enters(-screens)
  const taken = entersThrough(upper, wiring.reservoir, tap, plates + screens)
  end()
  return taken
}

/** The screen node. Returns what it takes from the reservoir. */
function checkScreenNode(wiring: Wiring): number {
  if (wiring.feed === 'primary-tap') return 0
  let onward = wiring.feedDrawn
  begin()
  enters(-wiring.feedDrawn)
  for (let i = 0; i < wiring.count; i++) {
    onward += screenOf(wiring, i)
    enters(-screenOf(wiring, i))
    addSlopes(i)
  }
  const from = wiring.feed === 'own-supply' ? wiring.feedVolts : wiring.reservoir
  const taken = entersThrough(wiring.feedResistance, from, wiring.screenNode, onward)
  end()
  return wiring.feed === 'own-supply' ? 0 : taken
}

function checkReservoir(wiring: Wiring, taken: number, rounding: number): void {
  const { supplyCurrent, supplyVolts, supplyResistance, rectifierDrop, reservoir } = wiring
  begin()
  node.rounding = rounding
  entersThrough(supplyResistance, supplyVolts - rectifierDrop, reservoir, supplyCurrent)
  if (supplyResistance > 0) node.rounding += (LAST_BITS * supplyVolts) / supplyResistance
  enters(-taken)
  end()
}

/** Worst share of any node; 0 when all balance to the last bit. */
export function worstImbalance(wiring: Wiring): number {
  node.worst = 0
  setRoundings(wiring)
  checkElectrodes(wiring)
  checkGroups(wiring)
  const ofA = checkSide(wiring, 0)
  let rounding = node.rounding
  const ofB = checkSide(wiring, 1)
  rounding += node.rounding
  const ofScreens = checkScreenNode(wiring)
  rounding += node.rounding
  checkReservoir(wiring, wiring.drawn + ofA + ofB + ofScreens, rounding)
  return node.worst
}
