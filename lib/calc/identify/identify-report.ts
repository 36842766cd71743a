/** The identification as JSON: weights are ln of likelihood ratios, every sentence with its source. */
import { figure } from '@/lib/calc/output/figure'
import type { DesignationReading, Remark } from '@/lib/domain/identify/designation/designation-reading'
import type { Candidate, Identification } from '@/lib/domain/identify/identify'
import { inWords, NOT_GENUINE, stateSentence } from '@/lib/domain/identify/identify-text'
import { knowledgeSource } from '@/lib/domain/identify/knowledge-source'
import { yearsText } from '@/lib/domain/identify/likely-years'
import type { DateReading } from '@/lib/domain/identify/marks/date-code'
import type { NextLook } from '@/lib/domain/identify/next/look'
import type { Reason } from '@/lib/domain/identify/reason'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import type { Words } from '@/lib/domain/words'

const share = (value: number): number => figure(value, 3)

const sourced = ({ sentence, source }: Remark, words: Words) => {
  const { basis, text } = knowledgeSource(source)
  return { sentence: inWords(sentence, words), basis, source: text }
}

const reason = ({ about, told, why, weight, contradicts }: Reason, words: Words) => ({
  about: inWords(about, words),
  told: inWords(told, words),
  weight: figure(weight, 3),
  contradicts,
  why: why.map((one) => sourced(one, words)),
})

function ratings(designation: string) {
  const variant = findTubeType(designation, HANDBOOK_ONLY)
  if (!variant?.ratings) return null
  const { system, plateWatts } = variant.ratings
  return { of: variant.designation, system, plateWatts: plateWatts?.value ?? null, standIn: variant.ratingsStandIn }
}

function candidate(one: Candidate, thisYear: number, words: Words) {
  const { version } = one
  const each = (reasons: readonly Reason[]) => reasons.map((given) => reason(given, words))
  return {
    designation: version?.designation ?? null,
    type: version?.typeId ?? null,
    envelope: version?.envelope ?? null,
    standing: version?.standing ?? null,
    of: version?.of ?? null,
    share: share(one.share),
    state: one.state,
    services: one.services.map(({ service, number, share: part }) => ({ service, number, share: share(part) })),
    years: { spans: one.years, text: yearsText(one.years, thisYear) },
    ratings: version && ratings(version.designation),
    for: each(one.reasonsFor),
    against: each(one.reasonsAgainst),
    yearHints: each(one.yearHints),
  }
}

const designation = (reading: DesignationReading, words: Words) => ({
  ...{ asked: reading.asked, scheme: reading.scheme, standard: reading.standard, ownMark: reading.ownMark },
  parts: reading.parts.map(({ text, meaning, source }) => ({ text, ...sourced({ sentence: meaning, source }, words) })),
})

const dateCode = (reading: DateReading, words: Words) => {
  const { sentence, source, ...known } = reading
  return { ...known, ...sourced({ sentence, source }, words) }
}

const nextLook = ({ settles, key, label, question, bits, answers }: NextLook, words: Words) => ({
  ...{ settles, key, label: inWords(label, words), question: inWords(question, words), bits: figure(bits, 3) },
  answers: answers.map(({ choice, word, chance, leads, share: part }) => ({
    ...{ choice, word: inWords(word, words), chance: share(chance), leads, share: share(part) },
  })),
})

export function identifyReport(found: Identification, words: Words) {
  const { state, contradictions, remarks, readings, codes, ranked, restShare, next, thisYear } = found
  return {
    state,
    stateSentence: stateSentence(state),
    contradictions: contradictions.map((one) => sourced(one, words)),
    ranked: ranked.map((one) => candidate(one, thisYear, words)),
    restShare: share(restShare),
    next: next && nextLook(next, words),
    print: readings.map((one) => designation(one, words)),
    dateCodes: {
      readings: codes.readings.map((one) => dateCode(one, words)),
      types: codes.types.map(({ type, code, ...told }) => ({ type, code, ...sourced(told, words) })),
      unread: codes.unread,
    },
    remarks: remarks.map((one) => sourced(one, words)),
    caution: NOT_GENUINE,
  }
}
