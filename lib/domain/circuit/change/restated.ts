/**
 * A round of readings restated at another mains voltage, so that rounds taken on different
 * days can be laid side by side: through the calibrated circuit, every supply in proportion
 * to the mains. Computed, not measured; the band is that of the tubes and the readings.
 */
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import type { Assumption } from '@/lib/domain/circuit/amp/assumption'
import { ok, type Result } from '@/lib/domain/result'
import type { WhatIfCaution } from './cautions/what-if-caution'
import type { WhatIfFault } from './changed-circuit'
import type { SocketIdle } from './socket-idle'
import { whatIf } from './what-if'

export type Restated = {
  readonly readAtWallVolts: number
  readonly statedAtWallVolts: number
  readonly computed: true
  readonly sockets: readonly {
    readonly position: string
    /** False: no current was read there, and it was taken as the others'. */
    readonly wasRead: boolean
    readonly asRead: SocketIdle
    readonly restated: SocketIdle
  }[]
  readonly reservoirVolts: { readonly asRead: number; readonly restated: number }
  readonly assumptions: readonly Assumption[]
  readonly cautions: readonly WhatIfCaution[]
}

/** At the marked voltage unless another is given. */
export function restatedAtMains(
  circuit: AmpCircuit,
  wallVolts: number = circuit.markedMainsVolts,
): Result<Restated, WhatIfFault> {
  const found = whatIf(circuit, { wallVolts })
  if (!found.ok) return found
  const { sockets, reservoirVolts, assumptions, cautions } = found.value
  return ok({
    readAtWallVolts: circuit.readAtWallVolts,
    statedAtWallVolts: wallVolts,
    computed: true,
    sockets: sockets.flatMap(({ position, now, changed }) => {
      const wasRead = circuit.sockets.some((one) => one.position === position && one.wasRead)
      return changed ? [{ position, wasRead, asRead: now, restated: changed }] : []
    }),
    reservoirVolts: { asRead: reservoirVolts.now, restated: reservoirVolts.changed },
    assumptions,
    cautions,
  })
}
