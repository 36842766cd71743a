/**
 * Every node voltage and current that a solution states, held against ngspice.
 *
 * ngspice starts from voltages a few per cent off ours (without a hint it steps its way
 * up from nothing, which takes it 100 to 800 ms a circuit instead of ten): near enough to find
 * the same point, too far to take ours for its own.
 *
 * The difference is relative to the quantity, but to no less than 1 mV or 1 µA: below
 * those ngspice's own absolute tolerances begin to show.
 */
import type { IdleSolution } from '@/lib/domain/circuit/idle-solution'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import type { NgspiceEngine, OperatingVectors } from './ngspice-engine'
import { ngspiceNetlist, type StartingVoltages } from './ngspice-netlist'

const SMALLEST_VOLTS = 1e-3
const SMALLEST_AMPS = 1e-6

/** Node voltages by the netlist's names. */
export function nodesOf(stage: OutputStage, solution: IdleSolution): Record<string, number> {
  const nodes: Record<string, number> = { res: solution.reservoir }
  if (solution.screenNode !== null) nodes.snode = solution.screenNode
  if (stage.supply.rectifier) nodes.rect = solution.reservoir + solution.rectifierDrop
  for (const side of ['a', 'b'] as const) {
    const idle = solution.sides[side]
    if (idle) nodes[`plate${side}`] = idle.plate
  }
  for (const { id, voltage } of solution.biasResistors) nodes[`bias${id.toLowerCase()}`] = voltage
  solution.tubes.forEach(({ plate, screen, cathode, grid }, place) => {
    nodes[`p${place + 1}`] = plate
    nodes[`s${place + 1}`] = screen
    nodes[`k${place + 1}`] = cathode
    nodes[`g${place + 1}`] = grid
  })
  return nodes
}

/** Currents by the name of the 0 V source that reads them. */
function leadsOf(solution: IdleSolution): Record<string, number> {
  const leads: Record<string, number> = { vmeter: solution.supplyCurrent }
  solution.tubes.forEach(({ plateCurrent, screenCurrent }, place) => {
    leads[`vpa${place + 1}`] = plateCurrent
    leads[`vsa${place + 1}`] = screenCurrent
  })
  return leads
}

function startingVoltages(nodes: Record<string, number>): StartingVoltages {
  const shifted = Object.entries(nodes).map(([node, volts], place) => [node, volts * (1 + 0.03 * Math.sin(1 + place))])
  return Object.fromEntries(shifted)
}

export type Agreement = {
  /** Largest relative difference of any quantity. */
  readonly worst: number
  readonly quantity: string
  readonly compared: number
}

function compare(
  ours: Record<string, number>,
  theirs: OperatingVectors,
  sort: 'v' | 'i',
  smallest: number,
): Agreement[] {
  return Object.entries(ours).map(([name, value]) => {
    const quantity = `${sort}(${name})`
    const other = theirs.get(quantity)
    if (other === undefined) throw new Error(`ngspice gave no ${quantity}, only ${[...theirs.keys()].join(' ')}`)
    const worst = Math.abs(value - other) / Math.max(Math.abs(value), Math.abs(other), smallest)
    return { worst, quantity: `${quantity}: ${value} against ${other}`, compared: 1 }
  })
}

export async function agreementWithNgspice(
  engine: NgspiceEngine,
  stage: OutputStage,
  solution: IdleSolution,
  floorVolts?: number,
): Promise<Agreement> {
  const nodes = nodesOf(stage, solution)
  const theirs = await engine.operatingPoint(ngspiceNetlist(stage, startingVoltages(nodes), { floorVolts }))
  const all = [
    ...compare(nodes, theirs, 'v', SMALLEST_VOLTS),
    ...compare(leadsOf(solution), theirs, 'i', SMALLEST_AMPS),
  ]
  const first = all.reduce((worse, each) => (each.worst > worse.worst || Number.isNaN(each.worst) ? each : worse))
  return { ...first, compared: all.length }
}
