/** What was assumed and how to replace it by a measurement. Exhaustive. */
import { milliampsText, percentText, voltsText } from '@/lib/domain/bias/bias-figures'
import { resistanceText, socketList } from '@/lib/domain/circuit/circuit-text'
import { capital, type Words } from '@/lib/domain/words'
import type { Assumption } from './assumption'

function supplyText(
  assumption: Extract<Assumption, { readonly code: `supply-${string}` | `${string}-from-sag` | `rectifier-${string}` }>,
  words: Words,
): string {
  switch (assumption.code) {
    case 'supply-taken-stiff':
      return `Supply taken as stiff: neither its open-circuit volts nor its source resistance is noted. With a real one, ${words.supply} moves and changes come out smaller.`
    case 'source-from-sag':
      return `Source resistance of the supply taken as ${resistanceText(assumption.ohms)}, from its open-circuit volts and the volts read; what the rest of the amplifier draws is counted in, so it is a little high.`
    case 'rest-from-sag':
      return `The rest of the amplifier taken to draw ${milliampsText(assumption.milliamps / 1000)}, from open-circuit volts, source resistance and the volts read.`
    case 'supply-facts-contradict':
      return `The noted supply (${voltsText(assumption.openVolts)} without load) cannot give the ${voltsText(assumption.readVolts)} found at the reservoir: the volts read were kept. Check the noted figures.`
    case 'rectifier-taken-solid-state':
      return 'Rectifier taken as solid state: none is noted and the sheet has no rectifier socket.'
    case 'rectifier-drop-not-known':
      return `No voltage drop is known for the rectifier ${assumption.designation}: its part of the sag is left out.`
  }
}

function screensText(
  assumption: Extract<Assumption, { readonly code: `screen-${string}` | `screens-${string}` | 'tap-taken-middle' }>,
  words: Words,
): string {
  switch (assumption.code) {
    case 'screen-feed-taken-own':
      return 'Screens taken to hang on a node of the supply: how they are fed is not noted.'
    case 'screen-volts-not-read':
      return `Screen volts were not read: the screens are taken to stand at ${words.supply}, less the drop over the noted dropper. Screen volts move idle current strongly; read them.`
    case 'screen-dropper-from-readings':
      return `Resistance to the screens taken as ${resistanceText(assumption.ohms)}: the whole drop is put down to the screens themselves, so it is a little high.`
    case 'screens-taken-stiff':
      return `Screens taken to stay at ${voltsText(assumption.volts)}: they stand too far from ${words.supply} for a plain dropper, and none is noted.`
    case 'screen-facts-contradict':
      return `The noted dropper of ${resistanceText(assumption.ohms)} does not account for the ${voltsText(assumption.dropVolts)} between reservoir and screens: the volts read were kept. Check the dropper.`
    case 'screen-resistor-not-known':
      return `${socketList(assumption.sockets)}: no screen resistor on the sheet, so none is reckoned with.`
    case 'tap-taken-middle':
      return 'Screen tap taken at the middle of the half primary: its place is not noted. At idle that moves volts by next to nothing.'
  }
}

function gridText(assumption: Extract<Assumption, { readonly code: `grid-${string}` }>, words: Words): string {
  switch (assumption.code) {
    case 'grid-volts-implied':
      return `Grid volts not measured at ${socketList(assumption.sockets)}: ${voltsText(assumption.volts)} ± ${voltsText(assumption.plusMinusVolts)} is where ${words.tubes} as known by type and records draw what was read. Read them.`
    case 'grid-volts-from-sheet':
      return `Grid volts not measured at ${socketList(assumption.sockets)}: the ${voltsText(assumption.volts)} noted for the supply were taken, in proportion to the ${words.mains}.`
    case 'grid-volts-of-others':
      return `Grid volts not measured at ${socketList(assumption.sockets)}: taken as ${voltsText(assumption.volts)}, the mean of the sockets where they were.`
    case 'grid-taken-at-chassis':
      return `Grids of ${socketList(assumption.sockets)} taken at 0 V: they go to chassis through their leaks and were not read.`
    case 'grid-loading-corrected':
      return `Grid volts as read were raised by ${percentText(assumption.percent)}: the meter pulls the grid down through its leak.`
    case 'grid-leak-not-known':
      return 'Grid leak not noted: the meter’s pull on the grid is not corrected. With 10 MΩ at 220 kΩ it reads 2 % low.'
  }
}

export function assumptionText(assumption: Assumption, words: Words): string {
  switch (assumption.code) {
    case 'half-primary-not-known':
      return `${socketList(assumption.sockets)}: ohms of the half primary not on the sheet; taken as those of the other half, or none.`
    case 'sides-not-known':
      return `Sides of ${socketList(assumption.sockets)} are not noted: taken in turn as A and B.`
    case 'cathode-resistor-from-readings':
      return `Cathode resistor of ${socketList(assumption.sockets)} taken as ${resistanceText(assumption.ohms)}, from the volts across it and the current read. Measure it with the amplifier dead.`
    case 'socket-not-read':
      return `No current was read at ${socketList(assumption.sockets)}: taken to draw as the others do.`
    case 'current-is-estimate':
      return `The current read at ${socketList(assumption.sockets)} rests on an assumption itself: screen share, equal split or warm copper.`
    case 'all-follows-mains':
      return `Every supply, grid supply and heaters too, is taken to follow the ${words.mains} in proportion. ${capital(words.tubes)} are reckoned with heaters at their nominal volts.`
    case 'supply-taken-stiff':
    case 'source-from-sag':
    case 'rest-from-sag':
    case 'supply-facts-contradict':
    case 'rectifier-taken-solid-state':
    case 'rectifier-drop-not-known':
      return supplyText(assumption, words)
    case 'screen-feed-taken-own':
    case 'screen-volts-not-read':
    case 'screen-dropper-from-readings':
    case 'screens-taken-stiff':
    case 'screen-facts-contradict':
    case 'screen-resistor-not-known':
    case 'tap-taken-middle':
      return screensText(assumption, words)
    default:
      return gridText(assumption, words)
  }
}
