/**
 * Every sentence about idle, in bench words. Exhaustive: a new fault, caution,
 * estimate or verdict does not compile until it has its sentence here.
 */
import type { RatingSystem } from '@/lib/domain/tube/tube-variant'
import { capital, type Words } from '@/lib/domain/words'
import {
  bandedMilliampsText,
  celsiusText,
  milliampStepText,
  milliampsText,
  ohmsText,
  percentText,
  shareText,
  voltsText,
  wattsText,
} from './bias-figures'
import { type Caution, isMendedFirst } from './cautions'
import type { ErrorSource } from './error-source'
import type { Difference, GroupBalance } from './group-balance'
import type { IdleResult } from './idle'
import type { EstimateReason } from './idle-currents'
import type { IdleFault } from './idle-fault'
import type { Verdict } from './idle-verdict'

const milli = (milliamps: number): string => milliampsText(milliamps / 1000)

export function idleFaultText(fault: IdleFault, words: Words): string {
  const { socket } = fault
  switch (fault.code) {
    case 'not-an-output-tube':
      return `${socket}: ${fault.designation} is no output ${words.tube}. Idle is computed for output ${words.tubes} only.`
    case 'resistance-not-positive':
      return `${socket}: the resistance of ${fault.part} is given as ${fault.ohms} Ω. It must be above 0 Ω.`
    case 'tolerance-out-of-range':
      return `${socket}: the tolerance of ${fault.part} is given as ${fault.percent} %. It must be from 0 % to below 100 %.`
    case 'current-beyond-belief':
      return `${socket}: ${voltsText(fault.volts)} across ${fault.part} would be ${milli(fault.milliamps)} of ${words.plate} current and ${wattsText(fault.watts)}${fault.ratingWatts === null ? '' : ` where ${wattsText(fault.ratingWatts)} is the rating`}. No ${words.tube} lives through that: check whether the meter showed mV or V, and the resistance on the sheet.`
    case 'drop-negative':
      return `${socket}: the drop across ${fault.part} reads ${voltsText(fault.volts)}. Swap the probes and read again.`
    case 'shared-by-not-whole':
      return `${socket}: ${fault.sharedBy} ${words.tubes} share one resistance. Give a whole number from 1.`
    case 'warming-out-of-range':
      return `${socket}: ${fault.celsius} °C of warming is given for the winding. Give 0 to 100 °C.`
    case 'method-needs-cathode-resistor':
      return `${socket}: read across a cathode-bias resistor, but the sheet says grid-supplied bias. Correct the sheet or the method: the two are held to different windows.`
    case 'missing-cathode-voltage':
      return `${socket}: cathode volts were not read, so ${words.plate} to cathode is not known. Read them to chassis; a cathode wired straight to chassis is at 0 V.`
    case 'missing-screen-share':
      return `${socket}: no typical screen current is known for ${fault.designation}. Read the drop across the screen resistor.`
    case 'screen-current-negative':
      return `${socket}: screen current is given as ${milli(fault.milliamps)}. It must not be below 0 mA.`
    case 'plate-below-cathode':
      return `${socket}: ${words.plate} ${voltsText(fault.plateVolts)} is below cathode ${voltsText(fault.cathodeVolts)}. Check which pins were read.`
    case 'screen-above-cathode':
      return `${socket}: screen current ${milli(fault.screenMilliamps)} is above cathode current ${milli(fault.cathodeMilliamps)}. Check the probe or the resistor value.`
  }
}

export function ratingSystemText(system: RatingSystem): string {
  switch (system) {
    case 'design-centre':
      return 'design-centre'
    case 'design-maximum':
      return 'design-maximum'
    case 'absolute':
      return 'absolute maximum'
    case 'not-stated':
      return 'rating system not stated'
  }
}

const limitText = (limit: string, system: RatingSystem): string => `the printed ${limit} (${ratingSystemText(system)})`

export function cautionText(caution: Caution, words: Words): string {
  switch (caution.kind) {
    case 'plate-volts-over':
      return `${capital(words.plate)} to cathode ${voltsText(caution.value)} is above ${limitText(voltsText(caution.limit), caution.system)}. Many amps do this and the better ${words.tubes} stand it; choose the ${words.tube} with that in mind.`
    case 'screen-volts-over':
      return `Screen to cathode ${voltsText(caution.value)} is above ${limitText(voltsText(caution.limit), caution.system)}. Check that the screen resistor is there and has its value.`
    case 'cathode-current-over':
      return `Cathode current ${milliampsText(caution.value)} is above ${limitText(milliampsText(caution.limit), caution.system)}.`
    case 'screen-dissipation-over':
      return `Screen dissipation ${wattsText(caution.value)} is above ${limitText(wattsText(caution.limit), caution.system)}, and rises further at full drive.`
    case 'grid-positive':
      return `The grid reads +${voltsText(caution.volts)}.${caution.bias === 'grid-supplied' ? ' If only its minus was left out, correct the reading. If not, suspect a leaky coupling capacitor or a lost bias supply' : ' Suspect a leaky coupling capacitor'} before the ${words.tube}. Do not leave it running.`
    case 'grid-supply-lost':
      return `The grid reads ${voltsText(caution.volts)}, where its supply should hold it well below the cathode. Suspect a lost bias supply or a broken feed to this grid. Do not leave it running.`
    case 'plate-volts-lost':
      return `${capital(words.plate)} to cathode is only ${voltsText(caution.volts)}. If the decimal point slipped, correct the reading. If not, suspect an open half of the output transformer or a lost supply: the screen then takes the current and may burn.`
    case 'screen-not-above-cathode':
      return `The screen reads ${voltsText(caution.volts)} to chassis, next to nothing above the cathode. Suspect an open screen resistor or a lost screen supply.`
    case 'dead-socket':
      return `Almost no current (${milliampsText(caution.current)}).${caution.asVolts === null ? '' : ` If the meter showed ${Number(caution.asVolts.toPrecision(4))} V, that is ${voltsText(caution.asVolts)}: type it in mV.`} A dead socket suspects the circuit first: ${words.plate} and screen supply, screen resistor, cathode or sense resistor, bias supply, grid leak, coupling capacitor, heater, socket contact. Then the ${words.tube}.`
    case 'wall-high':
      return `The wall gave ${voltsText(caution.wall)}, ${percentText(caution.percentHigh)} above the ${voltsText(caution.marked)} the amp is marked for. Every voltage in the amp is up with it.`
    case 'above-meter-range':
      return `${voltsText(caution.volts)} is above the ${voltsText(caution.range)} range of an ordinary meter. Use a probe rated for it.`
  }
}

export function estimateText(reason: EstimateReason, words: Words): string {
  switch (reason.kind) {
    case 'screen-share-assumed':
      return `Screen current is assumed, not measured: ${shareText(reason.share)} ± ${shareText(reason.halfWidth)} of cathode current, as is usual for the type. The drop across the screen resistor removes the guess.`
    case 'equal-split-assumed':
      return `${reason.sharedBy} ${words.tubes} share the resistance, so only their sum was measured. An equal part is assumed for each, ± ${shareText(reason.halfWidth)}.`
    case 'copper-warming-assumed':
      return `The winding may have warmed by up to ${celsiusText(reason.upToCelsius)} since its resistance was read; half of that is allowed for, either way.`
    case 'cathode-at-chassis-assumed':
      return 'Cathode volts were not read: the sheet shows no resistor that could raise the cathode, so it is taken to be at chassis.'
    case 'rating-stands-in':
      return `No rating of its own is known for ${reason.asked}: that of ${reason.designation} stands in. Its own sheet decides.`
  }
}

export function errorSourceText(source: ErrorSource, words: Words): string {
  switch (source.kind) {
    case 'meter-gain':
      return `meter accuracy (${source.name})`
    case 'meter-counts':
      return `last digit of the reading: ${source.name.replace('plate', words.plate)}`
    case 'resistor':
      return `tolerance of ${source.name}`
    case 'screen-share':
      return 'assumed screen current'
    case 'screen-current':
      return 'stated screen current'
    case 'equal-split':
      return `unequal sharing between ${words.tubes}`
    case 'copper-warming':
      return `warming of ${source.name}`
  }
}

/** One or two words for a badge. */
export function verdictWord(verdict: Verdict): string {
  switch (verdict) {
    case 'within':
      return 'Within'
    case 'over':
      return 'Too hot'
    case 'under':
      return 'Too cold'
    case 'uncertain':
      return 'Uncertain'
    case 'no-rating':
      return 'No rating'
  }
}

const bandText = ({ low, high }: { low: number; high: number }): string =>
  `${percentText(low)} to ${percentText(high)}`.replace(' % to', ' to')

function limitInBandText({ window, limitInBand }: IdleResult['verdict']): string {
  if (limitInBand === 'both') return `Both limits, ${shareText(window.low)} and ${shareText(window.high)}, lie`
  return `The limit of ${shareText(limitInBand === 'low' ? window.low : window.high)} lies`
}

const isDead = ({ cautions }: IdleResult): boolean => cautions.some(({ kind }) => kind === 'dead-socket')

const mendsFirst = ({ cautions }: IdleResult): boolean => cautions.some(isMendedFirst)

/** The verdict with its reason, the limits named. */
export function verdictText(idle: IdleResult, words: Words): string {
  const { verdict, platePercent } = idle
  const window = `${shareText(verdict.window.low)} to ${shareText(verdict.window.high)}`
  if (platePercent === null) {
    return `No ${words.plate} rating is given here for ${idle.designation}, so idle is not judged.`
  }
  const reads = `${percentText(platePercent.value)} of the ${wattsText(idle.plateRatingWatts ?? 0)} rating`
  if (isDead(idle))
    return `${capital(words.plate)} dissipation is ${reads}: the socket is dead. Find the fault before setting anything.`
  if (mendsFirst(idle))
    return `${capital(words.plate)} dissipation is ${reads}. Find the fault before setting anything.`
  switch (verdict.verdict) {
    case 'within':
      return `${reads}, inside the window of ${window}.`
    case 'over':
      return `${reads}, ${percentText(verdict.percentOff)} too hot for the window of ${window}: run it colder.`
    case 'under':
      return `${reads}, ${percentText(-verdict.percentOff)} too cold for the window of ${window}: run it hotter.`
    case 'uncertain':
      return `${reads}. ${limitInBandText(verdict)} inside the 95 % band of ${bandText(platePercent)}, so these readings cannot tell.`
    case 'no-rating':
      return `No ${words.plate} rating is given here for ${idle.designation}, so idle is not judged.`
  }
}

/** Ratings at which a plate glows for all to see. Common practice, no source. */
const GLOWS_FROM = 3

const doubtText = (ratings: number, { plate }: Words): string =>
  ratings < GLOWS_FROM
    ? ''
    : ` At that the ${plate} glows red within moments: if it does not, check the drop, its unit and the resistance.`

/** Separate from the window, and stronger. Null when there is nothing to say. */
export function overRatingText({ verdict, plateWatts, plateRatingWatts }: IdleResult, words: Words): string | null {
  const rating = wattsText(plateRatingWatts ?? 0)
  switch (verdict.overRating) {
    case 'yes':
      return `Over the printed rating: ${wattsText(plateWatts.value)} where ${rating} is the most the sheet allows. The ${words.tube} will not last, and may take the transformer with it.${doubtText(plateWatts.value / (plateRatingWatts ?? 1), words)}`
    case 'possibly':
      return `May be over the printed rating of ${rating}: it lies inside the 95 % band.`
    case 'no':
    case 'not-known':
      return null
  }
}

/** What to set next. Null with the value inside the window (read better, do not turn), for a fault to be mended first and without a rating. */
export function targetText(idle: IdleResult, words: Words): string | null {
  const { target, verdict } = idle
  if (!target || verdict.percentOff === 0 || mendsFirst(idle)) return null
  const way = target.change > 0 ? 'hotter' : 'colder'
  const aim = `For ${shareText(target.share)}, aim at ${milliampsText(target.plateCurrent)} of ${words.plate} current, ${milliampStepText(Math.abs(target.change), target.plateCurrent)} ${way}`
  if (!target.meterReading) {
    return `${aim}: a ${way === 'hotter' ? 'smaller' : 'larger'} cathode resistor. Then read again.`
  }
  const { volts, across, resistance } = target.meterReading
  return `${aim}: ${voltsText(volts)} across ${across} (${ohmsText(resistance)}). Then read ${words.plate} volts again and repeat.`
}

const apart = (delta: { amps: { value: number; plusMinus: number }; percent: { value: number } }): string =>
  `${bandedMilliampsText(delta.amps)} (${percentText(Math.abs(delta.percent.value))})`

/** The band of a difference reaches over nothing: which is the larger is then not known. */
const isNoDifference = ({ amps }: Difference): boolean => Math.abs(amps.value) <= amps.plusMinus

const AS_FAR = 'alike as far as these readings tell'

function spreadText({ spread, fromSum }: GroupBalance, words: Words): string[] {
  if (spread && isNoDifference(spread)) {
    return [`${capital(words.plate)} currents are ${AS_FAR}: ${bandedMilliampsText(spread.amps)} apart.`]
  }
  if (spread) {
    return [
      `${capital(words.plate)} currents lie ${apart(spread)} apart, ${spread.hottest} hottest, ${spread.coldest} coldest.`,
    ]
  }
  return fromSum ? [`How alike the ${words.tubes} are cannot be told: a shared resistance gives only their sum.`] : []
}

/** No sentence for what cannot be told of a single socket. */
export function balanceText(balance: GroupBalance, words: Words): string[] {
  const { sides, spread } = balance
  // Of two sockets, one on each side, the two statements are one.
  const saidAlready = spread && sides && Math.abs(Math.abs(sides.amps.value) - spread.amps.value) < 1e-12
  if (!sides || saidAlready) return spreadText(balance, words)
  if (isNoDifference(sides)) {
    const apart = `${bandedMilliampsText(sides.amps)} apart per ${words.tube}`
    return [...spreadText(balance, words), `The two sides are ${AS_FAR}: ${apart}.`]
  }
  const more = sides.amps.value >= 0 ? 'A' : 'B'
  return [...spreadText(balance, words), `Side ${more} draws ${apart(sides)} more per ${words.tube} than the other.`]
}
