/** Why a version gained or lost: one entry for each thing told, with the rules behind it and its weight. */
import type { Remark } from './designation/designation-reading'
import { type Choice, choicesOf, choiceWord, OBSERVATIONS, type ObservationKey } from './knowledge/observations'
import { type EraRule, type ExpectRule, expected, isEraRule, type Rule } from './knowledge/rule'
import { CONTRADICTS, STRENGTHS } from './knowledge/strength'
import { type DateReadings, yearsOfCodes } from './marks/date-code'
import type { Named } from './marks/named'
import type { Printed } from './marks/printed'
import { seenChoices } from './seen'
import type { Version, VersionYears } from './version'
import type { Case } from './weigh/case'
import { atYear, breaks, rulesFor, type Weight } from './weigh/choice-weights'
import { type PrintFit, printFit, printWeight, type Spread, serviceWeight, spreadOf } from './weigh/print-weights'
import type { Evidence, Weighed } from './weigh/weigh'

export type Reason = {
  /** "Bulb", "Print", "Date code". */
  readonly about: string
  /** A hint to the years weighs little for the version. */
  readonly speaksFor: 'version' | 'years'
  /** What was told: "metal can". */
  readonly told: string
  readonly why: readonly Remark[]
  /** ln of a likelihood ratio; above 0 speaks for it. */
  readonly weight: number
  /** Strong enough to be called a contradiction. */
  readonly contradicts: boolean
}

const PRINT_WORDS: Readonly<Record<PrintFit, string>> = {
  named: 'The print names it.',
  'suffix-left-off':
    'The print gives the number without its letters. By the scheme that is another version; today the letters are often left off.',
  'other-version': 'The print names another version of this type.',
  'other-type': 'The print names another type.',
  'number-not-known': 'The number is none of those known here.',
  'nothing-known': 'The number is none of those known here, and so may be the bottle.',
}

const DISAGREES: ReadonlySet<PrintFit> = new Set(['other-version', 'other-type', 'number-not-known'])

function printReason(named: Named, version: Version | null, spread: Spread): Reason {
  const fit = printFit(named, version)
  return {
    about: named.from === 'print' ? 'Print' : named.from === 'codes' ? 'Codes' : 'Etched code',
    speaksFor: 'version',
    told: named.reading.asked,
    why: [{ sentence: PRINT_WORDS[fit], source: 'practice' }],
    weight: printWeight(named, version, spread),
    contradicts: version !== null && DISAGREES.has(fit),
  }
}

function serviceReasons(printed: Printed, one: Case): Reason[] {
  const weight = serviceWeight(printed, one)
  if (weight === 0) return []
  const sentence =
    printed.services.size > 0 ? 'A service mark of another kind was told.' : 'No service mark was told; marks rub off.'
  const why: Remark[] = [{ sentence, source: 'practice' }]
  return [{ about: 'Service', speaksFor: 'version', told: 'marks', why, weight, contradicts: false }]
}

const remarkOf = ({ sentence, source }: Rule): Remark => ({ sentence, source })

const isAbout = ({ seen }: EraRule, choice: Choice): boolean => seen.includes(choice)

const isBroken = (rule: Rule, choice: Choice, version: Version | null): boolean =>
  !isEraRule(rule) && version !== null && breaks(rule, choice, version)

/** A rule that allows most answers is no reason when one of them comes. */
function narrows(rule: ExpectRule, key: ObservationKey, version: Version): boolean {
  const choices = expected(rule, version)
  return choices !== null && choices.length <= choicesOf(key).length / 2
}

/** Rules that the answer breaks speak first; where it breaks none, those it fulfils. */
function choiceRules(key: ObservationKey, choice: Choice, version: Version | null): readonly Rule[] {
  const rules = rulesFor(key, version)
  const eras = rules.filter(isEraRule).filter((rule) => isAbout(rule, choice))
  const fixed = rules.filter((rule) => !isEraRule(rule))
  const broken = fixed.filter((rule) => isBroken(rule, choice, version))
  const telling = fixed.filter((rule) => !isEraRule(rule) && version !== null && narrows(rule, key, version))
  return [...(broken.length > 0 ? broken : telling), ...eras]
}

const expectedWeight = (weight: Weight, years: Float64Array): number =>
  typeof weight === 'number'
    ? weight
    : Math.log(years.reduce((sum, share, index) => sum + Math.exp(share + atYear(weight, index)), 0))

function choiceReason(key: ObservationKey, choice: Choice, one: Case, weighed: Weighed): Reason {
  const { version } = one
  const rules = choiceRules(key, choice, version)
  const against = rules.filter((rule) => isBroken(rule, choice, version)).map(({ strength }) => STRENGTHS[strength])
  return {
    about: OBSERVATIONS[key].label,
    speaksFor: rules.length > 0 && rules.every(isEraRule) ? 'years' : 'version',
    told: choiceWord(key, choice),
    why: rules.map(remarkOf),
    weight: expectedWeight(weighed.weightsOf(key, version).get(choice) ?? 0, one.years),
    contradicts: against.reduce((sum, strength) => sum + strength, 0) >= CONTRADICTS,
  }
}

const outsideOf = (year: number, { from, to }: VersionYears): boolean => year < from || (to !== null && year > to)

/** Every year that the codes allow lies outside those of the version. */
function excluded(codes: DateReadings, version: Version | null): boolean {
  const made = version?.years
  const allowed = yearsOfCodes(codes)
  return made ? (allowed?.every((year) => outsideOf(year, made)) ?? false) : false
}

/**
 * What the years add: the whole weight of the case less that of the other reasons. It holds the date codes and
 * how well several hints agree on a year.
 */
function yearReason(reasons: readonly Reason[], { codes }: Evidence, one: Case, joint: number): Reason[] {
  const weight = joint - reasons.reduce((sum, each) => sum + each.weight, 0)
  if (codes.readings.length === 0 && Math.abs(weight) < 0.05) return []
  const why = codes.readings.map(({ sentence, source }): Remark => ({ sentence, source }))
  const made = one.version?.years
  const since: Remark[] = made ? [{ sentence: `Not made before about ${made.from}.`, source: made.source }] : []
  return [
    {
      ...{ about: 'Years', speaksFor: 'years', weight, why: [...why, ...since] },
      told: codes.readings.length > 0 ? 'date code' : 'all hints together',
      contradicts: excluded(codes, one.version),
    },
  ]
}

/** All reasons of a case; their weights add up to what the evidence made of it. `joint` is that sum. */
export function reasonsOf(one: Case, evidence: Evidence, weighed: Weighed, joint: number): readonly Reason[] {
  const spread = spreadOf(evidence.printed.versions)
  const reasons = [
    ...evidence.printed.named.map((named) => printReason(named, one.version, spread)),
    ...serviceReasons(evidence.printed, one),
    ...seenChoices(evidence.seen).map(([key, choice]) => choiceReason(key, choice, one, weighed)),
  ]
  return [...reasons, ...yearReason(reasons, evidence, one, joint)]
}
