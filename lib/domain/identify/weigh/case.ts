/**
 * One thing the bottle can be: a version in a service, or none of those known here; with its weight
 * before anything is seen, spread over the years in which it can have been made.
 */
import { PRIOR_UNKNOWN, SERVICE_WEIGHT, STANDING_WEIGHT } from '../knowledge/priors'
import { STRENGTHS } from '../knowledge/strength'
import { SERVICE_YEARS } from '../knowledge/version-years'
import type { ServiceNumber, Version } from '../version'

export type Case = {
  /** Null: none of those known here. */
  readonly version: Version | null
  readonly service: ServiceNumber | null
  /** ln of the weight before anything is seen. */
  readonly prior: number
  /** ln of the share of each year, in the order of `Years`. */
  readonly years: Float64Array
}

/** Years from 1925, before the first type here, to this one. */
export type Years = { readonly first: number; readonly count: number }
export const yearsUpTo = (thisYear: number): Years => ({ first: 1925, count: thisYear - 1924 })

type Bounds = { readonly from: number | null; readonly to: number | null }

/** A year outside is possible, since the bounds are recalled or differ between pages, but strongly unlikely. */
const outside = (year: number, { from, to }: Bounds): number =>
  (from !== null && year < from) || (to !== null && year > to) ? STRENGTHS.strong : 0

export function logShares(penalties: readonly number[]): Float64Array {
  const sum = penalties.reduce((total, penalty) => total + Math.exp(-penalty), 0)
  return Float64Array.from(penalties, (penalty) => -penalty - Math.log(sum))
}

function yearShares(bounds: readonly Bounds[], { first, count }: Years): Float64Array {
  const penalty = (year: number) => bounds.reduce((sum, one) => sum + outside(year, one), 0)
  return logShares(Array.from({ length: count }, (_, index) => penalty(first + index)))
}

const UNBOUND: Bounds = { from: null, to: null }

export function casesOf(versions: readonly Version[], years: Years): Case[] {
  const types = new Set(versions.map(({ typeId }) => typeId))
  const ofType = (typeId: string) => versions.filter((one) => one.typeId === typeId)
  const perType = (1 - PRIOR_UNKNOWN) / types.size
  const known = [...types].flatMap((typeId) => casesOfType(ofType(typeId), perType, years))
  const unknown: Case = { version: null, service: null, prior: Math.log(PRIOR_UNKNOWN), years: yearShares([], years) }
  return [...known, unknown]
}

function casesOfType(versions: readonly Version[], weight: number, years: Years): Case[] {
  const each = versions.flatMap((version) => version.services.map((service) => ({ version, service })))
  const weights = each.map(
    ({ version, service }) => STANDING_WEIGHT[version.standing] * SERVICE_WEIGHT[service.service],
  )
  const total = weights.reduce((sum, one) => sum + one, 0)
  return each.map(({ version, service }, index) => ({
    ...{ version, service },
    prior: Math.log((weight * (weights[index] ?? 0)) / total),
    years: yearShares([version.years ?? UNBOUND, SERVICE_YEARS[service.service]], years),
  }))
}

const KNOWN = new WeakMap<readonly Version[], Map<number, readonly Case[]>>()

/** The same, worked out once for a list of versions. */
export function knownCases(versions: readonly Version[], years: Years): readonly Case[] {
  const own = KNOWN.get(versions) ?? new Map<number, readonly Case[]>()
  KNOWN.set(versions, own)
  const cases = own.get(years.count) ?? casesOf(versions, years)
  own.set(years.count, cases)
  return cases
}
