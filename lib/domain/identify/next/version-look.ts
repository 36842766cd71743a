/** What a look would settle of the version. */
import { choicesOf, choiceWord, OBSERVATIONS, type ObservationKey } from '../knowledge/observations'
import { atYear, type Weight } from '../weigh/choice-weights'
import type { Weighed } from '../weigh/weigh'
import { looked, type NextLook, type Split } from './look'
import { leadingVersion, type VersionGroups } from './version-groups'

export const probability = (weight: Weight, index: number, choices: number): number =>
  Math.exp(atYear(weight, index)) / choices

/** Share of a case that answers so, over all years. */
function answering(shares: Float64Array, whole: number, weight: Weight, choices: number): number {
  if (typeof weight === 'number') return whole * probability(weight, 0, choices)
  return shares.reduce((total, one, index) => total + one * probability(weight, index, choices), 0)
}

export function versionLook(key: ObservationKey, weighed: Weighed, groups: VersionGroups): NextLook {
  const choices = choicesOf(key)
  const weights = weighed.cases.map(({ version }) => weighed.weightsOf(key, version))
  const splits = choices.map((choice): Split => {
    const perCase = weights.map((ofCase, at) => {
      const weight = ofCase.get(choice) ?? 0
      return answering(weighed.shares[at] ?? new Float64Array(), weighed.caseShares[at] ?? 0, weight, choices.length)
    })
    return { choice, word: choiceWord(key, choice), parts: groups.gathered(perCase) }
  })
  const { label, question } = OBSERVATIONS[key]
  const leader = (parts: readonly number[]) => leadingVersion(groups, parts)
  return looked({ ...{ key, label, question, splits, leader }, settles: 'version', now: groups.shares })
}
