/**
 * One piece of knowledge. Either: bottles that fulfil `when` show one of `expect`. Or: what is named in
 * `seen` was made within `era`; it then speaks for years, not for a type.
 */

import type { KnowledgeSourceKey } from '../knowledge-source'
import type { Version } from '../version'
import type { Choice, ObservationKey } from './observations'
import type { Strength } from './strength'

/** All that are given must hold; of a list any one. Empty: every version known here. */
export type When = {
  readonly typeId?: readonly string[]
  readonly notTypeId?: readonly string[]
  readonly designation?: readonly string[]
  readonly envelope?: readonly Version['envelope'][]
  readonly base?: readonly string[]
  readonly baseLetter?: readonly Version['baseLetter'][]
  readonly rugged?: readonly boolean[]
  readonly tubeClass?: readonly Version['tubeClass'][]
}

/** What the handbook says of the version itself. */
export type Fact = 'base' | 'heaterPins' | 'cathode' | 'pins'

type Piece = {
  readonly id: string
  readonly observation: ObservationKey
  readonly when: When
  /** A sentence of its own, in bench words. */
  readonly sentence: string
  readonly source: KnowledgeSourceKey
  readonly strength: Strength
}

export type ExpectRule = Piece & { readonly expect: readonly Choice[] | { readonly fact: Fact } }
export type EraRule = Piece & {
  readonly seen: readonly Choice[]
  readonly era: readonly [from: number, to: number | null]
}
export type Rule = ExpectRule | EraRule

export const isEraRule = (rule: Rule): rule is EraRule => 'era' in rule

const among = <T>(list: readonly T[] | undefined, value: T): boolean => list === undefined || list.includes(value)

export function fits(when: When, version: Version): boolean {
  return (
    among(when.typeId, version.typeId) &&
    !when.notTypeId?.includes(version.typeId) &&
    among(when.designation, version.designation) &&
    among(when.envelope, version.envelope) &&
    among(when.base, version.base) &&
    among(when.baseLetter, version.baseLetter) &&
    among(when.rugged, version.rugged) &&
    among(when.tubeClass, version.tubeClass)
  )
}

const KNOWN_HEATERS: readonly string[] = ['2-7', '2-8', '7-8', '4-5', '4-5-9', '3-4', '1-4']

function factChoices(fact: Fact, version: Version): readonly Choice[] | null {
  switch (fact) {
    case 'base':
      return [version.base]
    case 'cathode':
      return version.cathode === null ? null : [version.cathode]
    case 'heaterPins':
      return version.heaterPins === null
        ? null
        : [KNOWN_HEATERS.includes(version.heaterPins) ? version.heaterPins : 'other-pins']
    case 'pins':
      return version.pins === null
        ? null
        : ['4', '5', '6', '7', '8', '9'].filter((count) => within(Number(count), version.pins))
  }
}

const within = (value: number, range: Version['pins']): boolean =>
  range !== null && value >= range[0] && value <= range[1]

/** Null: the rule says nothing of this version. */
export function expected({ expect }: ExpectRule, version: Version): readonly Choice[] | null {
  return 'fact' in expect ? factChoices(expect.fact, version) : expect
}
