/** What "matched" means on a set: when and where it was tested, or predicted, and within what. */
import { capital } from '../words'
import { carriedStatementText } from './carried-text'
import { day, figure, gradeText, type MatchingFormat, spreadText, testPointText, toleranceText } from './matching-text'
import type { MatchStatement, PredictedMatch } from './proposal'

function testedText({ firstTested, lastTested }: MatchStatement, format: MatchingFormat): string {
  const first = day(firstTested, format)
  return firstTested === lastTested ? `Tested on ${first}` : `Tested from ${first} to ${day(lastTested, format)}`
}

/** Of a single one, which matches nothing: where its figures come from. */
export function testStatementText(statement: MatchStatement, format: MatchingFormat): string {
  const { testPoint, predicted } = statement
  if (predicted) return predictedText(statement, predicted, format)
  return `${testedText(statement, format)} on ${readOn(statement)} at ${testPointText(testPoint, format)}.${carriedStatementText(statement)}`
}

/** A set may be carried over as a whole. */
function readOn({ instrument, carried = [] }: MatchStatement): string {
  return carried.length === 0 ? instrument : `${carried.map(({ from }) => from).join(', ')}, as on ${instrument},`
}

export function matchStatementText(statement: MatchStatement, format: MatchingFormat): string {
  const { testPoint, spreads, yardsticks, match, predicted } = statement
  const at = predicted
    ? predictedText(statement, predicted, format)
    : `${testedText(statement, format)} on ${readOn(statement)} at ${testPointText(testPoint, format)} (${toleranceText(format, testPoint)}):`
  const spread = predicted ? capital(spreadText(spreads, true)) : spreadText(spreads)
  const claims = match === 'both' || match === 'current-only'
  const carried = predicted ? '' : carriedStatementText(statement)
  return `${at} ${spread}.${carried} ${gradeText(match, yardsticks, predicted !== undefined)}${claims ? ' A match is void without these.' : ''}`
}

function predictedText(statement: MatchStatement, predicted: PredictedMatch, format: MatchingFormat): string {
  const { readOn, lowest, highest, plusMinus, apartPlusMinus, instruments } = predicted
  const apart = apartPlusMinus === null ? '' : `, their differences to ±${figure(apartPlusMinus * 1e3, 1)} mA`
  const [low, high] = [figure(lowest * 1e3, 1), figure(highest * 1e3, 1)]
  const idle = low === high ? `${low} mA` : `${low} to ${high} mA`
  return `Predicted idle in this amplifier, not measured: ${idle} of ${format.words.plate} current, known to ±${figure(plusMinus * 1e3, 1)} mA${apart} (95 %), in the circuit as read on ${day(readOn, format)}. ${testedText(statement, format)} on ${instruments.join(' and ')}.${carriedStatementText(statement)}`
}
