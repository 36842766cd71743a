/**
 * Idle dissipation against the window the trade keeps, and against the printed
 * rating, which is another and stronger statement.
 *
 * The windows are common practice, no source; a shop sets its own. A cathode
 * resistor holds the tube back by itself as it gets hotter, so such amps idle
 * near the full rating: the window for grid-supplied bias is never used there.
 */
import { type Ratio, ratio } from '@/lib/domain/units'
import type { Banded } from './banded'
import type { IdleContext, IdleWindow, IdleWindows } from './idle-reading'

export type Verdict = 'within' | 'over' | 'under' | 'uncertain' | 'no-rating'

export type IdleVerdict = {
  readonly verdict: Verdict
  readonly window: IdleWindow
  /** Window limit that lies inside the 95 % band; only with 'uncertain'. */
  readonly limitInBand: 'low' | 'high' | 'both' | null
  /** Against the printed plate rating: 'possibly' when 100 % lies inside the band. */
  readonly overRating: 'no' | 'possibly' | 'yes' | 'not-known'
  /** How far outside the nearer window limit, in per cent of that limit: +12 is 12 % too hot, −5 is 5 % too cold. */
  readonly percentOff: number
}

/** Common practice, no source. */
export const DEFAULT_IDLE_WINDOWS: IdleWindows = {
  gridSuppliedPushPull: { low: ratio(0.6), high: ratio(0.7) },
  cathodeResistor: { low: ratio(0.8), high: ratio(1) },
  singleEnded: { low: ratio(0.8), high: ratio(1) },
}

export function idleWindow({ bias, service, windows }: Pick<IdleContext, 'bias' | 'service' | 'windows'>): IdleWindow {
  if (service === 'single-ended-class-a') return windows.singleEnded
  return bias === 'cathode-resistor' ? windows.cathodeResistor : windows.gridSuppliedPushPull
}

const inside = (limit: Ratio, { low, high }: Banded): boolean => 100 * limit > low && 100 * limit < high

function limitInBand(percent: Banded, window: IdleWindow): IdleVerdict['limitInBand'] {
  const low = inside(window.low, percent)
  const high = inside(window.high, percent)
  if (low && high) return 'both'
  if (low) return 'low'
  return high ? 'high' : null
}

function percentOff({ value }: Banded, { low, high }: IdleWindow): number {
  const limit = 100 * (value > 100 * high ? high : low)
  return value > 100 * high || value < 100 * low ? (100 * (value - limit)) / limit : 0
}

function overRating({ low, high }: Banded): IdleVerdict['overRating'] {
  if (low > 100) return 'yes'
  return high > 100 ? 'possibly' : 'no'
}

function againstWindow({ value }: Banded, { low, high }: IdleWindow): 'within' | 'over' | 'under' {
  if (value > 100 * high) return 'over'
  return value < 100 * low ? 'under' : 'within'
}

export function idleVerdict(percent: Banded | null, window: IdleWindow): IdleVerdict {
  if (percent === null) {
    return { verdict: 'no-rating', window, limitInBand: null, overRating: 'not-known', percentOff: 0 }
  }
  const crossing = limitInBand(percent, window)
  return {
    verdict: crossing ? 'uncertain' : againstWindow(percent, window),
    window,
    limitInBand: crossing,
    overRating: overRating(percent),
    percentOff: percentOff(percent, window),
  }
}
