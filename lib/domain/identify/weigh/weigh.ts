/**
 * All evidence together: ln weights are added for each case and year, then turned into shares that add up
 * to one. Nothing is hidden: each summand is a reason that is shown.
 */

import type { ObservationKey } from '../knowledge/observations'
import { STRENGTHS } from '../knowledge/strength'
import type { DateReadings } from '../marks/date-code'
import { yearsOfCodes } from '../marks/date-code'
import type { Printed } from '../marks/printed'
import { type Seen, seenChoices } from '../seen'
import type { Version } from '../version'
import { type Case, knownCases, type Years } from './case'
import { atYear, type ChoiceWeights, knownWeights, type Weight } from './choice-weights'
import { printWeight, serviceWeight, spreadOf } from './print-weights'

export type Weighed = {
  readonly years: Years
  readonly cases: readonly Case[]
  /** Of each case its share in each year; all together 1. */
  readonly shares: readonly Float64Array[]
  /** The same as a sum over the years. */
  readonly caseShares: readonly number[]
  /** Of each case what the evidence made of it: ln of the weight gained, over all years. */
  readonly gained: readonly number[]
  readonly weightsOf: (key: ObservationKey, version: Version | null) => ChoiceWeights
}

/**
 * For a year by the date codes, against any year at all: a code of a one-figure year leaves many years
 * and so says less. Years it does not allow are possible, if the code was read wrongly.
 */
export function codeWeight(codes: DateReadings, years: Years): (year: number) => number {
  const allowed = yearsOfCodes(codes)
  if (allowed === null) return () => 0
  const level = Math.log(years.count / Math.max(1, allowed.length))
  return (year) => (allowed.includes(year) ? level : level - STRENGTHS.strong)
}

export type Evidence = { readonly seen: Seen; readonly printed: Printed; readonly codes: DateReadings }

export function weigh({ seen, printed, codes }: Evidence, years: Years): Weighed {
  const cases = knownCases(printed.versions, years)
  const weightsOf = (key: ObservationKey, version: Version | null) => knownWeights(key, version, years)
  const byCode = codeWeight(codes, years)
  const code = Array.from({ length: years.count }, (_, index) => byCode(years.first + index))
  const spread = spreadOf(printed.versions)
  const logs = cases.map((one) => {
    const named = printed.named.reduce((sum, each) => sum + printWeight(each, one.version, spread), 0)
    const fixed = one.prior + named + serviceWeight(printed, one)
    const looked = seenChoices(seen).flatMap(([key, choice]): Weight[] => [
      weightsOf(key, one.version).get(choice) ?? 0,
    ])
    const byYear = looked.filter((each) => typeof each !== 'number')
    const forAll = looked.reduce<number>((sum, each) => (typeof each === 'number' ? sum + each : sum), fixed)
    return one.years.map((share, index) =>
      byYear.reduce((sum, each) => sum + atYear(each, index), share + forAll + (code[index] ?? 0)),
    )
  })
  const gained = logs.map((each, at) => logOfSum(each) - (cases[at]?.prior ?? 0))
  return { years, cases, weightsOf, gained, ...sharesOf(logs) }
}

function sharesOf(logs: readonly Float64Array[]): Pick<Weighed, 'shares' | 'caseShares'> {
  const highest = logs.reduce(
    (most, each) => each.reduce((max, log) => Math.max(max, log), most),
    Number.NEGATIVE_INFINITY,
  )
  const raw = logs.map((each) => each.map((log) => Math.exp(log - highest)))
  const total = raw.reduce((sum, each) => sum + sumOf(each), 0)
  const shares = raw.map((each) => each.map((one) => one / total))
  return { shares, caseShares: shares.map(sumOf) }
}

function logOfSum(logs: Float64Array): number {
  const highest = logs.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY)
  return highest + Math.log(logs.reduce((sum, one) => sum + Math.exp(one - highest), 0))
}

const sumOf = (values: Float64Array): number => values.reduce((sum, one) => sum + one, 0)
