/** An idle reading as it stands on a curve sheet: the point, and the box its 95 % band allows. */
import type { IdleResult } from '@/lib/domain/bias/idle'
import type { Frame, PlotPoint } from './frame'

/** Rounds of readings before and after the work; or a state computed as it is now and as it then would be. */
export type When = 'before' | 'after' | 'now' | 'then'

export const isEarlier = (when: When | null): boolean => when === 'before' || when === 'now'
export const isLater = (when: When | null): boolean => when === 'after' || when === 'then'
export const isComputed = (when: When | null): boolean => when === 'now' || when === 'then'

export type OperatingPoint = {
  readonly socket: string
  /** Null where there is only one round. */
  readonly when: When | null
  readonly at: PlotPoint
  /** Both bands of 95 %; V and mA. Never below zero. */
  readonly box: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number }
  readonly watts: number
  /** An assumption enters. */
  readonly estimate: boolean
  /** Read, grid to cathode. */
  readonly gridVolts: number | null
  /** At which an average tube carries this current at the plate and screen volts of its own socket. Null: at none from zero down. */
  readonly gridByCurves: number | null
}

export type PlotReading = {
  readonly when: When | null
  readonly idle: Pick<IdleResult, 'socket' | 'plateToCathodeVolts' | 'plateAmps' | 'plateWatts'>
  /** Null: not read, or a triode. */
  readonly screenToCathode: number | null
  readonly gridToCathode: number | null
}

const HALVINGS = 60

/** `milliampsAt` rises with grid volts. */
function gridFor(milliampsAt: (grid: number) => number, milliamps: number): number | null {
  if (milliamps <= 0 || milliampsAt(0) < milliamps) return null
  let [hot, cold] = [0, -1]
  while (milliampsAt(cold) > milliamps) {
    if (cold < -1e5) return null
    cold *= 2
  }
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (hot + cold) / 2
    if (milliampsAt(middle) > milliamps) hot = middle
    else cold = middle
  }
  return (hot + cold) / 2
}

export function operatingPoint(
  { when, idle, gridToCathode }: PlotReading,
  milliampsAt: (plate: number, grid: number) => number,
): OperatingPoint {
  const { plateToCathodeVolts: across, plateAmps: up, plateWatts } = idle
  const at = { across: across.value, up: 1000 * up.value }
  return {
    socket: idle.socket,
    when,
    at,
    box: {
      left: Math.max(0, across.low),
      right: across.high,
      bottom: Math.max(0, 1000 * up.low),
      top: 1000 * up.high,
    },
    watts: plateWatts.value,
    estimate: up.estimate,
    gridVolts: gridToCathode,
    gridByCurves: gridFor((grid) => milliampsAt(at.across, grid), at.up),
  }
}

const LARGE = 0.09

/** Boxes that can be told from their point without a glass. */
export const boxesShow = ({ across, up }: Frame, points: readonly OperatingPoint[]): boolean =>
  points.every(
    ({ box }) =>
      (box.right - box.left) / (across.to - across.from) > LARGE && (box.top - box.bottom) / (up.to - up.from) > LARGE,
  )
