/** The curve sheets of a round of readings, or of the rounds before and after the work: one for each output group and type. */
import type { BenchResult, SocketResult } from '@/lib/domain/bench/bench-result'
import type { IdleResult } from '@/lib/domain/bias/idle'
import type { Result } from '@/lib/domain/result'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { PlotLoad } from './load-path'
import type { PlotReading, When } from './operating-point'
import { type PlateSheet, type PlotFault, plateSheet } from './plate-sheet'

export type PlotRound = { readonly when: When | null; readonly result: Pick<BenchResult, 'sockets'> }

export type GroupPlot = {
  /** As the sheet names the group. */
  readonly group: string
  readonly designation: string
  readonly plot: Result<PlateSheet, PlotFault>
}

export type PlotSettings = {
  /** Load of a group's stage; null where it is not known. */
  readonly loadOf: (group: string) => PlotLoad | null
  readonly catalogue: TubeCatalogue
}

type Read = { readonly group: string; readonly idle: IdleResult; readonly reading: PlotReading }

function readAt({ socket, entry, outcome }: SocketResult, when: When | null): Read[] {
  if (outcome.kind !== 'idle') return []
  const { idle } = outcome
  // Plate to cathode is known with the cathode's own volts taken off: the same are taken off here.
  const cathode = (entry.plateVolts ?? 0) - idle.plateToCathodeVolts.value
  const toCathode = (read: number | null) => (read === null ? null : read - cathode)
  const reading = {
    when,
    idle,
    screenToCathode: toCathode(entry.screenVolts),
    gridToCathode: toCathode(entry.gridVolts),
  }
  return [{ group: socket.matchGroup, idle, reading }]
}

function groupPlot(reads: readonly Read[], { loadOf, catalogue }: PlotSettings): GroupPlot[] {
  const [first] = reads
  if (!first) return []
  const { typeId, designation, plateRatingWatts, ratingSystem } = first.idle
  const rating = plateRatingWatts === null ? null : { watts: plateRatingWatts, system: ratingSystem }
  const readings = reads.map(({ reading }) => reading)
  const plot = plateSheet({ typeId, designation, rating, readings, load: loadOf(first.group), catalogue })
  return [{ group: first.group, designation, plot }]
}

/** Rounds in the order they were taken. */
export function groupPlots(rounds: readonly PlotRound[], settings: PlotSettings): GroupPlot[] {
  const reads = rounds.flatMap(({ when, result }) => result.sockets.flatMap((each) => readAt(each, when)))
  const keyOf = ({ group, idle }: Read) => `${group}\n${idle.designation}`
  const keys = [...new Set(reads.map(keyOf))]
  return keys.flatMap((key) =>
    groupPlot(
      reads.filter((read) => keyOf(read) === key),
      settings,
    ),
  )
}
