/** Cathode resistors of an output group: as on the sheet, else from the volts across them and the current read. */

import { cathodeResistorId } from '@/lib/domain/bench/reading-of-socket'
import type { Assumption } from '@/lib/domain/circuit/amp/assumption'
import type { CircuitFault } from '@/lib/domain/circuit/amp/circuit-fault'
import type { BiasResistor } from '@/lib/domain/circuit/output-stage'
import { fail, ok, type Result } from '@/lib/domain/result'
import { ohms } from '@/lib/domain/units'
import type { ReadSocket } from './read-socket'

export type BiasResistors = {
  readonly resistors: readonly BiasResistor[]
  /** Id in the order of the sockets; null: cathode to chassis, or to its sense resistor. */
  readonly bySocket: readonly (string | null)[]
  readonly assumptions: readonly Assumption[]
}

/** Ohm's law over the resistor, whose current is that of all who share it, taken as equal. */
function fromReadings({ socket, entry, current }: ReadSocket): number | null {
  if (entry?.cathodeVolts == null || current === null) return null
  const own = current.idle.cathodeAmps.value
  const across = entry.cathodeVolts - own * (socket.senseOhms ?? 0)
  return across > 0 ? across / (own * Math.max(1, socket.cathodeSharedBy)) : null
}

const hasResistor = ({ bias, socket }: ReadSocket): boolean =>
  bias === 'cathode-resistor' || (socket.cathodeOhms ?? 0) > 0

export function biasResistorsOf(sockets: readonly ReadSocket[]): Result<BiasResistors, CircuitFault> {
  const found = new Map<string, number>()
  const bySocket: (string | null)[] = []
  const said: Assumption[] = []
  for (const one of sockets) {
    const id = hasResistor(one) ? cathodeResistorId(one.socket, sockets.length) : null
    bySocket.push(id)
    if (id === null || found.has(id)) continue
    const sharers = sockets.filter(
      (other) => hasResistor(other) && cathodeResistorId(other.socket, sockets.length) === id,
    )
    const noted = sharers.find(({ socket }) => socket.cathodeOhms !== null)?.socket.cathodeOhms ?? null
    const read = noted ?? sharers.map(fromReadings).find((value) => value !== null) ?? null
    if (read === null) return fail({ code: 'cathode-resistor-not-known', socket: one.socket.position })
    const names = sharers.map(({ socket }) => socket.position)
    if (noted === null) said.push({ code: 'cathode-resistor-from-readings', ohms: read, sockets: names })
    found.set(id, read)
  }
  const resistors = [...found].map(([id, resistance]) => ({ id, resistance: ohms(resistance) }))
  return ok({ resistors, bySocket, assumptions: said })
}
