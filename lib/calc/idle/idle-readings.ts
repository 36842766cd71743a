/** From the input to what the idle computation takes. */

import type {
  CurrentMethod,
  IdleContext,
  Resistor,
  ScreenCurrentSource,
  SocketReading,
} from '@/lib/domain/bias/idle-reading'
import { DEFAULT_IDLE_WINDOWS } from '@/lib/domain/bias/idle-verdict'
import { USUAL_INPUT_RESISTANCE } from '@/lib/domain/bias/meter'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'
import type { IdleInput, SocketInput } from './idle-input'

export type Named = { readonly ohms: number; readonly tolerancePercent: number; readonly part?: string | undefined }

const resistor = ({ part, ohms: resistance, tolerancePercent }: Named, usualName: string): Resistor => ({
  id: part ?? usualName,
  resistance: ohms(resistance),
  tolerance: ratio(tolerancePercent / 100),
})

function currentMethod({ socket, current }: SocketInput): CurrentMethod {
  switch (current.method) {
    case 'cathode-sense':
      return {
        kind: 'cathode-sense',
        drop: volts(current.dropMillivolts / 1000),
        resistor: resistor(current, `${socket} sense resistor`),
      }
    case 'cathode-bias':
      return {
        kind: 'cathode-bias',
        drop: volts(current.dropVolts),
        resistor: resistor(current, `${socket} cathode resistor`),
        sharedBy: current.sharedBy,
      }
    case 'half-primary-drop':
      return {
        kind: 'half-primary-drop',
        drop: volts(current.dropMillivolts / 1000),
        resistor: resistor(current, `${socket} half primary`),
        sharedBy: current.sharedBy,
        possibleWarmingCelsius: current.possibleWarmingCelsius,
      }
  }
}

function screenSource({ socket, screenCurrent }: SocketInput): ScreenCurrentSource {
  switch (screenCurrent.source) {
    case 'typical-share':
    case 'triode-strapped':
      return { kind: screenCurrent.source }
    case 'screen-resistor-drop': {
      const over = resistor(screenCurrent, `${socket} screen resistor`)
      return { kind: 'screen-resistor-drop', drop: volts(screenCurrent.dropVolts), resistor: over }
    }
    case 'stated': {
      const { milliamps, standardMilliamps } = screenCurrent
      return { kind: 'stated', current: amps(milliamps / 1000), standardUncertainty: amps(standardMilliamps / 1000) }
    }
  }
}

const maybeVolts = (value: number | undefined) => (value === undefined ? null : volts(value))

export const socketReading = (given: SocketInput, variant: TubeVariant): SocketReading => ({
  socket: given.socket,
  variant,
  plateVoltage: volts(given.plateVolts),
  cathodeVoltage: maybeVolts(given.cathodeVolts),
  screenVoltage: maybeVolts(given.screenVolts),
  gridVoltage: maybeVolts(given.gridVolts),
  method: currentMethod(given),
  screen: screenSource(given),
})

export function idleContext({
  bias,
  service,
  meter,
  windowPercent,
  wallVolts,
  markedMainsVolts,
}: IdleInput): IdleContext {
  const own = windowPercent && { low: ratio(windowPercent.low / 100), high: ratio(windowPercent.high / 100) }
  return {
    bias,
    service,
    meter: { id: 'the meter', ...meter, inputResistance: USUAL_INPUT_RESISTANCE },
    windows: own ? { gridSuppliedPushPull: own, cathodeResistor: own, singleEnded: own } : DEFAULT_IDLE_WINDOWS,
    wallVoltage: maybeVolts(wallVolts),
    markedMainsVoltage: maybeVolts(markedMainsVolts),
  }
}
