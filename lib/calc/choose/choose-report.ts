/** The answer of `calc choose`: figures for programs, sentences for people. */
import { bandFigures, figure } from '@/lib/calc/output/figure'
import { setReport } from '@/lib/calc/share/share-report'
import {
  exclusionText,
  gradeText,
  lostText,
  type MatchingFormat,
  proposalCautionText,
  proposalText,
  relaxationText,
  setCautionText,
  tubeCautionText,
} from '@/lib/domain/matching/matching-text'
import type { Proposal, SetOption } from '@/lib/domain/matching/proposal'
import { unsafeText } from '@/lib/domain/matching/safe-margins-text'
import { wordsFor } from '@/lib/domain/words'
import type { ChooseGiven } from './choose-input'

export function chooseReport(proposal: Proposal, { words, set }: Pick<ChooseGiven, 'words' | 'set'>): object {
  const format: MatchingFormat = { words: wordsFor(words), formatMoney: (amount) => (amount / 100).toFixed(2) }
  const shown = (option: SetOption | null) => option && optionReport(option, proposal, format)
  return {
    inWords: proposalText(proposal, set.count, format),
    weights: proposal.weights,
    notChecked: proposal.cautions.map((each) => proposalCautionText(each, format)),
    best: shown(proposal.best),
    safeWorking: shown(proposal.safe),
    notSafe: proposal.unsafe.map((each) => unsafeText(each, format.words)),
    closestMatch: shown(proposal.closest),
    bestValue: shown(proposal.leastPrice),
    next: proposal.next.map(shown),
    leftOut: proposal.excluded.map(({ candidate, reasons }) => ({
      mark: candidate.mark,
      inWords: reasons.map((reason) => exclusionText(reason, format)).join(' '),
    })),
    relax: proposal.relax.map((each) => relaxationText(each, format)),
  }
}

function optionReport(option: SetOption, proposal: Proposal, format: MatchingFormat): object {
  return {
    ...setReport(option),
    ...(option.predicted ? { inCircuit: predictedReport(option) } : {}),
    score: figure(option.score),
    match: option.tubes.length > 1 ? gradeText(option.match, proposal.yardsticks, option.predicted) : null,
    lost: lostText(option, format),
    cautions: [
      ...option.cautions.map(setCautionText),
      ...new Set(option.tubes.flatMap(({ cautions }) => cautions.map((each) => tubeCautionText(each, format)))),
    ],
  }
}

/** What each would do with tubes like it in all sockets, with 95 % bands. */
function predictedReport({ tubes, doubt }: SetOption): object {
  const idle = tubes.flatMap(({ candidate: { mark }, predicted }) => (predicted ? [{ mark, predicted }] : []))
  return {
    tubes: idle.map(({ mark, predicted: { plateCurrent, transconductance, plateDissipation, extrapolated } }) => ({
      mark,
      plateMilliamps: bandFigures(scaled(plateCurrent, 1000)),
      transconductanceMilliampsPerVolt: bandFigures(scaled(transconductance, 1000)),
      plateWatts: bandFigures(plateDissipation),
      outsidePrintedRows: extrapolated,
    })),
    differencePlusMinusMilliamps: doubt === null ? null : figure(1000 * doubt),
  }
}

type Band = { readonly value: number; readonly low: number; readonly high: number }

const scaled = ({ value, low, high }: Band, times: number): Band => ({
  value: times * value,
  low: times * low,
  high: times * high,
})
