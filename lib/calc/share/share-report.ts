/** The answer of `calc share`: figures for programs, sentences for people. */
import { figure } from '@/lib/calc/output/figure'
import { carriedReadingText } from '@/lib/domain/matching/carried-text'
import { exclusionText, type MatchingFormat } from '@/lib/domain/matching/matching-text'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { wordsFor } from '@/lib/domain/words'
import type { PlannedJob, SharePlan } from '@/lib/planning/sharing/share-plan'
import {
  buyTexts,
  firstComeText,
  freedTexts,
  proofText,
  relaxedTexts,
  servedText,
  swapText,
} from '@/lib/planning/sharing/share-text'
import type { ShareGiven } from './share-input'

export function shareReport(plan: SharePlan, given: Pick<ShareGiven, 'words'>): object {
  const format: MatchingFormat = { words: wordsFor(given.words), formatMoney: (amount) => (amount / 100).toFixed(2) }
  const { proof, buy, leftOut } = plan
  return {
    inWords: [servedText(plan), ...proofText(plan), firstComeText(proof), ...freedTexts(buy)],
    proof: {
      jobsServed: proof.jobsServed,
      jobsAtMost: proof.jobsAtMost,
      firstCome: proof.greedy.jobsServed,
      gapPercent: figure(proof.gapPercent),
      ended: proof.stop,
    },
    jobs: plan.jobs.map((job) => jobReport(job, format)),
    buy: buy.map((step) => ({
      job: step.jobNumber,
      tubes: step.ratingRefuses ? null : step.tubes,
      inWords: buyTexts(step, format),
    })),
    leftOut: leftOut.map(({ candidate, reasons }) => ({
      mark: candidate.mark,
      inWords: reasons.map((reason) => exclusionText(reason, format)).join(' '),
    })),
  }
}

function jobReport({ jobNumber, sets, impossible }: PlannedJob, format: MatchingFormat): object {
  const asked = { job: jobNumber, served: sets !== null }
  if (!sets) return { ...asked, relax: impossible.flatMap((each) => relaxedTexts(each, format)) }
  return {
    ...asked,
    sets: sets.map((set) => ({ group: set.group, ...setReport(set.option), swap: swapText(set, format) })),
  }
}

export function setReport(option: SetOption): object {
  const { tubes, spreads, price, arrangement } = option
  const side = (wanted: 'A' | 'B') =>
    tubes.flatMap(({ side: on, candidate }) => (on === wanted ? [candidate.mark] : []))
  const { transconductance } = spreads
  return {
    marks: tubes.map(({ candidate }) => candidate.mark),
    ...(arrangement ? { sides: { A: side('A'), B: side('B') } } : {}),
    spread: {
      milliamps: figure(1000 * spreads.plateCurrent),
      percent: transconductance === null ? null : figure(100 * transconductance),
    },
    price: figure(price / 100, 9),
    ...carriedReport(option),
  }
}

/** Nothing where all are as read. */
function carriedReport({ tubes, instrument, doubt, slopeDoubt }: SetOption): object {
  const carried = tubes.flatMap(({ candidate: { mark, test } }) =>
    test.carried ? [{ mark, test, from: test.carried.from }] : [],
  )
  if (carried.length === 0) return {}
  return {
    carried: carried.map(({ mark, from, test }) => ({
      ...{ mark, from, to: instrument },
      milliamps: figure(1000 * test.plateCurrent),
      inWords: carriedReadingText(test),
    })),
    differencePlusMinus: {
      milliamps: doubt === null ? 0 : figure(1000 * doubt),
      percent: slopeDoubt === null ? 0 : figure(100 * slopeDoubt),
    },
  }
}
