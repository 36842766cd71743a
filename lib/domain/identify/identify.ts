/**
 * What a bottle can be, from whatever was told of it.
 *
 * Each version in each service, and "none known here", is weighed by open rules (knowledge/): ln weights are
 * added as if the rules were independent, which they are not; so the shares order the list and are no
 * probability of being real. The answer is consistent, contradictory or unknown, never more.
 */
import type { TubeCatalogue } from '../tube/tube-catalogue'
import { contradictionsOf } from './contradictions'
import type { DesignationReading, Remark } from './designation/designation-reading'
import { likelyYears, type YearSpan } from './likely-years'
import { type DateReadings, readDateCode } from './marks/date-code'
import { withEtchedPrint } from './marks/etched-print'
import { factoryMarkRemark, sourceCodeRemark } from './marks/maker-remarks'
import { readPrinted } from './marks/printed'
import type { NextLook } from './next/look'
import { nextLook } from './next/next-look'
import { type Reason, reasonsOf } from './reason'
import type { OwnMaker, Seen } from './seen'
import { seenRemarks } from './seen-remarks'
import type { ServiceNumber, Version } from './version'
import { yearsUpTo } from './weigh/case'
import { type Evidence, type Weighed, weigh } from './weigh/weigh'

export type State = 'consistent' | 'contradictory' | 'unknown'

export type LikelyService = ServiceNumber & { readonly share: number }

export type Candidate = {
  /** Null: none of those known here. */
  readonly version: Version | null
  /** Of all that is weighed here; all together 1. */
  readonly share: number
  readonly state: State
  /** The likeliest first; together the share of the version. */
  readonly services: readonly LikelyService[]
  readonly years: readonly YearSpan[]
  /** The heaviest first. */
  readonly reasonsFor: readonly Reason[]
  readonly reasonsAgainst: readonly Reason[]
  /** What was told of its age. */
  readonly yearHints: readonly Reason[]
}

export type Identification = {
  /** Of the label against the construction. */
  readonly state: State
  readonly contradictions: readonly Remark[]
  readonly remarks: readonly Remark[]
  readonly readings: readonly DesignationReading[]
  readonly codes: DateReadings
  readonly ranked: readonly Candidate[]
  /** Of the versions not listed. */
  readonly restShare: number
  readonly next: NextLook | null
  readonly thisYear: number
}

export type Given = {
  readonly catalogue: TubeCatalogue
  readonly makers: readonly OwnMaker[]
  readonly thisYear: number
}

const MOST_LISTED = 8
/** Less than this is not listed, so that a settled case reads as one. */
const LEAST_LISTED = 0.005
/** A reason below is no reason. */
const TELLING = 0.2

function stateOf(version: Version | null, reasons: readonly Reason[]): State {
  if (version === null) return 'unknown'
  if (reasons.some(({ contradicts }) => contradicts)) return 'contradictory'
  return reasons.some(({ weight, speaksFor }) => speaksFor === 'version' && weight > TELLING) ? 'consistent' : 'unknown'
}

type Place = { readonly at: number; readonly share: number }

function sorted(reasons: readonly Reason[]): Pick<Candidate, 'reasonsFor' | 'reasonsAgainst' | 'yearHints'> {
  const isAgainst = ({ weight, contradicts, speaksFor }: Reason) =>
    contradicts || (speaksFor === 'version' && weight < -TELLING)
  const isFor = (reason: Reason) => !isAgainst(reason) && reason.speaksFor === 'version' && reason.weight > TELLING
  return {
    reasonsFor: reasons.filter(isFor).sort((a, b) => b.weight - a.weight),
    reasonsAgainst: reasons.filter(isAgainst).sort((a, b) => a.weight - b.weight),
    yearHints: reasons.filter((reason) => reason.speaksFor === 'years' && !isAgainst(reason)),
  }
}

function candidate(version: Version | null, places: readonly Place[], evidence: Evidence, weighed: Weighed): Candidate {
  const ordered = [...places].sort((a, b) => b.share - a.share)
  const best = ordered[0]?.at ?? 0
  const one = weighed.cases[best]
  if (!one) throw new Error(`No case stands at ${best} of ${weighed.cases.length}`)
  const reasons = reasonsOf(one, evidence, weighed, weighed.gained[best] ?? 0)
  return {
    version,
    share: ordered.reduce((sum, { share }) => sum + share, 0),
    state: stateOf(version, reasons),
    services: ordered.flatMap(({ at, share }) => {
      const service = weighed.cases[at]?.service
      return service ? [{ ...service, share }] : []
    }),
    years: likelyYears(weighed.shares[best] ?? [], weighed.years.first),
    ...sorted(reasons),
  }
}

function rank(evidence: Evidence, weighed: Weighed): Candidate[] {
  const places = new Map<string | null, Place[]>()
  const versions = new Map<string | null, Version | null>()
  for (const [at, { version }] of weighed.cases.entries()) {
    const name = version?.designation ?? null
    versions.set(name, version)
    places.set(name, [...(places.get(name) ?? []), { at, share: weighed.caseShares[at] ?? 0 }])
  }
  const shareOf = (name: string | null) => (places.get(name) ?? []).reduce((sum, { share }) => sum + share, 0)
  return [...versions]
    .map(([name, version]) => ({ name, version, share: shareOf(name) }))
    .sort((a, b) => b.share - a.share)
    .filter(({ share }, at) => at < MOST_LISTED && share >= LEAST_LISTED)
    .map(({ name, version }) => candidate(version, places.get(name) ?? [], evidence, weighed))
}

/** A print that leaves the suffix off leaves the version open, so nothing is confirmed by it. */
function overall(contradictions: readonly Remark[], { printed, seen }: Evidence, ranked: readonly Candidate[]): State {
  if (contradictions.length > 0) return 'contradictory'
  const leader = ranked[0]
  const hasBody = Object.keys(seen.choices).length > 0
  const isNamed = printed.named.some(({ versions }) => versions.has(leader?.version?.designation ?? ''))
  return leader && hasBody && isNamed ? leader.state : 'unknown'
}

function markRemarks({ readings }: DateReadings, makers: readonly OwnMaker[]): Remark[] {
  return readings.flatMap(({ sourceCode, factoryMark }) => [
    ...(sourceCode ? [sourceCodeRemark(sourceCode, makers)] : []),
    ...(factoryMark ? [factoryMarkRemark(factoryMark, makers)] : []),
  ])
}

export function identify(told: Seen, { catalogue, makers, thisYear }: Given): Identification {
  const seen = withEtchedPrint(told, catalogue)
  const printed = readPrinted(seen, catalogue, makers)
  const codes = readDateCode(seen.date)
  const evidence: Evidence = { seen, printed, codes }
  const weighed = weigh(evidence, yearsUpTo(thisYear))
  const ranked = rank(evidence, weighed)
  const contradictions = contradictionsOf(evidence)
  return {
    ...{ contradictions, codes, ranked, thisYear },
    state: overall(contradictions, evidence, ranked),
    remarks: [...seenRemarks(seen), ...printed.remarks, ...codes.remarks, ...markRemarks(codes, makers)],
    readings: printed.named.flatMap(({ reading }) => [reading, ...reading.alsoNamed]),
    restShare: Math.max(0, 1 - ranked.reduce((sum, { share }) => sum + share, 0)),
    // By what was told: a code in the box of the print answers that box.
    next: nextLook(told, weighed),
  }
}
