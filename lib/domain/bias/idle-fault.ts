/** Readings that are refused before anything is computed. */
import { fail, ok, type Result } from '@/lib/domain/result'
import { cathodeVoltageOf, type IdleContext, type Resistor, type SocketReading } from './idle-reading'

/** Values carry the unit that the sentence shows. */
export type IdleFault =
  | { readonly code: 'not-an-output-tube'; readonly socket: string; readonly designation: string }
  | { readonly code: 'resistance-not-positive'; readonly socket: string; readonly part: string; readonly ohms: number }
  | {
      readonly code: 'tolerance-out-of-range'
      readonly socket: string
      readonly part: string
      readonly percent: number
    }
  | { readonly code: 'drop-negative'; readonly socket: string; readonly part: string; readonly volts: number }
  | { readonly code: 'shared-by-not-whole'; readonly socket: string; readonly sharedBy: number }
  | { readonly code: 'warming-out-of-range'; readonly socket: string; readonly celsius: number }
  | { readonly code: 'method-needs-cathode-resistor'; readonly socket: string }
  | { readonly code: 'missing-cathode-voltage'; readonly socket: string }
  | { readonly code: 'missing-screen-share'; readonly socket: string; readonly designation: string }
  | { readonly code: 'screen-current-negative'; readonly socket: string; readonly milliamps: number }
  | {
      readonly code: 'plate-below-cathode'
      readonly socket: string
      readonly plateVolts: number
      readonly cathodeVolts: number
    }
  /** Far beyond what any tube lives through: the drop, its unit or the resistance is not what it is taken for. */
  | {
      readonly code: 'current-beyond-belief'
      readonly socket: string
      readonly milliamps: number
      readonly watts: number
      /** Null: not known. */
      readonly ratingWatts: number | null
      readonly volts: number
      readonly part: string
    }
  | {
      readonly code: 'screen-above-cathode'
      readonly socket: string
      readonly screenMilliamps: number
      readonly cathodeMilliamps: number
    }

/** No winding of a working amplifier is believed to warm by more. Common practice, no source. */
export const MOST_WARMING_CELSIUS = 100

/** In ratings of the tube. Common practice, no source. */
export const MOST_RATINGS = 10
/** Where no rating is known. Common practice, no source. */
export const MOST_PLATE_AMPS = 1

/** The reading is whole but something is missing beside it; all others contradict themselves or the sheet. */
const INCOMPLETE: readonly IdleFault['code'][] = [
  'not-an-output-tube',
  'method-needs-cathode-resistor',
  'missing-cathode-voltage',
  'missing-screen-share',
]

export const isIncomplete = ({ code }: IdleFault): boolean => INCOMPLETE.includes(code)

type Check = IdleFault | null

function resistorFault(socket: string, { id, resistance, tolerance }: Resistor): Check {
  if (resistance <= 0) return { code: 'resistance-not-positive', socket, part: id, ohms: resistance }
  if (tolerance >= 0 && tolerance < 1) return null
  return { code: 'tolerance-out-of-range', socket, part: id, percent: 100 * tolerance }
}

function dropFault(socket: string, drop: number, resistor: Resistor): Check {
  if (drop < 0) return { code: 'drop-negative', socket, part: resistor.id, volts: drop }
  return resistorFault(socket, resistor)
}

function methodFault({ socket, method }: SocketReading, { bias }: IdleContext): Check {
  // A bias resistor in an amp entered as grid-supplied would be held to the wrong window.
  if (method.kind === 'cathode-bias' && bias !== 'cathode-resistor') {
    return { code: 'method-needs-cathode-resistor', socket }
  }
  if (method.kind !== 'cathode-sense' && !(Number.isInteger(method.sharedBy) && method.sharedBy >= 1)) {
    return { code: 'shared-by-not-whole', socket, sharedBy: method.sharedBy }
  }
  if (method.kind !== 'half-primary-drop') return null
  const celsius = method.possibleWarmingCelsius
  return celsius >= 0 && celsius <= MOST_WARMING_CELSIUS ? null : { code: 'warming-out-of-range', socket, celsius }
}

function screenFault({ socket, screen }: SocketReading): Check {
  if (screen.kind === 'screen-resistor-drop') return dropFault(socket, screen.drop, screen.resistor)
  if (screen.kind !== 'stated' || screen.current >= 0) return null
  return { code: 'screen-current-negative', socket, milliamps: 1000 * screen.current }
}

function voltageFault(reading: SocketReading, { bias }: IdleContext): Check {
  const { socket, plateVoltage, method } = reading
  const cathodeVoltage = cathodeVoltageOf(reading)
  // A cathode resistor holds the cathode far above the drop of a sense resistor in the same lead.
  const raised = bias === 'cathode-resistor' && method.kind === 'cathode-sense' && reading.cathodeVoltage === null
  if (cathodeVoltage === null || raised) return { code: 'missing-cathode-voltage', socket }
  if (plateVoltage >= cathodeVoltage) return null
  return { code: 'plate-below-cathode', socket, plateVolts: plateVoltage, cathodeVolts: cathodeVoltage }
}

export function checkReading(reading: SocketReading, context: IdleContext): Result<SocketReading, IdleFault> {
  const { socket, variant, method } = reading
  if (variant.role !== 'output') return fail({ code: 'not-an-output-tube', socket, designation: variant.asked })
  const fault =
    dropFault(socket, method.drop, method.resistor) ??
    methodFault(reading, context) ??
    screenFault(reading) ??
    voltageFault(reading, context)
  return fault ? fail(fault) : ok(reading)
}
