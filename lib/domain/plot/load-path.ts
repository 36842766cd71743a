/**
 * Where the working point of one tube moves under signal, on its own plate curves.
 *
 * Through the idle point (V₀, I₀), with Raa plate to plate and n tubes in parallel on
 * each side. While both sides conduct a side sees Raa/2; once the other is cut off it
 * sees Raa/4 and runs down the class-B line from (V₀, 0). Of one tube:
 *   I = I₀ + (V₀ − V)/(n·Raa/2)   and, as soon as that is more,   I = (V₀ − V)/(n·Raa/4).
 * Single-ended, R the whole primary:  I = I₀ + (V₀ − V)/(n·R).
 * The path ends where no current is left, and on the curve at zero grid volts.
 * Source: "Radiotron Designer's Handbook", 4th edition, chapter 13 (from memory).
 *
 * A pure resistance, supply and screen as at idle. A speaker is neither: a guide only.
 */
import type { PlotPoint } from './frame'

export type PlotLoad = {
  /** Plate to plate in push-pull, the whole primary in single-ended. Ω. */
  readonly ohms: number
  readonly arrangement: 'push-pull' | 'single-ended'
  /** In parallel on one side, or in all when single-ended. */
  readonly tubesPerSide: number
}

export type LoadPath = { readonly load: PlotLoad; readonly points: readonly PlotPoint[] }

const HALVINGS = 60

/** mA at V. */
function pathAt(idle: PlotPoint, { ohms, arrangement, tubesPerSide }: PlotLoad): (volts: number) => number {
  const milliampsDown = (volts: number, share: number) => (1000 * (idle.across - volts)) / (tubesPerSide * ohms * share)
  if (arrangement === 'single-ended') return (volts) => idle.up + milliampsDown(volts, 1)
  return (volts) => Math.max(idle.up + milliampsDown(volts, 1 / 2), milliampsDown(volts, 1 / 4))
}

/** The path falls and the curve rises with plate volts, so they meet once. */
function meeting(pathUp: (volts: number) => number, zeroGridAt: (volts: number) => number, idleVolts: number): number {
  let [low, high] = [0, idleVolts]
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2
    if (zeroGridAt(middle) < pathUp(middle)) low = middle
    else high = middle
  }
  return high
}

/** Null: the idle point lies above the curve at zero grid volts, so no path of this tube leads through it. */
export function loadPath(idle: PlotPoint, load: PlotLoad, zeroGridAt: (volts: number) => number): LoadPath | null {
  for (const value of [load.ohms, load.tubesPerSide])
    if (!(value > 0)) throw new Error(`A load line needs values above zero, got ${value}`)
  if (zeroGridAt(idle.across) <= idle.up) return null
  const up = pathAt(idle, load)
  const share = load.arrangement === 'single-ended' ? 1 : 1 / 2
  const toCutoff = (idle.up / 1000) * load.tubesPerSide * load.ohms * share
  const clips = meeting(up, zeroGridAt, idle.across)
  const knee = idle.across - toCutoff
  const bend = load.arrangement === 'push-pull' && knee > clips ? [{ across: knee, up: up(knee) }] : []
  return {
    load,
    points: [{ across: clips, up: up(clips) }, ...bend, idle, { across: idle.across + toCutoff, up: 0 }],
  }
}
