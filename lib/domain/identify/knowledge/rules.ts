/** All rules, by what is looked at. */
import { ENVELOPE_RULES } from './envelope-rules'
import { ERA_RULES } from './era-rules'
import { OBSERVATION_KEYS, type ObservationKey } from './observations'
import type { Rule } from './rule'
import { WORKS_RULES } from './works-rules'

export const RULES: readonly Rule[] = [...ENVELOPE_RULES, ...WORKS_RULES, ...ERA_RULES]

const BY_OBSERVATION: ReadonlyMap<ObservationKey, readonly Rule[]> = new Map(
  OBSERVATION_KEYS.map((key) => [key, RULES.filter(({ observation }) => observation === key)]),
)

export const rulesOf = (key: ObservationKey): readonly Rule[] => BY_OBSERVATION.get(key) ?? []
