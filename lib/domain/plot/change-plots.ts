/**
 * The curve sheets of a change: of every type that then sits in the group, with the points
 * as they then would be, and those of now where the type stays. All of them computed.
 */
import type { Banded } from '@/lib/domain/bias/banded'
import type { Band } from '@/lib/domain/circuit/band'
import type { SocketIdle } from '@/lib/domain/circuit/change/socket-idle'
import type { WhatIf } from '@/lib/domain/circuit/change/what-if'
import type { Result } from '@/lib/domain/result'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { PlotLoad } from './load-path'
import type { PlotReading, When } from './operating-point'
import { type PlateSheet, type PlotFault, plateSheet } from './plate-sheet'

export type ChangePlot = { readonly designation: string; readonly plot: Result<PlateSheet, PlotFault> }

const asBanded = ({ value, low, high }: Band): Banded => {
  const plusMinus = (high - low) / 2
  return { value, low, high, plusMinus, standardUncertainty: plusMinus / 2, estimate: true }
}

/** Its grid volts are computed too, so none are given as read. */
const point = (when: When, idle: SocketIdle): PlotReading => ({
  when,
  idle: {
    socket: idle.position,
    plateToCathodeVolts: asBanded(idle.plateToCathodeVolts),
    plateAmps: asBanded(idle.plateAmps),
    plateWatts: asBanded(idle.plateWatts),
  },
  screenToCathode: idle.screenToCathodeVolts?.value ?? null,
  gridToCathode: null,
})

function ratingOf({ plateRatingWatts: watts, ratingSystem: system }: SocketIdle) {
  return watts === null ? null : { watts, system }
}

export function changePlots(found: WhatIf, load: PlotLoad | null, catalogue: TubeCatalogue): ChangePlot[] {
  const then = found.sockets.flatMap(({ changed }) => changed ?? [])
  const designations = [...new Set(then.map(({ designation }) => designation))]
  return designations.flatMap((designation) => {
    const [first, ...others] = then.filter((idle) => idle.designation === designation)
    const type = findTubeType(designation, catalogue)
    if (!first || !type) return []
    const stays = found.sockets.filter(({ now, changed }) => changed && now.designation === designation)
    const readings = [
      ...stays.map(({ now }) => point('now', now)),
      ...[first, ...others].map((idle) => point('then', idle)),
    ]
    const plot = plateSheet({ typeId: type.typeId, designation, rating: ratingOf(first), readings, load, catalogue })
    return [{ designation, plot }]
  })
}
