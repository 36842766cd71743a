/** A computed figure with the ends of its band below it, rounded outwards. */
import type { Band } from '@/lib/domain/circuit/band'

export type FigureScale = { readonly factor: number; readonly unit: string; readonly decimals: number }
export const MILLIAMPS: FigureScale = { factor: 1000, unit: 'mA', decimals: 1 }
export const WATTS: FigureScale = { factor: 1, unit: 'W', decimals: 1 }
export const PERCENT: FigureScale = { factor: 1, unit: '%', decimals: 0 }
export const VOLTS: FigureScale = { factor: 1, unit: 'V', decimals: 0 }

const figure = (value: number, decimals: number): string => value.toFixed(decimals).replace('-', '\u2212')

/** "36.1 to 40.4": from the next lower step to the next higher. */
export function bandEnds({ low, high }: Band, { factor, decimals }: FigureScale): string {
  const steps = 10 ** decimals
  const from = Math.floor(low * factor * steps + 1e-9) / steps
  const to = Math.ceil(high * factor * steps - 1e-9) / steps
  return `${figure(from, decimals)} to ${figure(to, decimals)}`
}

export function BandFigure({ band, scale }: { band: Band | null; scale: FigureScale }) {
  if (band === null) return <span className="soft">none</span>
  return (
    <>
      {figure(band.value * scale.factor, scale.decimals)} {scale.unit}
      <br />
      <span className="soft small">{bandEnds(band, scale)}</span>
    </>
  )
}
