/**
 * What an output group asks of a set: how many tubes of which family and base,
 * and what they will meet there by the last readings.
 *
 * The dissipation a tube must stand is what was read when that was not too hot.
 * Where any socket of the group reads above its window, certainly or not, all will
 * be set anew, so the aim of the window stands in wherever more was read: a tube is
 * not refused for a fault that is to be mended.
 */
import type { AmpSheet } from '@/lib/domain/amp/amp'
import type { Socket } from '@/lib/domain/amp/socket'
import type { IdleResult } from '@/lib/domain/bias/idle'
import type { SocketDemand } from '@/lib/domain/matching/candidate'
import { LARGEST_SET } from '@/lib/domain/matching/match-limits'
import type { SetArrangement } from '@/lib/domain/matching/match-weights'
import { fail, ok, type Result } from '@/lib/domain/result'
import { stockType } from '@/lib/domain/stock/stock-type'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { amps, volts, watts } from '@/lib/domain/units'
import { type BenchResult, outputGroup } from './bench-result'

export type DemandFault =
  | { readonly code: 'no-type'; readonly sockets: readonly string[] }
  | { readonly code: 'mixed-families'; readonly families: readonly string[] }
  | { readonly code: 'too-many'; readonly count: number; readonly most: number }

export type GroupDemand = {
  readonly sockets: readonly Socket[]
  readonly designation: string
  readonly demand: SocketDemand
  /** True when the group was read too hot and the aim stands in for what was read. */
  readonly tooHotNow: boolean
}

const highest = (values: readonly (number | null)[]): number | null => {
  const known = values.filter((value) => value !== null)
  return known.length === 0 ? null : Math.max(...known)
}

function screenToCathode(result: BenchResult['sockets'][number], idle: IdleResult): number | null {
  const { screenVolts, plateVolts } = result.entry
  if (screenVolts === null || plateVolts === null) return null
  // Plate to cathode is known with the cathode's own volts taken off: the same are taken off here.
  return screenVolts - (plateVolts - idle.plateToCathodeVolts.value)
}

function dissipation({ plateWatts, plateToCathodeVolts, target }: IdleResult, setAnew: boolean): number {
  if (!setAnew || !target) return plateWatts.value
  return Math.min(plateWatts.value, target.plateCurrent * plateToCathodeVolts.value)
}

const mean = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length

/** From four tubes on they stand in parallel. Trims of their own are not on the sheet: only readings tell them. */
function arrangementOf({ amp }: AmpSheet, sockets: readonly Socket[]): SetArrangement {
  if (amp.outputClass === 'single-ended') return 'single-ended'
  if (sockets.length > 0 && sockets.every(({ biasKind }) => biasKind === 'cathode-resistor')) {
    return sockets.some(({ cathodeSharedBy }) => cathodeSharedBy > 1) ? 'cathode-shared' : 'cathode-separate'
  }
  return sockets.length >= 4 ? 'parallel-pairs' : 'one-trim'
}

export function groupDemand(
  sheet: AmpSheet,
  group: string,
  result: BenchResult | null,
  catalogue: TubeCatalogue,
): Result<GroupDemand, DemandFault> {
  const sockets = outputGroup(sheet, group)
  const untyped = sockets.filter(({ typeFitted }) => typeFitted.trim() === '')
  if (untyped.length > 0) return fail({ code: 'no-type', sockets: untyped.map(({ position }) => position) })
  const types = sockets.map(({ typeFitted }) => stockType(typeFitted, catalogue))
  const families = [...new Set(types.map(({ family }) => family))]
  const type = types[0]
  if (!type || families.length > 1) return fail({ code: 'mixed-families', families })
  if (sockets.length > LARGEST_SET) return fail({ code: 'too-many', count: sockets.length, most: LARGEST_SET })
  const read = (result?.sockets ?? []).flatMap((each) =>
    each.socket.role === 'output' && each.socket.matchGroup === group && each.outcome.kind === 'idle'
      ? [{ each, idle: each.outcome.idle }]
      : [],
  )
  const plate = highest(read.map(({ idle }) => idle.plateToCathodeVolts.value))
  const screen = highest(read.map(({ each, idle }) => screenToCathode(each, idle)))
  const tooHotNow = read.some(({ idle }) => idle.verdict.percentOff > 0)
  const aim = mean(read.flatMap(({ idle }) => idle.target?.plateCurrent ?? []))
  const power = highest(read.map(({ idle }) => dissipation(idle, tooHotNow)))
  return ok({
    sockets,
    designation: sockets[0]?.typeFitted ?? '',
    tooHotNow,
    demand: {
      count: sockets.length,
      family: type.family,
      base: type.base,
      pushPull: sheet.amp.outputClass === 'push-pull',
      arrangement: arrangementOf(sheet, sockets),
      aim: aim === null ? null : amps(aim),
      plateToCathodeVoltage: plate === null ? null : volts(plate),
      screenVoltage: screen === null ? null : volts(screen),
      idlePlateDissipation: power === null ? null : watts(power),
    },
  })
}

/** Socket for each tube of a set: sides meet sides; within a side, in chassis order. */
export function socketsFor<T extends { readonly side: 'A' | 'B' | null }>(
  tubes: readonly T[],
  sockets: readonly Socket[],
): { readonly tube: T; readonly position: string }[] {
  const free = [...sockets]
  const take = (side: 'A' | 'B' | null) => {
    const at = free.findIndex((socket) => side !== null && socket.side === side)
    return free.splice(Math.max(at, 0), 1)[0]
  }
  const sided = sockets.filter(({ side }) => side === 'A').length === sockets.length / 2
  return tubes.flatMap((tube) => {
    const socket = take(sided ? tube.side : null)
    return socket ? [{ tube, position: socket.position }] : []
  })
}
