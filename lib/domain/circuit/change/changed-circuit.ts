/** A circuit with a change made: the stage to solve, and which tube then sits where. */

import type { AmpCircuit, CircuitSocket } from '@/lib/domain/circuit/amp/amp-circuit'
import { type Rectifier, rectifierNamed } from '@/lib/domain/circuit/amp/rectifier-of'
import type { OutputStage } from '@/lib/domain/circuit/output-stage'
import type { SolveFault } from '@/lib/domain/circuit/solve-fault'
import { catalogueModel } from '@/lib/domain/model/catalogue-model'
import { type IndividualTube, untestedTube } from '@/lib/domain/model/individual-tube'
import { fail, ok, type Result } from '@/lib/domain/result'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import { ohms, ratio, volts } from '@/lib/domain/units'
import type { Change, ProposedTube } from './change'

export type WhatIfFault =
  | { readonly code: 'type-not-known'; readonly designation: string }
  | { readonly code: 'no-curves'; readonly designation: string }
  | { readonly code: 'not-an-output-tube'; readonly designation: string }
  | { readonly code: 'unknown-socket'; readonly socket: string }
  | { readonly code: 'no-grid-supply' }
  | { readonly code: 'grid-volts-not-negative'; readonly volts: number }
  | { readonly code: 'no-cathode-resistor' }
  | { readonly code: 'cathode-ohms-not-positive'; readonly ohms: number }
  | { readonly code: 'mains-out-of-range'; readonly volts: number; readonly lowest: number; readonly highest: number }
  | { readonly code: 'rectifier-not-known'; readonly designation: string }
  /** The drop of the rectifier fitted now is not known: nothing can be said of what another would do. */
  | { readonly code: 'rectifier-now-not-known'; readonly designation: string }
  | { readonly code: 'no-solution'; readonly fault: SolveFault }

export type SeatedTube = {
  readonly socket: CircuitSocket
  readonly variant: TubeVariant
  readonly tube: IndividualTube
  /** The tube that was read there sits there. */
  readonly isFitted: boolean
  /** Mark of a stocked tube; '' for an average one and for the one fitted. */
  readonly mark: string
}

export type ChangedCircuit = {
  readonly stage: OutputStage
  /** In the order of the stage's tubes. */
  readonly seats: readonly SeatedTube[]
  readonly rectifier: Rectifier
}

/** Of the marked voltage. Past these no heater and no supply behaves as it is reckoned to. */
const MAINS_RANGE = { lowest: 0.5, highest: 1.5 } as const

type Proposed = Pick<SeatedTube, 'variant' | 'tube' | 'mark'>

function proposed(given: ProposedTube, circuit: AmpCircuit): Result<Proposed, WhatIfFault> {
  if (given.kind === 'individual') return ok({ variant: given.variant, tube: given.tube, mark: given.mark })
  const { designation } = given
  const variant = findTubeType(designation, circuit)
  if (!variant) return fail({ code: 'type-not-known', designation })
  if (variant.role !== 'output') return fail({ code: 'not-an-output-tube', designation })
  const model = catalogueModel(variant.typeId, circuit)
  if (!model.ok) return fail({ code: 'no-curves', designation })
  return ok({ variant, tube: untestedTube(model.value), mark: '' })
}

function proposalFor({ tubes }: Change, position: string): ProposedTube | null {
  if (!tubes) return null
  return 'all' in tubes ? tubes.all : (tubes.bySocket[position] ?? null)
}

function namesUnknown({ sockets }: AmpCircuit, { tubes, pulled }: Change): WhatIfFault | null {
  const named = [...(tubes && 'bySocket' in tubes ? Object.keys(tubes.bySocket) : []), ...(pulled ? [pulled] : [])]
  const unknown = named.find((name) => !sockets.some(({ position }) => position === name))
  return unknown === undefined ? null : { code: 'unknown-socket', socket: unknown }
}

function seatsOf(circuit: AmpCircuit, change: Change): Result<readonly SeatedTube[], WhatIfFault> {
  const seats: SeatedTube[] = []
  for (const socket of circuit.sockets) {
    if (socket.position === change.pulled) continue
    const given = proposalFor(change, socket.position)
    if (given === null) {
      seats.push({ socket, variant: socket.variant, tube: socket.tube, isFitted: true, mark: '' })
      continue
    }
    const found = proposed(given, circuit)
    if (!found.ok) return found
    seats.push({ socket, ...found.value, isFitted: false })
  }
  return ok(seats)
}

function mainsOf({ stage, markedMainsVolts }: AmpCircuit, change: Change): Result<number, WhatIfFault> {
  const byWall = change.wallVolts === undefined ? stage.mainsFactor : change.wallVolts / markedMainsVolts
  const factor = change.mainsFactor ?? byWall
  const [lowest, highest] = [MAINS_RANGE.lowest * markedMainsVolts, MAINS_RANGE.highest * markedMainsVolts]
  if (factor >= MAINS_RANGE.lowest && factor <= MAINS_RANGE.highest) return ok(factor)
  return fail({ code: 'mains-out-of-range', volts: factor * markedMainsVolts, lowest, highest })
}

function rectifierOf(circuit: AmpCircuit, change: Change): Result<Rectifier, WhatIfFault> {
  const now = circuit.rectifier
  if (change.rectifier === undefined || change.rectifier === now.designation) return ok(now)
  if (now.designation !== '' && now.diode === null) {
    return fail({ code: 'rectifier-now-not-known', designation: now.designation })
  }
  const found = rectifierNamed(change.rectifier, Math.max(1, now.tubes), circuit)
  return found ? ok(found) : fail({ code: 'rectifier-not-known', designation: change.rectifier })
}

function gridFault({ stage }: AmpCircuit, { gridVolts }: Change): WhatIfFault | null {
  if (gridVolts === undefined) return null
  if (stage.gridSupplies.length === 0) return { code: 'no-grid-supply' }
  return gridVolts < 0 ? null : { code: 'grid-volts-not-negative', volts: gridVolts }
}

/** Ids of the resistors that set the idle: one beside a grid supply does not. */
function settingResistors({ stage, sockets }: AmpCircuit): ReadonlySet<string> {
  const setting = sockets.filter(({ bias }) => bias === 'cathode-resistor').map(({ position }) => position)
  return new Set(
    stage.tubes.flatMap(({ socket, biasResistor }) => (setting.includes(socket) ? (biasResistor ?? []) : [])),
  )
}

function cathodeFault(circuit: AmpCircuit, { cathodeOhms }: Change): WhatIfFault | null {
  if (cathodeOhms === undefined) return null
  if (settingResistors(circuit).size === 0) return { code: 'no-cathode-resistor' }
  return cathodeOhms > 0 ? null : { code: 'cathode-ohms-not-positive', ohms: cathodeOhms }
}

function resistorsOf(circuit: AmpCircuit, { cathodeOhms }: Change): OutputStage['biasResistors'] {
  const { biasResistors } = circuit.stage
  if (cathodeOhms === undefined) return biasResistors
  const setting = settingResistors(circuit)
  return biasResistors.map((one) => (setting.has(one.id) ? { ...one, resistance: ohms(cathodeOhms) } : one))
}

function stageOf(circuit: AmpCircuit, change: Change, seats: readonly SeatedTube[], factor: number): OutputStage {
  const { stage } = circuit
  const { gridVolts } = change
  return {
    ...stage,
    tubes: seats.flatMap(({ socket, tube }) => {
      const there = stage.tubes.find((one) => one.socket === socket.position)
      return there ? [{ ...there, tube: tube.parameters }] : []
    }),
    gridSupplies:
      gridVolts === undefined
        ? stage.gridSupplies
        : stage.gridSupplies.map((one) => ({ ...one, voltage: volts(gridVolts) })),
    biasResistors: resistorsOf(circuit, change),
    mainsFactor: ratio(factor),
  }
}

export function changedCircuit(circuit: AmpCircuit, change: Change): Result<ChangedCircuit, WhatIfFault> {
  const fault = namesUnknown(circuit, change) ?? gridFault(circuit, change) ?? cathodeFault(circuit, change)
  if (fault) return fail(fault)
  const seats = seatsOf(circuit, change)
  if (!seats.ok) return seats
  const mains = mainsOf(circuit, change)
  if (!mains.ok) return mains
  const rectifier = rectifierOf(circuit, change)
  if (!rectifier.ok) return rectifier
  const stage = stageOf(circuit, change, seats.value, mains.value)
  const rectified = { ...stage, supply: { ...stage.supply, rectifier: rectifier.value.diode } }
  return ok({ stage: rectified, seats: seats.value, rectifier: rectifier.value })
}
