/**
 * Where the label and the construction, or two marks, exclude each other. Only what the print names is
 * held against what was seen: with nothing printed there is no label to contradict.
 */
import type { Remark } from './designation/designation-reading'
import { type Choice, choiceWord, OBSERVATIONS, type ObservationKey } from './knowledge/observations'
import { isEraRule, type Rule } from './knowledge/rule'
import { CONTRADICTS, STRENGTHS } from './knowledge/strength'
import { yearsOfCodes } from './marks/date-code'
import type { Named } from './marks/named'
import { seenChoices } from './seen'
import type { Version } from './version'
import { breaks, rulesFor } from './weigh/choice-weights'
import type { Evidence } from './weigh/weigh'

const MARKS: Readonly<Record<Named['from'], string>> = {
  print: 'The print says',
  codes: 'The codes say',
  date: 'The etched code is of the',
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)

/**
 * Versions the mark names. A number without its suffix may mean every version of its stem, and one that is not
 * listed every version of its type.
 */
function versionsOf(named: Named, versions: readonly Version[]): Version[] {
  if (named.bareStem !== null) return versions.filter(({ stem }) => stem === named.bareStem)
  if (named.versions.size > 0) return versions.filter(({ designation }) => named.versions.has(designation))
  return versions.filter(({ typeId }) => named.types.has(typeId))
}

const brokenRules = (version: Version, key: ObservationKey, choice: Choice): readonly Rule[] =>
  rulesFor(key, version).filter(
    (rule) => !isEraRule(rule) && STRENGTHS[rule.strength] >= CONTRADICTS && breaks(rule, choice, version),
  )

/** Null where one of the versions named fits. */
function misfit(named: Named, meant: readonly Version[], key: ObservationKey, choice: Choice): Remark | null {
  const broken = meant.map((version) => brokenRules(version, key, choice))
  const rule = broken[0]?.[0]
  if (!rule || broken.some((rules) => rules.length === 0)) return null
  const seen = `${lowerFirst(OBSERVATIONS[key].label)}: ${choiceWord(key, choice)}`
  return {
    sentence: `${MARKS[named.from]} ${named.reading.asked}: ${rule.sentence} But seen, ${seen}.`,
    source: rule.source,
  }
}

function constructionMisfits({ seen, printed }: Evidence): Remark[] {
  return printed.named.flatMap((named) => {
    const meant = versionsOf(named, printed.versions)
    return seenChoices(seen).flatMap(([key, choice]) => misfit(named, meant, key, choice) ?? [])
  })
}

/** Two marks that name no version in common. */
function markMisfits({ printed: { named } }: Evidence): Remark[] {
  return named.flatMap((one, at) =>
    named.slice(at + 1).flatMap((other): Remark[] => {
      if (one.versions.size === 0 || other.versions.size === 0) return []
      if ([...one.versions].some((each) => other.versions.has(each))) return []
      if (isTypeOnly(one, other)) return []
      const source = other.from === 'date' ? other.basis : one.basis
      const sentence = `${MARKS[one.from]} ${one.reading.asked}, ${lowerFirst(MARKS[other.from])} ${other.reading.asked}${meaning(other)}${FROM[source] ?? ''}: not the same version.`
      return [{ sentence, source }]
    }),
  )
}

/** An etched type code names the type; a print of another number of that type agrees with it. */
const isTypeOnly = (one: Named, other: Named): boolean =>
  (one.from === 'date' || other.from === 'date') && [...one.types].some((type) => other.types.has(type))

function meaning({ versions, reading }: Named): string {
  const names = [...versions].filter((designation) => designation !== reading.asked)
  return names.length > 0 ? `, which is the ${names.join(' or ')}` : ''
}

const FROM: Readonly<Record<string, string>> = {
  memory: ' (from memory)',
}

function yearMisfits({ printed, codes }: Evidence): Remark[] {
  const years = yearsOfCodes(codes)
  if (years === null) return []
  if (years.length === 0)
    return [{ sentence: 'The date codes exclude each other: no year is left.', source: 'practice' }]
  return printed.named.flatMap((named): Remark[] => {
    const meant = versionsOf(named, printed.versions)
    const starts = meant.flatMap(({ years: made }) => made ?? [])
    const first = Math.min(...starts.map(({ from }) => from))
    if (starts.length < meant.length || starts.length === 0 || years.some((year) => year >= first)) return []
    const source = starts[0]?.source ?? 'memory'
    const sentence = `${MARKS[named.from]} ${named.reading.asked}, not made before about ${first}${FROM[source] ?? ''}; the date code allows ${years.join(', ')} at most.`
    return [{ sentence, source }]
  })
}

export const contradictionsOf = (evidence: Evidence): readonly Remark[] => [
  ...constructionMisfits(evidence),
  ...markMisfits(evidence),
  ...yearMisfits(evidence),
]
