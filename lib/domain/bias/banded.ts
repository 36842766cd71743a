/** An uncertain quantity as it is shown: value and 95 % band. */
import { COVERAGE_FACTOR, standardUncertainty, type Uncertain } from './uncertain'

/** Unit by the name of the field it stands in: volts, amps, watts or per cent of rating. */
export type Banded = {
  readonly value: number
  readonly standardUncertainty: number
  /** Half of the 95 % band: k = 2 (JCGM 100:2008, 6.2). */
  readonly plusMinus: number
  readonly low: number
  readonly high: number
  /** True when an assumption (typical screen share, equal split) enters: an estimate, no measurement. */
  readonly estimate: boolean
}

export function banded(quantity: Uncertain, estimate: boolean): Banded {
  const u = standardUncertainty(quantity)
  const plusMinus = COVERAGE_FACTOR * u
  const { value } = quantity
  return { value, standardUncertainty: u, plusMinus, low: value - plusMinus, high: value + plusMinus, estimate }
}
