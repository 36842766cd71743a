/** Each side check as a title, a sentence and the formula it was worked out by. Exhaustive. */
import { milliampsText, percentText, voltsText } from '@/lib/domain/bias/bias-figures'
import { resistanceText, socketList } from '@/lib/domain/circuit/circuit-text'
import type { Words } from '@/lib/domain/words'
import type { Amount, Missing, SideCheck, SideCheckName, SideVerdict, SideWhy } from './side-check'

export type SideCheckText = {
  readonly title: string
  /** Value, limit and what to make of them. */
  readonly sentence: string
  readonly formula: string
}

const TITLES: Readonly<Record<SideCheckName, string>> = {
  'screen-dissipation': 'Screen dissipation',
  'grid-leak': 'Grid leak',
  'heater-current': 'Heater winding, current',
  'heater-volts': 'Heater winding, volts',
  'coupling-leakage': 'Leak into the grid',
  'reservoir-discharge': 'Discharge of the reservoir',
  'reservoir-energy': 'Energy in the reservoir',
  'discharge-resistor': 'Discharge resistor',
  ripple: 'Ripple at the reservoir',
  'clipping-power': 'Power at clipping, estimate',
}

const FORMULAS: Readonly<Record<SideCheckName, string>> = {
  'screen-dissipation': 'Pg2 = (Vg2 − Vk) · Ig2',
  'grid-leak': 'R against the printed limit for this kind of bias',
  'heater-current': 'sum of the printed heater currents against the winding',
  'heater-volts': 'printed heater volts within 10 % of the winding',
  'coupling-leakage': 'I = (Vgrid − Vsupply) / Rleak',
  'reservoir-discharge': 't = R · C · ln(V0 / V)',
  'reservoir-energy': 'E = ½ · C · V²',
  'discharge-resistor': 'P = V² / R in the first instant',
  ripple: 'Vpp = I / (2 · f · C)',
  'clipping-power': 'P = swing² / (2 · R) on the load line',
}

const VERDICTS: Readonly<Record<SideVerdict, string>> = {
  ok: 'OK',
  caution: 'Mind',
  over: 'Over',
  'cannot-say': 'Cannot say',
}

export const sideVerdictWord = (verdict: SideVerdict): string => VERDICTS[verdict]

/** "4.42 W", "0.22 MΩ". */
export function amountText({ amount, unit }: Amount): string {
  if (unit === 'Ω') return resistanceText(amount)
  return unit === '%' ? percentText(amount) : `${Number(amount.toPrecision(3))} ${unit}`
}

const micro = (microfarads: number): string => `${Number(microfarads.toPrecision(3))} µF`

function missingText(what: Missing, { plate, supply }: Words): string {
  switch (what) {
    case 'supply volts':
      return `${supply} volts`
    case 'plate load':
      return `the transformer’s load (${plate} to ${plate})`
    case 'screen rating':
      return 'a printed screen rating'
    default:
      return what
  }
}

function liftText(
  { liftVolts, doubtVolts, insulationOhms }: Extract<SideWhy, { code: 'grid-lift' }>,
  words: Words,
): string {
  const stands = `The grid stands ${voltsText(Math.abs(liftVolts))} ${liftVolts < 0 ? 'below' : 'above'} its supply`
  if (liftVolts <= doubtVolts)
    return `${stands}, which the meter cannot tell from nothing (± ${voltsText(doubtVolts)}).`
  const capacitor =
    insulationOhms === null
      ? ''
      : ` As leakage of the coupling capacitor it would be ${resistanceText(insulationOhms)} of insulation.`
  return `${stands}. Pull the ${words.tube} and read again: what stays is the coupling capacitor, what goes is the ${words.tube}.${capacitor}`
}

function heaterText({ tubes, unknown, leftAmps }: Extract<SideWhy, { code: 'heater-sum' }>, words: Words): string {
  const left = `${Number(Math.abs(leftAmps).toPrecision(2))} A ${leftAmps < 0 ? 'too much' : 'left'}`
  const sum = `${tubes} ${tubes === 1 ? words.tube : words.tubes} on the winding, ${left}.`
  return unknown.length === 0 ? sum : `${sum} ${socketList(unknown)}: heater current not known, so it is at least that.`
}

function loadText({ where, loadOhms, tubes }: Extract<SideWhy, { code: 'clips' }>, words: Words): string {
  const first = where === 'at-zero-grid' ? 'when the grid reaches 0 V' : 'at cutoff'
  const stage = tubes === 1 ? `One ${words.tube}` : `${tubes} ${words.tubes}`
  return `${stage} into ${resistanceText(loadOhms)}: clips first ${first}. An estimate with stiff supplies and no losses, within some 30 % for push-pull; no measurement.`
}

function reservoirText(
  why: Extract<SideWhy, { readonly code: 'meter-proves' | 'charge' | 'pulse-rating' | 'ripple-share' }>,
  words: Words,
): string {
  switch (why.code) {
    case 'meter-proves':
      return `From ${voltsText(why.fromVolts)} to ${voltsText(why.toVolts)} through ${resistanceText(why.ohms)}, ${micro(why.microfarads)}. A computed time proves nothing: capacitors exceed their print, resistors go open and volts come back. The meter proves it, and proves it again a minute later.`
    case 'charge':
      return `${micro(why.microfarads)} at ${voltsText(why.volts)}. Lethal, and it stays after unplugging.`
    case 'pulse-rating':
      return `${voltsText(why.volts)} across ${resistanceText(why.ohms)} in the first instant: the resistor needs that pulse and that voltage in its rating.`
    case 'ripple-share':
      return `${voltsText(why.voltsPeakToPeak)} peak to peak at ${milliampsText(why.milliamps / 1000)} and ${why.hertz} Hz ${words.mains}. An upper estimate.`
  }
}

function whyText(why: SideWhy, words: Words): string {
  switch (why.code) {
    case 'missing':
      return `Not known: ${socketList(why.what.map((one) => missingText(one, words)))}.`
    case 'against-limit':
      return `${percentText(why.percent)} of the rating at idle. Driven to the full it rises several times over.`
    case 'limit-in-band':
      return `${percentText(why.percent)} of the rating at idle, and the limit lies inside the band of the reading.`
    case 'against-printed':
      return `Printed for ${why.designation}${why.remark === '' ? '' : ` (${why.remark})`}. A leak that serves several ${words.tubes} is held to that limit over their number.`
    case 'heater-sum':
      return heaterText(why, words)
    case 'heaters-suit':
      return `Suits every ${words.tube} on the sheet whose heater is known.`
    case 'heaters-differ':
      return `${socketList(why.sockets)}: no way of wiring the heater suits this winding.`
    case 'grid-lift':
      return liftText(why, words)
    case 'clips':
      return loadText(why, words)
    case 'screens-move':
      return 'The screens swing with the signal here, which the estimate does not follow.'
    default:
      return reservoirText(why, words)
  }
}

export function sideCheckText(check: SideCheck, words: Words): SideCheckText {
  const { name, part, value, limit, why } = check
  const figures = [...(value ? [amountText(value)] : []), ...(limit ? [`limit ${amountText(limit)}`] : [])].join(', ')
  const sentence = whyText(why, words)
  return {
    title: part === '' ? TITLES[name] : `${part}: ${TITLES[name].charAt(0).toLowerCase()}${TITLES[name].slice(1)}`,
    sentence: figures === '' ? sentence : `${figures}. ${sentence}`,
    formula: FORMULAS[name],
  }
}
