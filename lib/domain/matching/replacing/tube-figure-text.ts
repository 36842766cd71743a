/** The figures one tube is compared by, in a line. */
import type { Candidate } from '@/lib/domain/matching/candidate'
import { carriedReadingText } from '@/lib/domain/matching/carried-text'
import { figure, type MatchingFormat, testPointText } from '@/lib/domain/matching/matching-text'
import type { PredictedTube } from '@/lib/domain/matching/predicted-tube'

/** `predicted`: null where it is compared by its reading. */
export function tubeFigureText(
  { test }: Pick<Candidate, 'test'>,
  predicted: PredictedTube | null,
  format: MatchingFormat,
): string {
  if (predicted) {
    const { value, low, high } = predicted.plateCurrent
    const slope = figure(1000 * predicted.transconductance.value, 2)
    return `idles at ${milli(value)} mA (${milli(low)}–${milli(high)}), ${slope} mA/V, as predicted`
  }
  if (!test) return 'no test at a point to compare at'
  const slope = test.transconductance === null ? '' : `, ${figure(1000 * test.transconductance, 2)} mA/V`
  const carried = carriedReadingText(test)
  return `${figure(1000 * test.plateCurrent, 2)} mA${slope} at ${testPointText(test.testPoint, format)}, ${carried ? 'as on' : 'on'} ${test.instrument}${carried ? ` (${carried})` : ''}`
}

const milli = (value: number): string => figure(1000 * value, 1)
