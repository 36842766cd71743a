/**
 * A change made on paper: every socket as it is and as it then would be.
 *
 * Both states are solved with the same circuit, calibrated to the readings
 * (amp/amp-circuit.ts), so what is compared is like with like. Both are computed; only the
 * readings they rest on were measured.
 */
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { Assumption } from '@/lib/domain/circuit/amp/assumption'
import { ok, type Result } from '@/lib/domain/result'
import { rectifierCautions } from './cautions/rectifier-cautions'
import { tubeCautions } from './cautions/tube-cautions'
import type { WhatIfCaution } from './cautions/what-if-caution'
import type { Change } from './change'
import { changedCircuit, type WhatIfFault } from './changed-circuit'
import { type SocketIdle, socketIdle } from './socket-idle'
import { type SolvedCircuit, solvedCircuit } from './solved-circuit'

/** As it is, and with the change made. */
export type NowThen<T> = { readonly now: T; readonly changed: T }

export type WhatIf = {
  readonly sockets: readonly {
    readonly position: string
    readonly now: SocketIdle
    /** Null: pulled. */
    readonly changed: SocketIdle | null
  }[]
  readonly reservoirVolts: NowThen<number>
  readonly screenNodeVolts: NowThen<number | null>
  readonly supplyAmps: NowThen<number>
  readonly rectifierDropVolts: NowThen<number>
  readonly wallVolts: NowThen<number>
  /** At marked mains, by supply. */
  readonly gridVolts: readonly ({ readonly supply: string } & NowThen<number>)[]
  readonly biasResistors: readonly ({ readonly id: string } & NowThen<{
    readonly volts: number
    readonly watts: number
  } | null>)[]
  readonly cautions: readonly WhatIfCaution[]
  readonly assumptions: readonly Assumption[]
}

export function solvedChange(circuit: AmpCircuit, change: Change): Result<SolvedCircuit, WhatIfFault> {
  const changed = changedCircuit(circuit, change)
  return changed.ok ? solvedCircuit(circuit, changed.value, change.gridVolts !== undefined) : changed
}

function biasResistors({ solution: now }: SolvedCircuit, { solution: then }: SolvedCircuit): WhatIf['biasResistors'] {
  const figures = ({ biasResistors: list }: SolvedCircuit['solution'], id: string) => {
    const found = list.find((one) => one.id === id)
    return found ? { volts: found.voltage, watts: found.dissipation } : null
  }
  return now.biasResistors.map(({ id }) => ({ id, now: figures(now, id), changed: figures(then, id) }))
}

function cautionsOf(circuit: AmpCircuit, then: SolvedCircuit, { pulled }: Change): WhatIfCaution[] {
  return [
    ...then.solution.cautions,
    ...rectifierCautions(circuit, then),
    ...then.seats.flatMap((one) => tubeCautions(one, circuit)),
    ...(pulled === undefined ? [] : [{ code: 'pulled-for-a-look', socket: pulled } as const]),
    { code: 'computed-not-read' },
  ]
}

const movesMains = (circuit: AmpCircuit, then: SolvedCircuit): boolean =>
  then.changed.stage.mainsFactor !== circuit.stage.mainsFactor

export function compared(circuit: AmpCircuit, now: SolvedCircuit, then: SolvedCircuit, change: Change): WhatIf {
  const wall = ({ changed }: SolvedCircuit) => changed.stage.mainsFactor * circuit.markedMainsVolts
  const both = <T>(of: (solved: SolvedCircuit) => T): NowThen<T> => ({ now: of(now), changed: of(then) })
  const supplyOf = ({ changed }: SolvedCircuit, id: string): number =>
    changed.stage.gridSupplies.find((one) => one.id === id)?.voltage ?? 0
  return {
    sockets: now.seats.map((seat) => {
      const { position } = seat.seat.socket
      const later = then.seats.find((one) => one.seat.socket.position === position)
      return { position, now: socketIdle(seat, circuit), changed: later ? socketIdle(later, circuit) : null }
    }),
    reservoirVolts: both(({ solution }) => solution.reservoir),
    screenNodeVolts: both(({ solution }) => solution.screenNode),
    supplyAmps: both(({ solution }) => solution.supplyCurrent),
    rectifierDropVolts: both(({ solution }) => solution.rectifierDrop),
    wallVolts: both(wall),
    gridVolts: circuit.stage.gridSupplies.map(({ id }) => ({
      supply: id,
      ...both((solved) => supplyOf(solved, id)),
    })),
    biasResistors: biasResistors(now, then),
    cautions: cautionsOf(circuit, then, change),
    assumptions: movesMains(circuit, then)
      ? [...circuit.assumptions, { code: 'all-follows-mains' }]
      : circuit.assumptions,
  }
}

export function whatIf(circuit: AmpCircuit, change: Change): Result<WhatIf, WhatIfFault> {
  const now = solvedChange(circuit, {})
  if (!now.ok) return now
  const then = solvedChange(circuit, change)
  return then.ok ? ok(compared(circuit, now.value, then.value, change)) : then
}
