/** One plain bench reading: 425 V, 35.2 mV over 1 Ω, a 6L6GC in a grid-supplied push-pull amp. */

import type { IdleResult } from '@/lib/domain/bias/idle'
import { computeIdle } from '@/lib/domain/bias/idle'
import type { CurrentMethod, IdleContext, Resistor, SocketReading } from '@/lib/domain/bias/idle-reading'
import { DEFAULT_IDLE_WINDOWS } from '@/lib/domain/bias/idle-verdict'
import { type Meter, USUAL_INPUT_RESISTANCE } from '@/lib/domain/bias/meter'
import { findTubeType } from '@/lib/domain/tube/find-tube-type'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import { ohms, ratio, volts } from '@/lib/domain/units'

export function variant(designation: string): TubeVariant {
  const found = findTubeType(designation, HANDBOOK_ONLY)
  if (!found) throw new Error(`No tube type ${designation}`)
  return found
}

export const resistor = (resistance: number, tolerance = 0.01, id = 'V3 resistor'): Resistor => ({
  id,
  resistance: ohms(resistance),
  tolerance: ratio(tolerance),
})

export const benchMeter: Meter = {
  id: 'bench meter',
  percentOfReading: 0.5,
  counts: 2,
  displayCounts: 6000,
  inputResistance: USUAL_INPUT_RESISTANCE,
}

export const perfectMeter: Meter = { ...benchMeter, percentOfReading: 0, counts: 0 }

export const overCathodeSense = (drop: number, ohm = 1, tolerance = 0.01): CurrentMethod => ({
  kind: 'cathode-sense',
  drop: volts(drop),
  resistor: resistor(ohm, tolerance),
})

export const reading = (given: Partial<SocketReading> = {}): SocketReading => ({
  socket: 'V3',
  variant: variant('6L6GC'),
  plateVoltage: volts(425),
  cathodeVoltage: null,
  screenVoltage: null,
  gridVoltage: null,
  method: overCathodeSense(0.0352),
  screen: { kind: 'typical-share' },
  ...given,
})

export const context = (given: Partial<IdleContext> = {}): IdleContext => ({
  bias: 'grid-supplied',
  service: 'push-pull-class-ab',
  meter: benchMeter,
  windows: DEFAULT_IDLE_WINDOWS,
  wallVoltage: null,
  markedMainsVoltage: null,
  ...given,
})

export function idle(given: Partial<SocketReading> = {}, amp: Partial<IdleContext> = {}): IdleResult {
  const computed = computeIdle(reading(given), context(amp))
  if (!computed.ok) throw new Error(`Refused: ${JSON.stringify(computed.fault)}`)
  return computed.value
}
