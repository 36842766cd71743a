/** From volts and milliamps to places in a drawing, and lines as SVG paths. */
import { shareOf } from '@/lib/domain/plot/axis'
import type { Frame, PlotPoint } from '@/lib/domain/plot/frame'

export type Area = { readonly left: number; readonly top: number; readonly width: number; readonly height: number }

export type Place = {
  readonly area: Area
  readonly frame: Frame
  readonly x: (across: number) => number
  readonly y: (up: number) => number
}

export const placeIn = (area: Area, frame: Frame): Place => ({
  area,
  frame,
  x: (across) => area.left + shareOf(frame.across, across) * area.width,
  y: (up) => area.top + (1 - shareOf(frame.up, up)) * area.height,
})

export const rounded = (value: number): string => Number(value.toFixed(1)).toString()

export const pathOf = ({ x, y }: Place, points: readonly PlotPoint[]): string =>
  points.map(({ across, up }, i) => `${i === 0 ? 'M' : 'L'}${rounded(x(across))} ${rounded(y(up))}`).join('')

/** Fine rulings between the ticks, ticks left out. */
export function fineRulings({ area, frame, x, y }: Place): string {
  const between = ({ from, step, ticks, fine }: Frame['across']): number[] =>
    Array.from({ length: (ticks.length - 1) * fine }, (_, i) => i)
      .filter((i) => i % fine !== 0)
      .map((i) => from + (i * step) / fine)
  return [
    ...between(frame.across).map((volts) => `M${rounded(x(volts))} ${area.top}v${area.height}`),
    ...between(frame.up).map((milliamps) => `M${area.left} ${rounded(y(milliamps))}h${area.width}`),
  ].join('')
}

export function tickRulings({ area, frame, x, y }: Place): string {
  return [
    ...frame.across.ticks.map((volts) => `M${rounded(x(volts))} ${area.top}v${area.height}`),
    ...frame.up.ticks.map((milliamps) => `M${area.left} ${rounded(y(milliamps))}h${area.width}`),
  ].join('')
}
