/**
 * Laws of the weighing, by generated bottles: Bayes' rule and Shannon's mutual information, each computed here
 * another way than in the program.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ERA_RULES } from '@/lib/domain/identify/knowledge/era-rules'
import {
  choicesOf,
  isChoice,
  OBSERVATION_KEYS,
  OBSERVATIONS,
  type ObservationKey,
} from '@/lib/domain/identify/knowledge/observations'
import { fits, isEraRule } from '@/lib/domain/identify/knowledge/rule'
import { RULES } from '@/lib/domain/identify/knowledge/rules'
import { STRENGTHS } from '@/lib/domain/identify/knowledge/strength'
import { KNOWLEDGE_SOURCES } from '@/lib/domain/identify/knowledge-source'
import { readDateCode } from '@/lib/domain/identify/marks/date-code'
import { readPrinted } from '@/lib/domain/identify/marks/printed'
import { NOTHING_SEEN, type Seen } from '@/lib/domain/identify/seen'
import { knownVersions } from '@/lib/domain/identify/versions'
import { yearsUpTo } from '@/lib/domain/identify/weigh/case'
import { atYear, choiceWeights } from '@/lib/domain/identify/weigh/choice-weights'
import { weigh } from '@/lib/domain/identify/weigh/weigh'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import { candidate, told } from './told'

const choices = fc
  .record(
    Object.fromEntries(OBSERVATION_KEYS.map((key) => [key, fc.constantFrom(...choicesOf(key))])) as Record<
      ObservationKey,
      fc.Arbitrary<string>
    >,
    { requiredKeys: [] },
  )
  .map((given) => Object.fromEntries(Object.entries(given).filter(([, choice]) => choice !== undefined)))
const bottle: fc.Arbitrary<Seen> = fc.record({
  print: fc.constantFrom('', '6V6GT', '6V6', 'EL34', 'VT-107A', 'JAN 5881', '6П6С', 'wibble', '9ZZ9'),
  codes: fc.constantFrom('', 'CV511', '188', 'JAN'),
  date: fc.constantFrom('', '5-32', 'B0D', '1957', 'F92 B0D'),
  other: fc.constant(''),
  choices,
  skipped: fc.constantFrom([], ['print'] as const, ['date', 'base'] as const),
})

const weighed = (seen: Seen) =>
  weigh({ seen, printed: readPrinted(seen, HANDBOOK_ONLY, []), codes: readDateCode(seen.date) }, yearsUpTo(2025))

describe('knowledge', () => {
  test('every rule has an id of its own, choices that exist and a source', () => {
    expect(new Set(RULES.map(({ id }) => id)).size).toBe(RULES.length)
    for (const rule of RULES) {
      const named = isEraRule(rule) ? rule.seen : 'fact' in rule.expect ? [] : rule.expect
      for (const choice of named)
        expect([rule.id, choice, isChoice(rule.observation, choice)]).toEqual([rule.id, choice, true])
      expect(Object.keys(KNOWLEDGE_SOURCES)).toContain(rule.source)
      expect(rule.sentence).toMatch(/^[A-Z%].*\.$/)
    }
  })

  test('rules of common practice and from memory are marked, and the suffix rules are published', () => {
    const source = (id: string) => RULES.find((rule) => rule.id === id)?.source
    expect(['g-is-shouldered', 'gt-is-tubular', 'y-is-brown', 'x-is-ceramic'].map(source)).toEqual([
      'retma',
      'retma',
      'retma',
      'retma',
    ])
    expect([source('no-suffix-is-metal'), source('getter-d')]).toEqual(['memory', 'practice'])
  })

  test('a rule that names types or versions names known ones', () => {
    const versions = knownVersions(HANDBOOK_ONLY)
    for (const { id, when } of RULES) {
      for (const typeId of [...(when.typeId ?? []), ...(when.notTypeId ?? [])])
        expect([id, typeId, versions.some((one) => one.typeId === typeId)]).toEqual([id, typeId, true])
      for (const designation of when.designation ?? [])
        expect([id, designation, versions.some((one) => one.designation === designation)]).toEqual([
          id,
          designation,
          true,
        ])
    }
  })

  // Outline letters (from memory): the figure is the greatest diameter in eighths of an inch.
  test('the millimetres of every bulb are its figure in eighths of an inch', () => {
    const words: Readonly<Record<string, string>> = OBSERVATIONS.bulb.choices
    for (const name of ['T-5½', 'T-6½', 'T-9', 'ST-12', 'ST-14', 'ST-16', 'ST-19']) {
      const eighths = Number(name.replace(/^\D+/, '').replace('½', '.5'))
      const told = Number(/about (\d+) mm/.exec(words[name] ?? '')?.[1])
      expect([name, Math.abs(told - (eighths * 25.4) / 8) <= 0.6]).toEqual([name, true])
    }
  })

  test('no drawing-room words: every question is a question or an order', () => {
    for (const key of OBSERVATION_KEYS) expect(OBSERVATIONS[key].question).toMatch(/[?.]$/)
  })

  test('each of the handbook’s numbers leads to one version or service here', () => {
    for (const { designation } of knownVersions(HANDBOOK_ONLY)) {
      const { cases, caseShares } = weighed({ ...NOTHING_SEEN, print: designation })
      const best = cases[caseShares.indexOf(Math.max(...caseShares))]
      expect([designation, best?.version?.designation]).toEqual([designation, designation])
    }
  })
})

/** Common practice and memory: getters, smoked and sprayed glass, collar and coin bases, long and short plates. */
test('every hint to the years weighs each year of its span more than any year outside, and none decides', () => {
  const years = yearsUpTo(2025)
  for (const { id, observation, when, seen, era } of ERA_RULES) {
    const version = knownVersions(HANDBOOK_ONLY).find((one) => fits(when, one))
    for (const choice of seen) {
      const weight = choiceWeights(observation, version ?? null, years).get(choice) ?? 0
      const [inside, outside] = [[], []] as [number[], number[]]
      for (let index = 0; index < years.count; index += 1) {
        const year = years.first + index
        if (year < (version?.years?.from ?? years.first)) continue
        const isInside = year >= era[0] && (era[1] === null || year <= era[1])
        ;(isInside ? inside : outside).push(atYear(weight, index))
      }
      expect([id, outside.length > 0 && Math.min(...inside) > Math.max(...outside)]).toEqual([id, true])
      expect([id, Math.max(...inside) - Math.min(...outside) < STRENGTHS.decides]).toEqual([id, true])
    }
  }
})

describe('weighing', () => {
  test('the shares of all cases and years add up to 1, none below 0', () => {
    fc.assert(
      fc.property(bottle, (seen) => {
        const { shares, caseShares } = weighed(seen)
        expect(caseShares.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9)
        expect(shares.every((years) => years.every((share) => share >= 0))).toBe(true)
      }),
      { numRuns: 12 },
    )
  })

  test('the likelihoods of the answers to one question add up to 1 for every version and year', () => {
    const years = weighed(NOTHING_SEEN)
    for (const key of OBSERVATION_KEYS)
      for (const { version } of years.cases.filter((_, at) => at % 7 === 0)) {
        const weights = [...years.weightsOf(key, version).values()]
        for (const index of [0, 12, 30, 60, 100]) {
          const sum = weights.reduce<number>((total, one) => total + Math.exp(atYear(one, index)) / weights.length, 0)
          expect(sum).toBeCloseTo(1, 9)
        }
      }
  })

  // Worked by hand: 6V6 and 6V6GT start alike. A can on a 6V6: 1 of 1 + 8/1000 + 2/10^6; on a 6V6GT 1/1000 of the same.
  test('a metal can moves 6V6 against 6V6GT by 1000 to 1', () => {
    const shares = (seen: Partial<Seen>) => {
      const { cases, caseShares } = weighed({ ...NOTHING_SEEN, ...seen })
      const of = (name: string) =>
        cases.reduce((sum, { version }, at) => sum + (version?.designation === name ? (caseShares[at] ?? 0) : 0), 0)
      return of('6V6') / of('6V6GT')
    }
    expect(shares({})).toBeCloseTo(1, 9)
    expect(shares({ choices: { bulb: 'metal' } })).toBeCloseTo(1000, 6)
  })

  test('Bayes one after the other: what is learned does not depend on the order of telling', () => {
    const one = told({ print: '6L6', choices: { bulb: 'T-12', baseMaterial: 'brown', micas: 'three' } })
    const other = told({ choices: { micas: 'three', baseMaterial: 'brown', bulb: 'T-12' }, print: '6L6' })
    expect(one).toEqual(other)
  })

  test('reasons are the whole account: the odds of two versions are exp of their difference, given equal odds at first', () => {
    const found = told({ print: '6V6GT', choices: { bulb: 'metal', base: 'octal', getterPlace: 'unseen' } })
    const sum = (designation: string) => {
      const { cases, gained } = weighed({
        ...NOTHING_SEEN,
        print: '6V6GT',
        choices: { bulb: 'metal', base: 'octal', getterPlace: 'unseen' },
      })
      return gained[cases.findIndex(({ version }) => version?.designation === designation)] ?? Number.NaN
    }
    const odds = candidate(found, '6V6').share / candidate(found, '6V6GT').share
    expect(Math.log(odds)).toBeCloseTo(sum('6V6') - sum('6V6GT'), 6)
    const shown = (designation: string) => {
      const { reasonsFor, reasonsAgainst, yearHints } = candidate(found, designation)
      return [...reasonsFor, ...reasonsAgainst, ...yearHints].reduce((total, { weight }) => total + weight, 0)
    }
    expect(shown('6V6')).toBeCloseTo(sum('6V6'), 6)
    expect(shown('6V6GT')).toBeCloseTo(sum('6V6GT'), 6)
  })

  test('whatever is told, a bottle with a contradiction is called contradictory and nothing is called genuine', () => {
    fc.assert(
      fc.property(bottle, (seen) => {
        const found = told(seen)
        if (found.contradictions.length > 0) expect(found.state).toBe('contradictory')
        expect(JSON.stringify(found)).not.toMatch(/genuine|authentic/i)
      }),
      { numRuns: 12 },
    )
  })
})

describe('the next look', () => {
  /** I(X; A) = sum of p(x,a) ln(p(x,a) / (p(x) p(a))), in bits; over versions. */
  function mutualInformation({ cases, shares, weightsOf }: ReturnType<typeof weighed>, key: ObservationKey): number {
    const joint = new Map<string, number>()
    const [byVersion, byChoice] = [new Map<string, number>(), new Map<string, number>()]
    const add = (map: Map<string, number>, name: string, value: number) => map.set(name, (map.get(name) ?? 0) + value)
    for (const [at, { version }] of cases.entries())
      for (const [choice, weight] of weightsOf(key, version))
        for (const [index, share] of (shares[at] ?? []).entries()) {
          const p = (share * Math.exp(atYear(weight, index))) / choicesOf(key).length
          add(joint, `${version?.designation}|${choice}`, p)
          add(byVersion, `${version?.designation}`, p)
          add(byChoice, choice, p)
        }
    return [...joint].reduce((bits, [name, p]) => {
      const [version = '', choice = ''] = name.split('|')
      return p > 0 ? bits + p * Math.log2(p / ((byVersion.get(version) ?? 0) * (byChoice.get(choice) ?? 0))) : bits
    }, 0)
  }

  test.each([
    [{}],
    [{ choices: { base: 'octal' } }],
    [{ choices: { base: 'octal', bulb: 'T-9' } }],
    [{ choices: { base: 'noval', heaterPins: '4-5-9' } }],
  ] as const)(
    'with the print gone and %j: it is the look of the greatest mutual information, of just those bits',
    (given) => {
      const seen: Seen = { ...NOTHING_SEEN, ...given, skipped: ['print'] }
      const { next } = told(seen)
      const open = OBSERVATION_KEYS.filter((key) => seen.choices[key] === undefined)
      const now = weighed(seen)
      const best = Math.max(...open.map((key) => mutualInformation(now, key)))
      expect(next?.settles).toBe('version')
      expect(next?.bits).toBeCloseTo(best, 6)
      expect(mutualInformation(now, next?.key as ObservationKey)).toBeCloseTo(best, 6)
    },
  )

  test('what each answer would mean comes true: following an answer gives the version and share it named', () => {
    const seen: Seen = { ...NOTHING_SEEN, print: '6V6GT', choices: { bulb: 'metal' } }
    const { next } = told(seen)
    if (!next || next.key === 'print' || next.key === 'date') return expect.fail('no look by eye')
    for (const { choice, leads, share } of next.answers) {
      const after = told({ ...seen, choices: { ...seen.choices, [next.key]: choice } })
      expect(after.ranked[0]?.version?.designation).toBe(leads)
      expect(after.ranked[0]?.share).toBeCloseTo(share, 9)
    }
    expect(next.answers.length).toBeGreaterThan(2)
  })

  test('with nothing told, reading the print comes first; told it cannot be read, it is not asked again', () => {
    expect(told({}).next?.key).toBe('print')
    expect(told({ skipped: ['print'] }).next?.key).not.toBe('print')
  })

  test('once the version stands, the years are asked for', () => {
    const { next } = told({ print: 'EL34', choices: { base: 'octal', bulb: 'T-12', plates: 'one', heaterPins: '2-7' } })
    expect([next?.settles, next?.key]).toEqual(['years', 'date'])
  })

  test('never what was told or cannot be told', () => {
    fc.assert(
      fc.property(bottle, (seen) => {
        const key = told(seen).next?.key
        if (key === undefined) return
        expect(seen.skipped).not.toContain(key)
        if (key === 'print' || key === 'date') expect(seen[key]).toBe('')
        else expect(seen.choices[key]).toBeUndefined()
      }),
      { numRuns: 12 },
    )
  })
})
