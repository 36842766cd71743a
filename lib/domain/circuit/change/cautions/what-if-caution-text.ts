/** What to mind before a change is made, in bench words. Exhaustive. */
import { milliampsText, percentText, voltsText, wattsText } from '@/lib/domain/bias/bias-figures'
import { ratingSystemText } from '@/lib/domain/bias/bias-text'
import { KNEE_VOLTS } from '@/lib/domain/circuit/idle-solution'
import { capital, type Words } from '@/lib/domain/words'
import type { WhatIfCaution } from './what-if-caution'

const milli = (milliamps: number): string => milliampsText(milliamps / 1000)
const ampsText = (amperes: number): string => `${Number(amperes.toPrecision(3))} A`
const microfaradsText = (microfarads: number): string => `${Number(microfarads.toPrecision(3))} µF`

const MANY_STAND_IT = 'Many amplifiers exceed it and the better old ones stand it; you decide.'

type Over = Extract<WhatIfCaution, { readonly limit: number; readonly system: unknown }>

function overText(caution: Over, words: Words): string {
  const { socket, value, limit, system } = caution
  const against = `(${ratingSystemText(system)})`
  switch (caution.code) {
    case 'plate-volts-over':
      return `${socket}: ${words.plate} to cathode would be ${voltsText(value)}, printed limit ${voltsText(limit)} ${against}. ${MANY_STAND_IT}`
    case 'screen-volts-over':
      return `${socket}: screen to cathode would be ${voltsText(value)}, printed limit ${voltsText(limit)} ${against}. ${MANY_STAND_IT}`
    case 'cathode-current-over':
      return `${socket}: cathode current would be ${milli(value)} at idle, printed limit ${milli(limit)} ${against}.`
    case 'screen-watts-over':
      return `${socket}: the screen would dissipate ${wattsText(value)} at idle, printed limit ${wattsText(limit)} ${against}. Driven, it dissipates more.`
  }
}

type OfRectifier = Extract<
  WhatIfCaution,
  { readonly code: `reservoir-${string}` | 'rectifier-current-over' | 'volts-before-warm-up' }
>

function rectifierText(caution: OfRectifier, words: Words): string {
  const name = caution.designation === '' ? 'Solid state' : caution.designation
  switch (caution.code) {
    case 'reservoir-too-large':
      return `${name} is printed for a reservoir of ${microfaradsText(caution.limit)} at most; here it is ${microfaradsText(caution.microfarads)}. The charging current at switch-on can destroy it.`
    case 'reservoir-not-known':
      return `${name} is printed for a reservoir of ${microfaradsText(caution.limit)} at most. The one here is not noted: look before fitting.`
    case 'reservoir-limit-not-printed':
      return `No reservoir limit is known for ${name}: look it up on its sheet before fitting.`
    case 'rectifier-current-over':
      return `${name} would carry ${milli(caution.milliamps)} at idle, printed output ${milli(caution.limit)}. Driven, it carries more.`
    case 'volts-before-warm-up':
      return `${name} gives volts before the output ${words.tubes} draw: up to ${voltsText(caution.openVolts)} at the reservoir at every switch-on, where ${voltsText(caution.idleVolts)} is idle. Check the voltage ratings of the capacitors, coupling capacitors too.`
  }
}

type OfFit = Extract<WhatIfCaution, { readonly code: 'other-base' | `heater-${string}` }>

function fitText(caution: OfFit, words: Words): string {
  const { part, designation } = caution
  switch (caution.code) {
    case 'other-base':
      return `${designation} has another base or uses a pin that ${part} may not be wired for (${caution.base}). It must not be fitted before the socket’s wiring has been checked pin by pin.`
    case 'heater-volts-differ':
      return `${designation} has a heater of ${voltsText(caution.volts)}; the ${words.tube} in ${part} has one of ${voltsText(caution.nowVolts)}.`
    case 'heater-takes-more':
      return `${designation} takes ${ampsText(caution.amps)} of heater current in ${part}, where ${ampsText(caution.nowAmps)} flow now. See whether the winding stands it.`
  }
}

function solutionText(
  caution: Extract<WhatIfCaution, { readonly code: 'grid-not-negative' | 'plate-below-knee' | 'heaters-off-nominal' }>,
  words: Words,
): string {
  switch (caution.code) {
    case 'grid-not-negative':
      return `${caution.socket}: the grid would stand ${voltsText(caution.gridToCathodeVolts)} against its cathode. From 0 V it draws current, which is left out: the prediction does not hold.`
    case 'plate-below-knee':
      return `${caution.socket}: the ${words.plate} would stand ${voltsText(caution.plateToCathodeVolts)} above its cathode. Below ${KNEE_VOLTS} V the prediction is an order of magnitude only.`
    case 'heaters-off-nominal':
      return `Heaters are ${percentText(Math.abs(caution.percent))} ${caution.percent > 0 ? 'above' : 'below'} nominal with the ${words.mains}; the curves are those of nominal heaters.`
  }
}

export function whatIfCautionText(caution: WhatIfCaution, words: Words): string {
  switch (caution.code) {
    case 'computed-not-read':
      return `Computed, not measured: set the stage cold, fit, warm up, read, and set by what is read.`
    case 'curves-stand-in':
      return `${caution.socket}: no usable rows of ${caution.designation} are known; the curves of ${caution.curvesOf} stand in, with a wider band.`
    case 'extrapolated':
      return `${caution.socket}: the point lies far outside the handbook rows the curves were fitted to, so the band is wider.`
    case 'cutoff-not-known':
      return `${caution.socket}: the handbook rows of ${caution.designation} are all about equally far from cutoff, so cold points are extrapolation.`
    case 'records-disagree':
      return `${caution.socket}: test records and reading differ by more than their uncertainties. Another ${words.tube}, another test point, or a fault around the socket.`
    case 'pulled-for-a-look':
      return `With ${caution.socket} empty the stage is unbalanced: for a reading at idle only, never driven. ${capital(words.supply)} is lethal; the amplifier is off and discharged while a ${words.tube} is pulled.`
    case 'other-base':
    case 'heater-volts-differ':
    case 'heater-takes-more':
      return fitText(caution, words)
    case 'plate-volts-over':
    case 'screen-volts-over':
    case 'cathode-current-over':
    case 'screen-watts-over':
      return overText(caution, words)
    case 'grid-not-negative':
    case 'plate-below-knee':
    case 'heaters-off-nominal':
      return solutionText(caution, words)
    default:
      return rectifierText(caution, words)
  }
}
