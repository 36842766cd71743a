/**
 * Every word on and about a curve sheet, so that screen, paper and reading aloud say
 * the same. Figures keep what a reading can carry.
 */
import { milliampsText, ohmsText, voltsText, wattsText } from '@/lib/domain/bias/bias-figures'
import { ratingSystemText } from '@/lib/domain/bias/bias-text'
import { capital, type Words } from '@/lib/domain/words'
import type { LoadPath } from './load-path'
import { isComputed, isEarlier, type OperatingPoint, type When } from './operating-point'
import type { PlateRating, PlateSheet, PlotFault } from './plate-sheet'

export function plotFaultText({ code, designation }: PlotFault, words: Words): string {
  switch (code) {
    case 'no-curves':
      return `No curves are known for ${designation}: too few printed rows to draw from. Its readings stand in the table.`
    case 'nothing-read':
      return `Nothing was read on ${designation}, so there is no point to show on its ${words.plate} curves.`
  }
}

/** "−35 V", "0 V", "−2.5 V". */
export const gridText = (volts: number): string => `${String(volts).replace('-', '\u2212')} V`
export const tickText = (value: number): string => String(value).replace('-', '\u2212')

export const plotTitle = ({ designation }: PlateSheet, words: Words): string =>
  `${designation}, average ${words.plate} characteristics`

export const acrossTitle = (words: Words): string => `${capital(words.plate)} to cathode, volts`
export const upTitle = (words: Words): string => `${capital(words.plate)} current, milliamps`

export function screenText({ screen }: PlateSheet): string {
  if (!screen) return 'Triode'
  return `Screen ${voltsText(screen.volts)} to cathode${screen.assumed ? ' (assumed)' : ''}`
}

/** "V4", "V4 after". */
export const pointName = ({ socket, when }: OperatingPoint): string => (when === null ? socket : `${socket} ${when}`)

/** "V4, V5 before": sockets that share a place on the sheet. */
export const pointNames = (sockets: readonly string[], when: When | null): string =>
  `${sockets.join(', ')}${when === null ? '' : ` ${when}`}`

/** Both ends rounded outwards, so that the text never claims more than the box. */
function between(low: number, high: number, unit: string): string {
  const decimals = high - low < 2 ? 2 : high - low < 20 ? 1 : 0
  const scale = 10 ** decimals
  const [from, to] = [Math.floor(low * scale + 1e-9) / scale, Math.ceil(high * scale - 1e-9) / scale]
  return `${from.toFixed(decimals)} to ${to.toFixed(decimals)} ${unit}`
}

export const boxVoltsText = ({ box }: OperatingPoint): string => between(box.left, box.right, 'V')
export const boxMilliampsText = ({ box }: OperatingPoint): string => between(box.bottom, box.top, 'mA')

function pointSentence(point: OperatingPoint): string {
  const { at, watts, estimate } = point
  const about = estimate ? 'about ' : ''
  return `${pointName(point)} idles at ${voltsText(at.across)} and ${about}${milliampsText(at.up / 1000)}, ${about}${wattsText(watts)}; its 95\u00a0% box reaches from ${boxVoltsText(point)} and from ${boxMilliampsText(point)}.`
}

/** As printed. */
export const ratingText = ({ watts }: PlateRating): string => `${watts} W`
const systemText = ({ system }: PlateRating): string => (system ? `, ${ratingSystemText(system)}` : '')

export function loadText({ load, points }: LoadPath): string {
  const [clips] = points
  const where = clips
    ? ` to ${milliampsText(clips.up / 1000)} at ${voltsText(clips.across)}, where the grid reaches 0 V`
    : ''
  const name = load.arrangement === 'push-pull' ? 'plate to plate' : 'in the primary'
  return `Load line for ${ohmsText(load.ohms)} ${name}${where}.`
}

/** The whole drawing in sentences. */
export function plotDescription(sheet: PlateSheet, words: Words): string {
  const { frame, curves } = sheet.whole
  const { rating, loadPath } = sheet
  return [
    `${capital(words.plate)} current of one ${words.tube}, 0 to ${frame.up.to} mA, over ${words.plate}-to-cathode voltage, 0 to ${frame.across.to} V.`,
    `${curves.length} curves, for grid volts ${curves.map(({ gridVolts }) => tickText(gridVolts)).join(', ')}. ${screenText(sheet)}.`,
    ...(rating
      ? [`The printed rating of ${ratingText(rating)}${systemText(rating)} is a falling curve; above it is too hot.`]
      : []),
    ...sheet.points.map(pointSentence),
    ...(loadPath ? [loadText(loadPath)] : []),
  ].join(' ')
}

export type LegendKind = 'curve' | 'heat' | 'point-before' | 'point' | 'box' | 'load'
export type LegendLine = { readonly kind: LegendKind; readonly text: string }

const latestText = (before: boolean): string => (before ? 'Idle as read after the work' : 'Idle as read')

export function plotLegend(sheet: PlateSheet, words: Words): LegendLine[] {
  const { points, rating, loadPath } = sheet
  const before = points.some(({ when }) => isEarlier(when))
  const latest = points.some(({ when }) => !isEarlier(when))
  const computed = points.some(({ when }) => isComputed(when))
  const line = (kind: LegendKind, text: string): LegendLine => ({ kind, text })
  return [
    line('curve', `An average ${words.tube} at the grid volts beside each curve`),
    ...(before
      ? [line('point-before', computed ? 'Idle as it is now, computed' : 'Idle as read before the work')]
      : []),
    ...(latest ? [line('point', computed ? 'Idle as it then would be, computed' : latestText(before))] : []),
    ...(points.length > 0
      ? [
          line(
            'box',
            computed ? 'The band of the figures, 95\u00a0%' : 'What meter, resistors and assumptions allow, 95\u00a0%',
          ),
        ]
      : []),
    ...(rating
      ? [line('heat', `Printed ${words.plate} rating ${ratingText(rating)}${systemText(rating)}; shaded: hotter`)]
      : []),
    ...(loadPath ? [line('load', loadText(loadPath))] : []),
  ]
}

function standInText({ designation, model: { standIn, curvesOf, movedTo = 0 } }: PlateSheet): string[] {
  if (movedTo > 0) {
    const points = movedTo === 1 ? 'the operating point' : `the ${movedTo} operating points`
    const likeness = standIn === 'similar' ? ' Away from there they are only as good as the likeness.' : ''
    return [`The curves are those of ${curvesOf}, moved to ${points} noted for ${designation}.${likeness}`]
  }
  switch (standIn) {
    case 'own':
      return []
    case 'same':
      return [`${designation} is the same system as ${curvesOf}, whose curves these are.`]
    case 'similar':
      return [
        `No usable rows of its own are known for ${designation}: the curves are those of ${curvesOf}, the nearest type.`,
      ]
  }
}

/** Of the screen volts: this much moves a curve by some 5 % in current. */
const UNLIKE_SCREENS = 0.03

/** What has to be known to read it right. */
export function plotNotes(sheet: PlateSheet, words: Words): string[] {
  const { screen, curvesGoodTo, model, rating } = sheet
  const ofWhat = `a model of an average ${words.tube}, good to about ±\u00a0${Math.ceil(100 * curvesGoodTo)}\u00a0% in current`
  const computed = sheet.points.some(({ when }) => isComputed(when))
  const what = computed ? 'The points are computed, not measured.' : 'The points are readings.'
  return [
    sheet.points.length > 0
      ? `${what} The curves are ${ofWhat}; this ${words.tube} may lie well off them.`
      : `The curves are ${ofWhat}; any one ${words.tube} may lie well off them.`,
    ...standInText(sheet),
    ...(screen?.assumed
      ? [
          `No screen volts were read: the curves take the screen to stand at the ${words.plate}'s ${voltsText(screen.volts)}. The points do not depend on it.`,
        ]
      : []),
    ...(screen && screen.highest - screen.lowest > UNLIKE_SCREENS * screen.volts
      ? [
          `Screens ${computed ? 'stand' : 'were read'} from ${voltsText(screen.lowest)} to ${voltsText(screen.highest)}: the curves are for ${voltsText(screen.volts)} and do not hold for a ${words.tube} far from it.`,
        ]
      : []),
    ...(model.cutoffKnown ? [] : ['The printed rows do not reach near cutoff: the coldest curves are extrapolated.']),
    ...(rating ? [] : ['No printed rating is given here, so no limit of dissipation is drawn.']),
  ]
}
