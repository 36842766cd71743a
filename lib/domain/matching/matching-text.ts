/**
 * Every sentence on the choice of a set. Values stand beside their bounds.
 * Shown to the bench and on papers, so in bench words.
 */
import { formatDay } from '../calendar'
import type { Money } from '../money'
import { capital, type Words } from '../words'
import type { TestPoint, Yardsticks } from './candidate'
import { REFERENCES_WANTED } from './carried-test'
import { TEST_POINT_TOLERANCE } from './match-limits'
import type {
  ExclusionReason,
  MatchGrade,
  Proposal,
  ProposalCaution,
  Relaxation,
  RelaxedLimit,
  SetCaution,
  SetOption,
  Spreads,
  TubeCaution,
} from './proposal'

export type MatchingFormat = { readonly words: Words; readonly formatMoney: (amount: Money) => string }

/** As many decimals as it takes, up to `places`; a typographic minus. */
export function figure(value: number, places: number): string {
  const text = value.toFixed(places)
  const trimmed = places > 0 ? text.replace(/\.?0+$/, '') : text
  return trimmed === '-0' ? '0' : trimmed.replace('-', '\u2212')
}

const volt = (value: number): string => `${figure(value, 2)} V`
const watt = (value: number): string => `${figure(value, 2)} W`
/** A tenth of a watt is as good as bench readings get; finer only where it decides. */
const wattBeside = (value: number, limit: number): string =>
  `${figure(value, Math.max(1, figurePlaces(Math.abs(value - limit))))} W`
export const milliamp = (value: number): string => `${figure(value * 1e3, 3)} mA`
const millisiemens = (value: number): string => `${figure(value * 1e3, 3)} mA/V`
const percent = (value: number): string =>
  value !== 0 && Math.abs(value) < 0.00005 ? 'less than 0.01 %' : `${figure(value * 100, 2)} %`
const count = (amount: number, one: string, many: string): string => `${amount} ${amount === 1 ? one : many}`
export const day = (iso: string, { words }: MatchingFormat): string => formatDay(iso.slice(0, 10), words.locale)

/**
 * A reading against its limit, in whole units unless they lie closer than that:
 * a meter on a plate of 450 V is no better than a few volts.
 */
const beside = (value: number, limit: number): number => figurePlaces(Math.abs(value - limit))
const figurePlaces = (gap: number): number => (gap >= 1 ? 0 : gap >= 0.1 ? 1 : 2)

export function testPointText(
  { plateVoltage, screenVoltage, gridVoltage }: TestPoint,
  { words }: MatchingFormat,
): string {
  const screen = screenVoltage === null ? '' : `, screen ${volt(screenVoltage)}`
  return `${words.plate} ${volt(plateVoltage)}${screen}, grid ${volt(gridVoltage)}`
}

/** What "the same test point" allows, of the electrodes that were set. */
export function toleranceText({ words }: MatchingFormat, set: TestPoint): string {
  const { plateVoltage, screenVoltage, gridVoltage } = TEST_POINT_TOLERANCE
  const screen = set.screenVoltage === null ? '' : `, screen ±${volt(screenVoltage)}`
  return `${words.plate} ±${volt(plateVoltage)}${screen}, grid ±${volt(gridVoltage)}`
}

export function exclusionText(reason: ExclusionReason, format: MatchingFormat): string {
  const { words, formatMoney } = format
  switch (reason.code) {
    case 'wrong-type':
      return `Type ${reason.family}; the sockets want ${reason.wanted}.`
    case 'wrong-base':
      return `Base ${reason.base}; the sockets take ${reason.wanted}.`
    case 'reserved':
      return `Reserved for ${reason.holder}.`
    case 'fitted':
      return `Fitted in ${reason.place}.`
    case 'gone':
      return `No longer in stock: ${reason.cause}.`
    case 'condition-reject':
      return 'Marked as a reject.'
    case 'untested':
      return 'No usable test record.'
    case 'shorted':
      return `Showed a short on ${day(reason.testedAt, format)}.`
    case 'dead':
      return deadText(reason, format)
    case 'test-too-old':
      return `Tested ${day(reason.testedAt, format)}, ${count(reason.ageDays, 'day', 'days')} ago; the limit is ${count(reason.maximumDays, 'day', 'days')}.`
    case 'test-in-future':
      return `The test is dated ${day(reason.testedAt, format)}, after ${day(reason.asOf, format)}. Check the date.`
    case 'plate-voltage-over-rating':
    case 'screen-voltage-over-rating':
      return `${overRatingText(reason, format)}.`
    case 'idle-over-dissipation':
      return `Idle is ${wattBeside(reason.dissipation, reason.rating)} on the ${words.plate}, above the ${watt(reason.rating)} rating of the ${reason.designation}. Bring the idle current down, or choose a variant that stands it.`
    case 'predicted-over-dissipation':
      return `Would idle at ${wattBeside(reason.dissipation, reason.rating)} on the ${words.plate}, above the ${watt(reason.rating)} rating of the ${reason.designation}; nothing here trims it.`
    case 'cannot-say':
      return `Cannot say what it would do here: ${reason.why}`
    case 'over-price-cap':
      return `Costs ${formatMoney(reason.price)} alone; the set may cost ${formatMoney(reason.cap)}.`
    case 'other-test-point':
      return `Tested at ${testPointText(reason.testPoint, format)}; the set at ${testPointText(reason.setTestPoint, format)}. Readings at different points do not compare.`
    case 'other-instrument':
      return otherInstrumentText(reason, format)
    case 'other-designation':
      return `A ${reason.designation}; the set is ${reason.setDesignation}.`
    case 'transconductance-differs':
      return reason.measured
        ? 'Its transconductance was measured, that of the set was not.'
        : 'Its transconductance was not measured, that of the set was.'
  }
}

function otherInstrumentText(
  { instrument, setInstrument, lacks }: Extract<ExclusionReason, { code: 'other-instrument' }>,
  { words }: MatchingFormat,
): string {
  const both = `read ${REFERENCES_WANTED} reference ${words.tubes} on both`
  const missing =
    lacks === 'any'
      ? `Readings from different instruments do not compare without a correction: ${both}, and it can be carried over.`
      : `No correction of transconductance is known between them: ${both} with both figures, and it can be carried over.`
  return `Cannot say: tested on ${instrument}; the set on ${setInstrument}. ${missing}`
}

type OverRating = {
  readonly code: string
  readonly designation: string
  readonly voltage: number
  readonly rating: number
}

function overRatingText({ code, designation, voltage, rating }: OverRating, { words }: MatchingFormat): string {
  const electrode = code === 'plate-voltage-over-rating' ? words.plate : 'screen'
  const places = beside(voltage, rating)
  return `${capital(electrode)} to cathode is ${figure(voltage, places)} V here, ${figure(voltage - rating, places)} V above the printed ${volt(rating)} of the ${designation}`
}

function deadText(reason: Extract<ExclusionReason, { code: 'dead' }>, { words }: MatchingFormat): string {
  const slope = reason.transconductance === null ? '' : ` and ${millisiemens(reason.transconductance)}`
  return `Read ${milliamp(reason.plateCurrent)} of ${words.plate} current${slope}: nothing to match.`
}

export function tubeCautionText(caution: TubeCaution, format: MatchingFormat): string {
  const { words } = format
  switch (caution.code) {
    case 'plate-voltage-over-rating':
    case 'screen-voltage-over-rating':
      return `${overRatingText(caution, format)}. Good old ${words.tubes} often stand more in guitar amplifiers (common practice, no published source); the rating is still exceeded, so tell the customer and watch it in the soak test.`
    case 'rating-not-known':
      return `The ${ratingWord(caution.of, words)} rating of the ${caution.designation} is not known; it was not checked.`
    case 'rating-stands-in':
      return `No rating of its own is known for the ${caution.designation}; it was checked against that of ${caution.printed}. Its own sheet decides.`
    case 'leakage-noted':
      return `Noted at the test: ${caution.note}`
  }
}

function ratingWord(of: Extract<TubeCaution, { code: 'rating-not-known' }>['of'], words: Words): string {
  switch (of) {
    case 'plate-voltage':
      return `${words.plate} voltage`
    case 'screen-voltage':
      return 'screen voltage'
    case 'plate-dissipation':
      return `${words.plate} dissipation`
  }
}

export function setCautionText(caution: SetCaution): string {
  switch (caution.code) {
    case 'transconductance-not-measured':
      return 'Matched by current alone: transconductance was not measured.'
    case 'mixed-designations':
      return `Mixes ${caution.designations.join(' and ')}: the lowest rating of them holds for the set.`
    case 'extrapolated':
      return `${caution.marks.join(', ')}: these voltages lie well outside the printed rows of the type, so the prediction is a guide only.`
    case 'shared-cathode':
      return 'One cathode resistor serves them all, and each is predicted among its like: together the stronger runs hotter and the weaker colder than told here. Look at the set in “what if”, and read it once it is fitted.'
    case 'transconductance-of-type':
      return `${caution.marks.join(', ')}: transconductance was not read; the figure is that of the type.`
    case 'over-dissipation-now':
      return `${caution.marks.join(', ')} would idle above the rating as the bias stands, at up to ${wattBeside(caution.dissipation, caution.rating)} on ${watt(caution.rating)}: turn the bias down before they are fitted, and set it by reading.`
  }
}

export function proposalCautionText({ code }: ProposalCaution, { words }: MatchingFormat): string {
  switch (code) {
    case 'plate-voltage-not-measured':
      return `The ${words.plate} voltage of these sockets is not measured; no ${words.tube} was checked against it.`
    case 'screen-voltage-not-measured':
      return `The screen voltage of these sockets is not measured; no ${words.tube} was checked against it.`
    case 'idle-not-measured':
      return `The idle of these sockets is not measured; no ${words.tube} was checked against its dissipation rating.`
  }
}

/** A prediction is no better than a tenth of a milliampere. */
const predictedMilliamp = (value: number): string => {
  const text = figure(value * 1e3, 1)
  return text === '0' && value > 0 ? 'less than 0.1 mA' : `${text} mA`
}

export function spreadText({ plateCurrent, transconductance }: Spreads, predicted = false): string {
  const slope =
    transconductance === null ? 'transconductance not measured' : `${percent(transconductance)} in transconductance`
  return `${(predicted ? predictedMilliamp : milliamp)(plateCurrent)} apart, ${slope}`
}

/** null where no tubes stand in parallel: of a pair the difference is the spread. */
export function sidesText({ arrangement, tubes, predicted }: SetOption): string | null {
  if (!arrangement || tubes.length < 4) return null
  const { difference } = arrangement
  return difference === 0
    ? 'sides are equal'
    : `sides differ by ${(predicted ? predictedMilliamp : milliamp)(difference)}`
}

/** `predicted`: false where readings were compared, some of them carried over. */
export function gradeText(grade: MatchGrade, yardsticks: Yardsticks, predicted = true): string {
  const current = milliamp(yardsticks.plateCurrent)
  const slope = percent(yardsticks.transconductance)
  switch (grade) {
    case 'both':
      return `Matched within ${current} and ${slope}.`
    case 'current-only':
      return `Matched within ${current}; transconductance was not measured.`
    case 'uncertain':
      return `Uncertain: within ${current} and ${slope} as ${predicted ? 'predicted' : 'carried over'}, but the difference is not known well enough to call it matched.`
    case 'outside':
      return `Not matched: outside ${current} or ${slope}.`
  }
}

/** null for the best set itself. */
export function lostText(option: SetOption, format: MatchingFormat): string | null {
  if (!option.lost) return null
  const parts = lostParts(option, format)
  return parts.length === 0
    ? 'Equal in every figure to the best set; its marks come later.'
    : `Against the best set: ${parts.join('; ')}.`
}

/** What a set with one tube exchanged differs by from the set as it is. null: that is not known. */
export function exchangedSetText(option: SetOption, format: MatchingFormat): string | null {
  if (!option.lost) return null
  const parts = lostParts(option, format)
  return parts.length === 0
    ? 'Equal in every figure to the set as it is.'
    : `Against the set as it is: ${parts.join('; ')}.`
}

function lostParts({ lost, predicted }: SetOption, { formatMoney }: MatchingFormat): string[] {
  if (!lost) return []
  return [
    stepText(lost.plateCurrent, predicted ? predictedMilliamp : milliamp, ['wider by', 'closer by']),
    lost.transconductance === null
      ? 'transconductance does not compare'
      : stepText(lost.transconductance, percent, ['transconductance wider by', 'transconductance closer by']),
    stepText(lost.price, (amount) => formatMoney(amount as Money), ['dearer by', 'cheaper by']),
  ].filter((part) => part !== null)
}

function stepText(
  step: number,
  write: (size: number) => string,
  [more, less]: readonly [more: string, less: string],
): string | null {
  if (step === 0) return null
  return `${step > 0 ? more : less} ${write(Math.abs(step))}`
}

/** null where the set has no sides. */
export function arrangementText(
  { arrangement, tubes, predicted }: SetOption,
  { words }: MatchingFormat,
): string | null {
  if (!arrangement) return null
  const where = predicted ? 'as predicted' : 'at the test point'
  const write = predicted ? predictedMilliamp : milliamp
  const marks = (side: 'A' | 'B') => tubes.filter((tube) => tube.side === side).map((tube) => tube.candidate.mark)
  const { sideA, sideB, difference } = arrangement
  return `One side ${marks('A').join(' + ')}, ${write(sideA)}; the other ${marks('B').join(' + ')}, ${write(sideB)}; ${write(difference)} of ${words.plate} current between the sides ${where}.`
}

export function relaxationText(relaxation: Relaxation, format: MatchingFormat): string {
  const { tubes, sets } = relaxation
  const { words } = format
  const held = `${count(tubes, words.tube, words.tubes)}`
  const gives = sets === 0 ? 'still no set' : `at least ${count(sets, 'set', 'sets')}`
  return `${relaxedLimitText(relaxation.limit, held)}: ${gives}.${neededText(relaxation, format)}`
}

function relaxedLimitText(limit: RelaxedLimit, held: string): string {
  switch (limit) {
    case 'test-age':
      return `Accept older tests, ${held} more`
    case 'printed-rating':
      return `Accept voltages above the printed rating, ${held} more`
    case 'idle-dissipation':
      return `Bring the idle dissipation down to the rating, ${held} more`
    case 'untested':
      return `Test ${held}, if they all test alike`
    case 'reserved':
      return `Release reservations, ${held} more`
    case 'test-point':
      return `Test ${held} again at one test point on one instrument, if they all test alike`
    case 'correction':
      return `Read ${REFERENCES_WANTED} shop references on both instruments, so that readings carry over, ${held} more`
    case 'price-cap':
      return `Raise the price limit, ${held} good but for it`
  }
}

function neededText({ neededDays, neededPrice }: Relaxation, { formatMoney }: MatchingFormat): string {
  if (neededDays !== null) return ` The first set appears at ${count(neededDays, 'day', 'days')}.`
  if (neededPrice !== null) return ` The cheapest set costs ${formatMoney(neededPrice)}.`
  return ''
}

/** One line over the whole proposal. */
export function proposalText({ best, usable }: Proposal, wanted: number, { words }: MatchingFormat): string {
  const sockets = wanted === 1 ? 'this socket' : 'these sockets'
  const good =
    usable === 0
      ? `No ${words.tube} in stock fits ${sockets}`
      : `${count(usable, words.tube, words.tubes)} in stock ${usable === 1 ? 'fits' : 'fit'} ${sockets}`
  if (best && wanted === 1) return `${good}.`
  if (best) return `${good}. Best set of ${wanted}: ${spreadText(best.spreads, best.predicted)}.`
  if (usable < wanted) return `${good}; ${wanted} ${wanted === 1 ? 'is' : 'are'} wanted.`
  return wanted === 1
    ? `${good}, but dearer than the limit.`
    : `${good}, but no set of ${wanted} can be made from them.`
}
