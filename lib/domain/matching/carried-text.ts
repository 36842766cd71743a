/** Readings carried over from one instrument to another, in words. */
import type { CarryRate, TubeTest } from './candidate'
import type { InstrumentUse } from './carried-stock'
import { REFERENCES_WANTED } from './carried-test'
import { figure, type MatchingFormat } from './matching-text'
import type { CarriedMatch, MatchStatement, SetOption } from './proposal'

const rateText = ({ factor, share }: CarryRate): string => `× ${factor.toFixed(3)} ± ${figure(100 * share, 1)} %`

const milliamps = (value: number): string => `${figure(1000 * value, 1)}\u00a0mA`

/** Of a tube that is shown with what it is carried to. */
export function carriedReadingText({ plateCurrent, carried }: TubeTest): string | null {
  if (!carried) return null
  const half = carried.current.share * plateCurrent
  return `carried from ${milliamps(carried.plateCurrent)} on ${carried.from}, ±${milliamps(half)}`
}

export const carriedSlopeText = ({ transconductance, carried }: TubeTest): string | null =>
  carried?.slope && transconductance !== null
    ? `±${figure(1000 * carried.slope.share * transconductance, 2)} mA/V`
    : null

function carriedMatchText({ marks, from, current, slope }: CarriedMatch, to: string): string {
  const rates = slope ? `current ${rateText(current)}, transconductance ${rateText(slope)}` : rateText(current)
  return `${marks.join(', ')} carried from ${from} to ${to} (${rates}, 95 %)`
}

/** A sentence or two for the statement of a match; empty: all are as read. */
export function carriedStatementText({ carried = [], instrument, apart }: MatchStatement): string {
  if (carried.length === 0) return ''
  const which = carried.map((each) => carriedMatchText(each, instrument)).join('; ')
  return ` ${which}, by reference readings on both.${apart ? ` ${apartText(apart)}` : ''}`
}

function apartText({ plateCurrent, transconductance }: NonNullable<MatchStatement['apart']>): string {
  const slope = transconductance === null ? '' : ` and ±${figure(100 * transconductance, 1)} %`
  return `Between tubes read on different instruments the differences are known to ±${milliamps(plateCurrent)}${slope} (95 %).`
}

export const referencesText = (one: string, other: string, { words }: MatchingFormat): string =>
  `Read ${REFERENCES_WANTED} reference ${words.tubes} on both ${one} and ${other}, and its reading carries over`

/** Which instrument a stock is compared on, and what of the others. Empty: one instrument. */
export function instrumentsText(uses: readonly InstrumentUse[], chosen: boolean, format: MatchingFormat): string[] {
  const [first, ...others] = uses
  if (!first || others.length === 0) return []
  const { words } = format
  const counted = (tubes: number) => `${tubes} ${tubes === 1 ? words.tube : words.tubes}`
  const why = chosen ? 'as you asked' : `which read most of them (${first.tubes})`
  const carried = others.filter((use) => use.carried > 0)
  const left = others.filter((use) => use.carried < use.tubes)
  return [
    `Readings are compared as ${first.instrument} shows them, ${why}.`,
    ...carried.map((use) => `${counted(use.carried)} read on ${use.instrument} carried over to it.`),
    ...left.map((use) => leftText(use, first.instrument, counted, format)),
  ]
}

function leftText(
  { instrument, tubes, carried, corrected }: InstrumentUse,
  to: string,
  counted: (tubes: number) => string,
  { words }: MatchingFormat,
): string {
  const what = `${counted(tubes - carried)} read on ${instrument} compared only with each other`
  return corrected
    ? `${what}: read at other points, or with a figure that no correction is known of.`
    : `${what}: read ${REFERENCES_WANTED} reference ${words.tubes} on both it and ${to} to carry them over.`
}

/** null: all of the set are as read. */
export function carriedSetText({ tubes, instrument }: Pick<SetOption, 'tubes' | 'instrument'>): string | null {
  const from = [...new Set(tubes.flatMap(({ candidate }) => candidate.test.carried?.from ?? []))].sort()
  return from.length === 0 ? null : `Carried from ${from.join(' and ')} to ${instrument}`
}
