/** What a look would settle of the years, taken for the likeliest version. */
import { choicesOf, choiceWord, OBSERVATIONS, type ObservationKey } from '../knowledge/observations'
import { likelyYears, yearsText } from '../likely-years'
import type { Weighed } from '../weigh/weigh'
import { type Candidate, looked, type NextLook, type Split } from './look'
import { probability } from './version-look'

type Subject = {
  readonly weighed: Weighed
  /** Place of the likeliest case. */
  readonly at: number
}

const DATE_QUESTION = 'Is there a date code: figures beside a source code, or an etched line near the pins?'
const FIGURES = Array.from({ length: 10 }, (_, figure) => figure)

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0)

function yearLeader({ weighed: { years } }: Subject): Candidate['leader'] {
  return (parts) => {
    const spans = likelyYears(parts, years.first)
    const within = parts.filter((_, index) =>
      spans.some(([from, to]) => years.first + index >= from && years.first + index <= to),
    )
    const total = sum(parts)
    return { leads: yearsText(spans, years.first + years.count - 1), share: total > 0 ? sum(within) / total : 0 }
  }
}

function hintLook(key: ObservationKey, subject: Subject): NextLook {
  const { weighed, at } = subject
  const now = [...(weighed.shares[at] ?? [])]
  const version = weighed.cases[at]?.version ?? null
  const choices = choicesOf(key)
  const splits = choices.map((choice): Split => {
    const weight = weighed.weightsOf(key, version).get(choice) ?? 0
    const parts = now.map((one, index) => one * probability(weight, index, choices.length))
    return { choice, word: choiceWord(key, choice), parts }
  })
  const { label, question } = OBSERVATIONS[key]
  return looked({ ...{ key, label, question, now, splits }, settles: 'years', leader: yearLeader(subject) })
}

/** As if the code gave the last figure of the year. */
function dateLook(subject: Subject): NextLook {
  const { weighed, at } = subject
  const now = [...(weighed.shares[at] ?? [])]
  const splits = FIGURES.map((figure) => ({
    choice: String(figure),
    word: `a year ending in ${figure}`,
    parts: now.map((one, index) => ((weighed.years.first + index) % 10 === figure ? one : 0)),
  }))
  const question = { key: 'date', settles: 'years', label: 'Date code', question: DATE_QUESTION } as const
  return looked({ ...question, now, splits, leader: yearLeader(subject) })
}

export function yearLooks(open: readonly ObservationKey[], wantsDate: boolean, weighed: Weighed): NextLook[] {
  const { caseShares } = weighed
  const at = caseShares.reduce((most, share, index) => (share > (caseShares[most] ?? 0) ? index : most), 0)
  const subject = { weighed, at }
  const hints = open.map((key) => hintLook(key, subject))
  return wantsDate ? [...hints, dateLook(subject)] : hints
}
