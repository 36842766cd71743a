/**
 * How likely each answer to a question is for a version: rules that fit it multiply,
 *   w(c) = exp(-sum of the strengths of the rules that c breaks),   P(c) = w(c) / sum of all w.
 * Naive: the rules are taken as independent. Given as ln(n P(c)), n answers: 0 says nothing,
 * above 0 speaks for the version. Where an era is involved there is one figure for each year.
 */
import { type Choice, choicesOf, type ObservationKey } from '../knowledge/observations'
import { type EraRule, type ExpectRule, expected, fits, isEraRule, type Rule } from '../knowledge/rule'
import { rulesOf } from '../knowledge/rules'
import { STRENGTHS } from '../knowledge/strength'
import type { Version } from '../version'
import type { Years } from './case'

/** One figure for all years, or one for each. */
export type Weight = number | Float64Array

export type ChoiceWeights = ReadonlyMap<Choice, Weight>

/** Of what is not known here only the years can be judged, by hints that hold for every bottle. */
export function rulesFor(key: ObservationKey, version: Version | null): readonly Rule[] {
  if (version) return rulesOf(key).filter(({ when }) => fits(when, version))
  return rulesOf(key).filter((rule) => isEraRule(rule) && Object.keys(rule.when).length === 0)
}

export function breaks(rule: ExpectRule, choice: Choice, version: Version): boolean {
  const choices = expected(rule, version)
  return choices !== null && !choices.includes(choice)
}

const outOfEra = ({ seen, era: [from, to] }: EraRule, choice: Choice, year: number): boolean =>
  seen.includes(choice) && (year < from || (to !== null && year > to))

export const atYear = (weight: Weight, index: number): number =>
  typeof weight === 'number' ? weight : (weight[index] ?? 0)

function relative(penalties: readonly number[]): number[] {
  const sum = penalties.reduce((total, penalty) => total + Math.exp(-penalty), 0)
  return penalties.map((penalty) => Math.log(penalties.length) - penalty - Math.log(sum))
}

const total = (rules: readonly Rule[]): number => rules.reduce((sum, { strength }) => sum + STRENGTHS[strength], 0)

export function choiceWeights(key: ObservationKey, version: Version | null, years: Years): ChoiceWeights {
  const choices = choicesOf(key)
  const rules = rulesFor(key, version)
  const eras = rules.filter(isEraRule)
  const broken = (choice: Choice) =>
    total(rules.filter((rule) => !isEraRule(rule) && version !== null && breaks(rule, choice, version)))
  const fixed = choices.map(broken)
  if (eras.length === 0) {
    const weights = relative(fixed)
    return new Map(choices.map((choice, at) => [choice, weights[at] ?? 0]))
  }
  const byYear = new Map(choices.map((choice) => [choice, new Float64Array(years.count)]))
  for (let index = 0; index < years.count; index += 1) {
    const late = (choice: Choice) => total(eras.filter((rule) => outOfEra(rule, choice, years.first + index)))
    const weights = relative(choices.map((choice, at) => (fixed[at] ?? 0) + late(choice)))
    for (const [at, choice] of choices.entries()) byYear.get(choice)?.fill(weights[at] ?? 0, index, index + 1)
  }
  return byYear
}

const NONE_KNOWN = {}
const KNOWN = new WeakMap<object, Map<string, ChoiceWeights>>()

/** The same, worked out once for a version: it depends on nothing that was seen. */
export function knownWeights(key: ObservationKey, version: Version | null, years: Years): ChoiceWeights {
  const own = KNOWN.get(version ?? NONE_KNOWN) ?? new Map<string, ChoiceWeights>()
  KNOWN.set(version ?? NONE_KNOWN, own)
  const name = `${key} ${years.count}`
  const weights = own.get(name) ?? choiceWeights(key, version, years)
  own.set(name, weights)
  return weights
}
