/** `calc choose`: the best set out of a stock for a group of sockets, the ready-made ones, and why others lost. */
import { z } from 'zod'
import { calculator, type Faults, faultsOf, together } from '@/lib/calc/calculator'
import { knownTube } from '@/lib/calc/input/known-tube'
import { wordSet } from '@/lib/calc/input/word-set'
import { figure } from '@/lib/calc/output/figure'
import { twice } from '@/lib/calc/share/share'
import {
  compareOn,
  setLimits,
  stockedTube,
  testerCorrections,
  testPlace,
  wantedSet,
} from '@/lib/calc/share/share-input'
import { candidateOf, carryingOf, demandOf, limitsOf } from '@/lib/calc/share/share-order'
import { setReport } from '@/lib/calc/share/share-report'
import {
  exclusionText,
  gradeText,
  lostText,
  type MatchingFormat,
  proposalText,
  relaxationText,
  setCautionText,
} from '@/lib/domain/matching/matching-text'
import type { Proposal, SetOption } from '@/lib/domain/matching/proposal'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { fail, ok, type Result } from '@/lib/domain/result'
import { wordsFor } from '@/lib/domain/words'

const input = z.strictObject({
  set: wantedSet.describe('What the sockets want.'),
  test: testPlace.describe('Where the tubes were read that say nothing else.'),
  stock: z.array(stockedTube).max(100_000),
  limits: setLimits,
  corrections: testerCorrections,
  compareOn,
  words: wordSet,
})

type Given = z.output<typeof input>

function optionReport(option: SetOption, proposal: Proposal, format: MatchingFormat): object {
  return {
    ...setReport(option),
    score: figure(option.score),
    match: gradeText(option.match, proposal.yardsticks, option.predicted),
    lost: lostText(option, format),
    cautions: option.cautions.map(setCautionText),
  }
}

function report(proposal: Proposal, { words, set }: Given): object {
  const format: MatchingFormat = { words: wordsFor(words), formatMoney: (amount) => (amount / 100).toFixed(2) }
  const shown = (option: SetOption | null) => option && optionReport(option, proposal, format)
  return {
    inWords: proposalText(proposal, set.count, format),
    best: shown(proposal.best),
    safeWorking: shown(proposal.safe),
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

function calculate(given: Given): Result<object, Faults> {
  const { set, stock, test, limits } = given
  const again = twice(
    stock.map(({ mark }) => mark),
    'stock',
    'mark',
  )
  if (again.length > 0) return fail(faultsOf(again))
  const known = together([
    knownTube(set.type, 'set.type'),
    ...stock.map(({ type }, at) => knownTube(type, `stock[${at}].type`)),
  ])
  if (!known.ok) return known
  const candidates = stock.map((tube) => candidateOf(tube, test))
  return ok(report(proposeSet(candidates, demandOf(set), { ...limitsOf(limits), carrying: carryingOf(given) }), given))
}

export const choose = calculator({
  title: 'A matched set out of a stock',
  input,
  example: {
    set: { type: '6L6GC', count: 2, plateToCathodeVolts: 430, idleWatts: 18 },
    test: { instrument: 'Tester 1', plateVolts: 250, screenVolts: 250, gridVolts: -14 },
    stock: [
      { mark: 'T-1', type: '6L6GC', milliamps: 70.1, milliampsPerVolt: 5.9, price: 46 },
      { mark: 'T-2', type: '6L6GC', milliamps: 70.4, milliampsPerVolt: 5.95, price: 46 },
      { mark: 'T-3', type: '6L6GC', milliamps: 74, milliampsPerVolt: 6.1, price: 30 },
      { mark: 'T-4', type: '6L6GC', milliamps: 75.5, milliampsPerVolt: 6.2, price: 30 },
      { mark: 'T-5', type: '6L6G', milliamps: 71, milliampsPerVolt: 5.9, price: 25 },
      {
        ...{ mark: 'T-6', type: '6L6GC', milliamps: 93.6, milliampsPerVolt: 7.1, price: 28 },
        test: { instrument: 'Tester 2', plateVolts: 250, screenVolts: 250, gridVolts: -14 },
      },
    ],
    corrections: [
      {
        ...{ from: 'Tester 1', to: 'Tester 2' },
        plateCurrent: { times: 1.04, percent: 3.5 },
        transconductance: { times: 1.02, percent: 4 },
      },
    ],
  },
  calculate,
})
