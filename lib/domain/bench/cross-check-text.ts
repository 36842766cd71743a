/** What two ways of finding plate current say of each other, and where to look next. */
import {
  bandedMilliampsText,
  celsiusText,
  milliampsText,
  ohmsText,
  percentText,
  shareText,
} from '@/lib/domain/bias/bias-figures'
import type { CurrentMethod } from '@/lib/domain/bias/idle-reading'
import { capital, type Words } from '@/lib/domain/words'
import type { Comparison, CrossCheck } from './cross-check'
import type { Suspect } from './cross-check-suspects'
import { methodWord } from './reading-set'

const wayWord = (method: CurrentMethod['kind']): string => methodWord(method)

/** Outside the 95 % band, inside the 99.7 % one (k = 3). */
const isNarrow = ({ agree, difference }: Comparison): boolean =>
  !agree && Math.abs(difference.value) < 1.5 * difference.plusMinus

/** A word for a badge. */
export const agreementWord = ({ comparisons }: CrossCheck): string => {
  const apart = comparisons.filter(({ agree }) => !agree)
  if (apart.length > 0) return apart.every(isNarrow) ? 'Ways hardly agree' : 'Ways disagree'
  return comparisons.every(({ coarse }) => coarse) ? 'Ways agree, roughly' : 'Ways agree'
}

export function comparisonText(comparison: Comparison, words: Words): string {
  const { one, other, difference, percent, agree, coarse } = comparison
  const read = ({ method, idle }: Comparison['one']) => `${wayWord(method)} ${milliampsText(idle.plateAmps.value)}`
  const gap = `${bandedMilliampsText(difference)} (${percentText(Math.abs(percent))})`
  const head = `${capital(words.plate)} current by ${read(one)}, by ${read(other)}: ${gap} apart.`
  if (isNarrow(comparison)) return `${head} They hardly agree: of honest pairs one in twenty lies so far apart.`
  if (!agree) return `${head} They disagree: that is more than meter, resistors and assumptions allow.`
  return coarse ? `${head} They agree, but within so wide a band that it proves little.` : `${head} They agree.`
}

const signed = (percent: number): string =>
  percent > 0 ? `+${percentText(percent)}` : percentText(percent).replace('-', '−')

const drift = (part: string, { sheetOhms, neededOhms }: { sheetOhms: number; neededOhms: number }): string =>
  `${part} would have to be ${ohmsText(neededOhms)} and not ${ohmsText(sheetOhms)} (${signed(100 * (neededOhms / sheetOhms - 1))})`

/** The suspect, what it would have to be, and what to do about it. */
export function suspectText(suspect: Suspect, words: Words): string {
  switch (suspect.kind) {
    case 'sense-resistor':
      return `Sense resistor off its value: ${drift(suspect.part, suspect)}. Measure it with the amplifier dead; leads and contacts count at one ohm.`
    case 'cathode-resistor':
      return `Cathode resistor drifted: ${drift(suspect.part, suspect)}. Measure it with the amplifier dead and enter its ohms.`
    case 'screen-resistor':
      return `Screen resistor drifted: ${drift(suspect.part, suspect)}. Measure it with the amplifier dead.`
    case 'half-primary-ohms':
      return `Ohms of the half primary wrong: ${drift(suspect.part, suspect)}. Measure this half by itself, leads taken off the reading.`
    case 'other-half':
      return `The wrong half: with the ${ohmsText(suspect.otherOhms)} of the other half in place of ${ohmsText(suspect.sheetOhms)} for ${suspect.part}, both agree. See which side this socket is on.`
    case 'copper-warmer':
      return `Half primary measured cold: the winding would have to be ${celsiusText(suspect.neededCelsius)} warmer than when its ohms were read, where ${celsiusText(suspect.allowedCelsius)} were allowed for. Measure it again straight after switching off and discharging.`
    case 'screen-share':
      return `Screen current was assumed: it would have to be ${shareText(suspect.neededShare)} of cathode current and not ${shareText(suspect.assumedShare)}. The drop across the screen resistor settles it.`
    case 'screen-on-tap':
      return `Screens on a tap of the primary: part of the winding then carries screen current too, and ${suspect.part} reads high.`
    case 'unequal-split':
      return `${capital(words.tubes)} that do not share equally: this one would have to draw ${shareText(suspect.neededShare)} of what flows through ${suspect.part}, where an equal part of ${suspect.sharedBy} is ${shareText(1 / suspect.sharedBy)}.`
    case 'bypass-leak':
      return `Leaky bypass capacitor: ${ohmsText(suspect.leakOhms)} across ${suspect.part} would make it read low. Lift one end and measure.`
    case 'no-drop':
      return `Almost no drop over ${suspect.part}, where the other way finds current: probe, contact, or the part shorted or bridged.`
  }
}

/** Null unless two of three ways agree against the third. */
export function oddOneOutText({ oddOneOut }: CrossCheck): string | null {
  return oddOneOut && `The other two agree with each other, so suspect the ${wayWord(oddOneOut)}.`
}

/** Which of the ways the verdict was made from. */
export const restsOnText = (method: CurrentMethod['kind']): string =>
  `The verdict above rests on the ${wayWord(method)} alone.`
