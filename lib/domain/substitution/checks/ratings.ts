/** The substitute's own printed limits against what was measured at the socket. */
import type { SourcedNumber, TubeVariant } from '../../tube/tube-variant'
import type { AmpSocket, SocketBias, SubstitutionRules } from '../amp-socket'
import { type CheckName, type Finding, finding } from '../finding'

const SYSTEMS = {
  'design-centre': 'design-centre',
  'design-maximum': 'design-maximum',
  absolute: 'absolute',
  'not-stated': 'rating system not stated',
} as const

const volts = (value: number): string => `${Math.round(value)} V`

type Limit = {
  readonly check: CheckName
  readonly what: string
  readonly measured: number | null
  readonly rating: SourcedNumber | null | undefined
}

export function ratingFindings(proposed: TubeVariant, socket: AmpSocket, rules: SubstitutionRules): Finding[] {
  if (proposed.role === 'rectifier') return []
  const { ratings } = proposed
  const limits: Limit[] = [
    { check: 'plate volts', what: rules.words.plate, measured: socket.plateToCathode, rating: ratings?.plateVolts },
  ]
  if (proposed.role === 'output' && proposed.typicalScreenShare !== null)
    limits.push({
      check: 'screen volts',
      what: 'screen',
      measured: socket.screenToCathode,
      rating: ratings?.screenVolts,
    })
  return limits.map((limit) => limitFinding(limit, proposed, rules))
}

function limitFinding(
  { check, what, measured, rating }: Limit,
  proposed: TubeVariant,
  rules: SubstitutionRules,
): Finding {
  const { designation, ratings, ratingsStandIn } = proposed
  if (!rating || !ratings) return finding(check, 'cannot-say', `No limit of the ${what} is known for ${designation}.`)
  const printed = `${volts(rating.value)} (${ratings.appliesTo}, ${SYSTEMS[ratings.system]}${ratingsStandIn ? ', standing in for its own sheet' : ''})`
  if (measured === null)
    return finding(check, 'cannot-say', `The ${what} may have ${printed}; what it would meet here was not measured.`)
  if (measured <= rating.value) return finding(check, 'fits', `${volts(measured)} at the ${what}, of ${printed}.`)
  const over = `${volts(measured)} at the ${what} is above its ${printed}.`
  return rules.allowOverPrintedRating
    ? finding(check, 'note', `${over} Good old bottles often stand it; nothing is promised.`)
    : finding(check, 'no', over)
}

/**
 * Against the printed limit for this kind of bias. Many amplifiers were built with more than
 * the books allow (common practice, no source): where the type the socket was made for is
 * held no tighter, the substitute is no worse off.
 */
export function gridLeakFindings(proposed: TubeVariant, { made, gridLeak, bias }: AmpSocket): Finding[] {
  const limit = bias && gridLeakLimit(proposed, bias)
  if (!limit) return []
  const printed = `${limit} MΩ`
  if (gridLeak === null) {
    const sentence = `${proposed.designation} wants no more than ${printed} of grid leak here; the amplifier’s is not noted.`
    return [finding('grid leak', 'note', sentence)]
  }
  const here = `${Number((gridLeak / 1e6).toPrecision(3))} MΩ`
  if (gridLeak <= limit * 1e6) return [finding('grid leak', 'fits', `Grid leak ${here}, of ${printed}.`)]
  const over = `The grid leak is ${here}; ${proposed.designation} wants no more than ${printed}`
  const before = gridLeakLimit(made, bias)
  return before !== null && before <= limit
    ? [finding('grid leak', 'note', `${over}. So it was for ${made.designation} already.`)]
    : [finding('grid leak', 'change', `${over}. Fit a smaller one.`)]
}

function gridLeakLimit({ ratings }: TubeVariant, { kind }: SocketBias): number | null {
  const key = kind === 'cathode-resistor' ? 'gridLeakCathodeBiasMegohms' : 'gridLeakGridSuppliedMegohms'
  return (ratings?.all[key] ?? ratings?.all.gridLeakMegohms)?.value ?? null
}
