/**
 * Why a circuit could not be made, changed, solved or trimmed, in bench words. Exhaustive: a
 * new fault does not compile until it has its sentence here. What was assumed and what to
 * mind: amp/assumption-text.ts, change/cautions/what-if-caution-text.ts.
 */
import { milliampsText, voltsText, wattsText } from '@/lib/domain/bias/bias-figures'
import { idleFaultText } from '@/lib/domain/bias/bias-text'
import type { Words } from '@/lib/domain/words'
import type { CircuitFault } from './amp/circuit-fault'
import type { WhatIfFault } from './change/changed-circuit'
import type { NoRating } from './change/trims'
import type { SolveFault } from './solve-fault'
import type { TrimFault } from './what-if/trim-for-target'

const milli = (milliamps: number): string => milliampsText(milliamps / 1000)

/** A value of any size with its unit: four significant figures, no unit where there is none. */
const amount = (value: number, unit: string): string =>
  `${Number(value.toPrecision(4))}${unit === '' ? '' : ` ${unit}`}`

/** "V4 and V5", "V4, V5 and V6". */
export function socketList(sockets: readonly string[]): string {
  const last = sockets.at(-1) ?? ''
  return sockets.length < 2 ? last : `${sockets.slice(0, -1).join(', ')} and ${last}`
}

/** "4.7 kΩ", "0.22 MΩ". */
export function resistanceText(ohms: number): string {
  if (ohms >= 1e6) return amount(ohms / 1e6, 'MΩ')
  return ohms >= 1000 ? amount(ohms / 1000, 'kΩ') : amount(ohms, 'Ω')
}

export function solveFaultText(fault: SolveFault, words: Words): string {
  switch (fault.code) {
    case 'tube-count':
      return `The stage has ${fault.count} ${words.tubes}. A stage of 1 to ${fault.most} can be computed.`
    case 'value-out-of-range': {
      const { part, quantity, value, unit, lowest, highest } = fault
      return `${part}: ${quantity} is ${amount(value, unit)}. It must be from ${amount(lowest, unit)} to ${amount(highest, unit)}.`
    }
    case 'unknown-part':
      return `${fault.socket} hangs on “${fault.part}”, which the stage does not have.`
    case 'name-used-twice':
      return `“${fault.part}” stands for two parts of the stage. Give each its own name.`
    case 'unknown-socket':
      return `The stage has no socket ${fault.socket}.`
    case 'supply-collapsed':
      return `The rest of the amplifier is set to draw more than the supply gives: without any ${words.tube} the ${fault.node} would stand at ${voltsText(fault.volts)}. Check the supply’s figures.`
    case 'did-not-converge':
      return `No operating point was found in ${fault.iterations} steps. Check the values of the circuit.`
  }
}

export function trimFaultText(fault: TrimFault | NoRating, words: Words): string {
  switch (fault.code) {
    case 'target-out-of-reach': {
      const shown = (value: number) => (fault.unit === 'A' ? milliampsText(value) : wattsText(value))
      return `No setting reaches ${shown(fault.target)}: the hottest one gives ${shown(fault.most)}.`
    }
    case 'nothing-to-trim':
      return `No ${words.tube} hangs on ${fault.part}, so there is nothing to set by it.`
    case 'target-not-positive':
      return `A target is above zero; ${amount(fault.value, '')} was asked for.`
    case 'no-rating':
      return `${socketList(fault.sockets)}: no ${words.plate} rating is known for every ${words.tube} there, so there is no target to set to.`
    default:
      return solveFaultText(fault, words)
  }
}

export function circuitFaultText(fault: CircuitFault, words: Words): string {
  switch (fault.code) {
    case 'no-output-socket':
      return `The sheet has no output socket in the group “${fault.group}”.`
    case 'no-current-read':
      return `No current of the group “${fault.group}” was read. Read the ${words.plate} volts and one way of finding current at one socket at least.`
    case 'type-not-noted':
      return `${fault.socket}: the sheet does not say which ${words.tube} is fitted.`
    case 'type-not-known':
      return `${fault.socket}: ${fault.designation} is not known here. Write its type down under the shop’s own types.`
    case 'no-curves':
      return `${fault.socket}: no curves are known for ${fault.designation} as an output ${words.tube}, so nothing is predicted.`
    case 'bias-kind-not-noted':
      return `${fault.socket}: the sheet does not say whether it is grid-supplied (“fixed”) or has a cathode resistor.`
    case 'cathode-resistor-not-known':
      return `${fault.socket}: the ohms of its cathode resistor are not on the sheet and cannot be found from the readings.`
    case 'mains-not-known':
      return `The ${words.mains} volts marked on the amplifier and read at the wall must both be above 0 V.`
    case 'readings-refused':
      return idleFaultText(fault.fault, words)
    case 'socket-dead':
      return `${fault.socket} draws ${milli(fault.milliamps)}: a dead socket. Find out why first; a circuit made from it would predict nothing.`
    case 'socket-unlike-type':
      return `${fault.socket}: ${milli(fault.readMilliamps)} was read where ${fault.designation} would draw ${milli(fault.typeMilliamps)} at the volts there. Check grid and screen volts, the type on the sheet, and the ${words.tube}.`
    case 'grid-volts-not-found':
      return `${fault.socket}: no negative grid voltage makes its type draw the ${milli(fault.milliamps)} read. Read the grid volts, and check the type on the sheet.`
    case 'no-solution':
      return solveFaultText(fault.fault, words)
  }
}

export function whatIfFaultText(fault: WhatIfFault, words: Words): string {
  switch (fault.code) {
    case 'type-not-known':
      return `${fault.designation} is not known here.`
    case 'no-curves':
      return `No curves are known for ${fault.designation}, so nothing is predicted.`
    case 'not-an-output-tube':
      return `${fault.designation} is no output ${words.tube}.`
    case 'unknown-socket':
      return `This group has no socket ${fault.socket}.`
    case 'no-grid-supply':
      return 'This group has no grid supply: its idle is set by the cathode resistor.'
    case 'grid-volts-not-negative':
      return `Grid volts are below 0 V; ${voltsText(fault.volts)} was given.`
    case 'no-cathode-resistor':
      return 'No cathode resistor sets the idle of this group: its grid volts do.'
    case 'cathode-ohms-not-positive':
      return `A cathode resistor is above 0 Ω; ${amount(fault.ohms, 'Ω')} was given.`
    case 'mains-out-of-range':
      return `${voltsText(fault.volts)} at the wall is outside ${voltsText(fault.lowest)} to ${voltsText(fault.highest)}, where heaters and supplies can be reckoned with.`
    case 'rectifier-not-known':
      return `${fault.designation} is no rectifier whose voltage drop is known here.`
    case 'rectifier-now-not-known':
      return `The voltage drop of the ${fault.designation} fitted now is not known, so the effect of another rectifier cannot be said.`
    case 'no-solution':
      return solveFaultText(fault.fault, words)
  }
}
