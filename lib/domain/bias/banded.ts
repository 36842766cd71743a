/** An uncertain quantity as it is shown: value and 95 % band. */
import { halfWidth } from './coverage'
import { isLimitKey } from './error-source'
import { standardUncertainty, type Uncertain } from './uncertain'

/** Unit by the name of the field it stands in: volts, amps, watts or per cent of rating. */
export type Banded = {
  readonly value: number
  readonly standardUncertainty: number
  /** Half of the 95 % band: twice the standard uncertainty, less where one error within limits leads (coverage.ts). */
  readonly plusMinus: number
  readonly low: number
  readonly high: number
  /** True when an assumption (typical screen share, equal split) enters: an estimate, no measurement. */
  readonly estimate: boolean
}

/** Standard contribution of the largest error that is known by its limits only. */
function leadingLimit({ errors }: Uncertain): number {
  let largest = 0
  for (const [key, part] of Object.entries(errors)) if (isLimitKey(key)) largest = Math.max(largest, Math.abs(part))
  return largest
}

export function banded(quantity: Uncertain, estimate: boolean): Banded {
  const u = standardUncertainty(quantity)
  const leading = leadingLimit(quantity)
  const others = Math.sqrt(Math.max(0, u * u - leading * leading))
  const plusMinus = halfWidth(leading * Math.sqrt(3), others)
  const { value } = quantity
  return { value, standardUncertainty: u, plusMinus, low: value - plusMinus, high: value + plusMinus, estimate }
}
