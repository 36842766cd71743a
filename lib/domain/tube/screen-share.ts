/**
 * Typical screen current of a type as a share of cathode current at idle.
 *
 *   share = Ig2 / (Ia + Ig2) at zero signal,
 * the median over the type's handbook rows in pentode connection. Rows whose
 * currents are recalled with low confidence are left out. The stated
 * half-width (rectangular) is three points, or the largest distance of a row
 * from the median where rows spread more. It never reaches below zero.
 *
 * Tubes differ from each other by more than handbook rows do: a measured drop
 * over the screen resistor always replaces this figure.
 */
import { provenanceOf } from './handbook-sources'
import type { Figure, HandbookType, OperatingRow } from './handbook-type'
import type { ScreenShare } from './tube-variant'

/** Three percentage points: common practice, no source. */
const LEAST_HALF_WIDTH = 0.03

/** Types without usable rows. From memory, to be replaced by a sheet or a measurement. */
const FROM_MEMORY: Readonly<Record<string, Pick<ScreenShare, 'share' | 'halfWidth'>>> = {
  KT88: { share: 0.06, halfWidth: 0.04 },
  KT77: { share: 0.1, halfWidth: 0.05 },
  '7868': { share: 0.12, halfWidth: 0.04 },
  '5992': { share: 0.08, halfWidth: 0.04 },
}

const trusted = (figure: Figure | undefined): figure is Figure =>
  figure !== undefined && provenanceOf(figure[1]).confidence !== 'low'

/** Null where the row does not print both zero-signal currents. */
export function rowScreenShare(row: OperatingRow): number | null {
  const { plateMilliamps, screenMilliamps } = row.figures
  if (row.connection !== 'pentode' || !trusted(plateMilliamps) || !trusted(screenMilliamps)) return null
  return screenMilliamps[0] / (plateMilliamps[0] + screenMilliamps[0])
}

function median(sorted: readonly number[]): number {
  const upper = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN
  const lower = sorted[Math.floor((sorted.length - 1) / 2)] ?? Number.NaN
  return (upper + lower) / 2
}

const hasScreen = (type: HandbookType): boolean =>
  type.tubeClass === 'beam-tetrode' ||
  type.tubeClass === 'power-pentode' ||
  type.tubeClass === 'triode-pentode' ||
  type.tubeClass === 'signal-pentode'

/** Null for types without a screen grid, and where neither rows nor practice give a figure. */
export function typicalScreenShare(type: HandbookType): ScreenShare | null {
  if (!hasScreen(type)) return null
  const shares = type.rows
    .map(rowScreenShare)
    .filter((share) => share !== null)
    .sort((a, b) => a - b)
  if (shares.length === 0) {
    const practice = FROM_MEMORY[type.id]
    return practice ? { ...practice, basis: 'from-memory', rows: 0 } : null
  }
  const share = median(shares)
  const spread = Math.max(...shares.map((one) => Math.abs(one - share)))
  const halfWidth = Math.min(Math.max(LEAST_HALF_WIDTH, spread), share)
  return { share, halfWidth, basis: 'handbook-rows', rows: shares.length }
}
