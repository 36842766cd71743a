/** The idle of a socket as it is put out: numbers with their bands, and the sentences a technician reads. */

import { figure, uncertainFigures } from '@/lib/calc/output/figure'
import {
  balanceText,
  cautionText,
  errorSourceText,
  estimateText,
  overRatingText,
  targetText,
  verdictText,
} from '@/lib/domain/bias/bias-text'
import type { Difference, GroupBalance } from '@/lib/domain/bias/group-balance'
import type { Banded, Contribution, IdleResult } from '@/lib/domain/bias/idle'
import type { Words } from '@/lib/domain/words'

const MILLI = 1000
const maybe = (banded: Banded | null) => banded && uncertainFigures(banded)

function verdict(idle: IdleResult, words: Words) {
  const { verdict: given } = idle
  return {
    verdict: given.verdict,
    reason: verdictText(idle, words),
    windowPercent: { low: figure(100 * given.window.low), high: figure(100 * given.window.high) },
    limitInBand: given.limitInBand,
    percentOff: figure(given.percentOff, 3),
    overRating: given.overRating,
    overRatingReason: overRatingText(idle, words),
  }
}

function target(idle: IdleResult, words: Words) {
  if (!idle.target) return null
  const { share, plateCurrent, change, meterReading } = idle.target
  return {
    percent: figure(100 * share),
    plateMilliamps: figure(MILLI * plateCurrent),
    changeMilliamps: figure(MILLI * change, 3),
    meterShows: meterReading && {
      across: meterReading.across,
      ohms: figure(meterReading.resistance),
      millivolts: figure(MILLI * meterReading.volts),
    },
    sentence: targetText(idle, words),
  }
}

const contribution = ({ source, watts, share }: Contribution, words: Words) => ({
  source: source.kind,
  name: source.name,
  sentence: errorSourceText(source, words),
  standardWatts: figure(watts, 2),
  percentOfVariance: figure(100 * share, 2),
})

export function idleReport(idle: IdleResult, asked: string, words: Words) {
  return {
    socket: idle.socket,
    type: asked,
    designation: idle.designation,
    method: idle.method,
    plateToCathodeVolts: uncertainFigures(idle.plateToCathodeVolts),
    plateMilliamps: uncertainFigures(idle.plateAmps, MILLI),
    screenMilliamps: uncertainFigures(idle.screenAmps, MILLI),
    cathodeMilliamps: uncertainFigures(idle.cathodeAmps, MILLI),
    plateWatts: uncertainFigures(idle.plateWatts),
    plateRatingWatts: idle.plateRatingWatts,
    platePercent: maybe(idle.platePercent),
    screenWatts: maybe(idle.screenWatts),
    screenRatingWatts: idle.screenRatingWatts,
    screenPercent: maybe(idle.screenPercent),
    ratingSystem: idle.ratingSystem,
    verdict: verdict(idle, words),
    target: target(idle, words),
    estimates: idle.estimates.map((one) => ({ code: one.kind, sentence: estimateText(one, words) })),
    cautions: idle.cautions.map((one) => ({ code: one.kind, sentence: cautionText(one, words) })),
    contributions: idle.contributions.map((one) => contribution(one, words)),
  }
}

const difference = ({ amps, percent }: Difference) => ({
  milliamps: uncertainFigures(amps, MILLI),
  percent: uncertainFigures(percent),
})

export function balanceReport(balance: GroupBalance, words: Words) {
  const { spread, sides, fromSum } = balance
  return {
    spread: spread && { hottest: spread.hottest, coldest: spread.coldest, ...difference(spread) },
    sideALessSideB: sides && difference(sides),
    fromSum,
    sentences: balanceText(balance, words),
  }
}
