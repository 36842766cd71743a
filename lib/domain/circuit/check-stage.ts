/** Refuses a stage whose values cannot be, before anything is solved. The bounds are wide: no real amplifier is near them. */
import type { AmplifyingParameters } from '@/lib/domain/model/plate-curves'
import { MOST_TUBES, type OutputStage, type OutputTube, type ScreenFeed } from './output-stage'
import type { SolveFault } from './solve-fault'

export const WIDEST = { volts: 100_000, ohms: 1e9, amps: 1000 } as const

/** Parameters of the tube equations, inclusive. Any tube ever made is well inside. */
const PARAMETER_BOUNDS = {
  p: { lowest: 1e-9, highest: 1 },
  mu: { lowest: 0.1, highest: 10_000 },
  muA: { lowest: 0.1, highest: 1e6 },
  r: { lowest: 0, highest: 10 },
  kp: { lowest: 0.1, highest: 10_000 },
  x: { lowest: 1, highest: 3 },
  kg: { lowest: 1e-3, highest: 1e9 },
  kvb: { lowest: 1e-6, highest: 1e9 },
  k: { lowest: 1e-9, highest: 1 },
} as const

type Check = SolveFault | null

function outside(part: string, quantity: string, value: number, unit: string, lowest: number, highest: number): Check {
  if (value >= lowest && value <= highest) return null
  return { code: 'value-out-of-range', part, quantity, value, unit, lowest, highest }
}

const ohmsOutside = (part: string, quantity: string, value: number) =>
  outside(part, quantity, value, 'Ω', 0, WIDEST.ohms)
const ampsOutside = (part: string, quantity: string, value: number) =>
  outside(part, quantity, value, 'A', 0, WIDEST.amps)

type Bounds = { readonly lowest: number; readonly highest: number }

function parameterFault(socket: string, name: string, value: number, { lowest, highest }: Bounds): Check {
  return outside(socket, name, value, '', lowest, highest)
}

const parametersFault = (socket: string, tube: AmplifyingParameters): Check =>
  tube.kind === 'pentode'
    ? (parameterFault(socket, 'p', tube.p, PARAMETER_BOUNDS.p) ??
      parameterFault(socket, 'mu', tube.mu, PARAMETER_BOUNDS.mu) ??
      parameterFault(socket, 'muA', tube.muA, PARAMETER_BOUNDS.muA) ??
      parameterFault(socket, 'r', tube.r, PARAMETER_BOUNDS.r) ??
      parameterFault(socket, 'kp', tube.kp, PARAMETER_BOUNDS.kp))
    : (parameterFault(socket, 'mu', tube.mu, PARAMETER_BOUNDS.mu) ??
      parameterFault(socket, 'x', tube.x, PARAMETER_BOUNDS.x) ??
      parameterFault(socket, 'kg', tube.kg, PARAMETER_BOUNDS.kg) ??
      parameterFault(socket, 'kp', tube.kp, PARAMETER_BOUNDS.kp) ??
      parameterFault(socket, 'kvb', tube.kvb, PARAMETER_BOUNDS.kvb))

function namedFault(stage: OutputStage, tube: OutputTube): Check {
  const { socket, gridSupply, biasResistor } = tube
  if (gridSupply !== null && !stage.gridSupplies.some(({ id }) => id === gridSupply)) {
    return { code: 'unknown-part', socket, part: gridSupply }
  }
  if (biasResistor !== null && !stage.biasResistors.some(({ id }) => id === biasResistor)) {
    return { code: 'unknown-part', socket, part: biasResistor }
  }
  return null
}

const tubeFault = (stage: OutputStage, tube: OutputTube): Check =>
  parametersFault(tube.socket, tube.tube) ??
  ohmsOutside(tube.socket, 'grid leak', tube.gridLeak) ??
  ampsOutside(tube.socket, 'reverse grid current', tube.reverseGridCurrent) ??
  ohmsOutside(tube.socket, 'screen resistance', tube.screenResistance) ??
  ohmsOutside(tube.socket, 'sense resistance', tube.senseResistance) ??
  namedFault(stage, tube)

function screenFault(feed: ScreenFeed): Check {
  if (feed.kind === 'triode-strapped') return null
  if (feed.kind === 'primary-tap') return outside('screen feed', 'tap', feed.tap, '', 0, 1)
  if (feed.kind === 'dropper') {
    return ohmsOutside('screen feed', 'dropper', feed.resistance) ?? ampsOutside('screen feed', 'drawn', feed.drawn)
  }
  return (
    outside('screen feed', 'open-circuit voltage', feed.openCircuit, 'V', 0, WIDEST.volts) ??
    ohmsOutside('screen feed', 'source resistance', feed.sourceResistance) ??
    ampsOutside('screen feed', 'drawn', feed.drawn)
  )
}

function supplyFault({ supply, halfPrimary, mainsFactor }: OutputStage): Check {
  return (
    outside('supply', 'open-circuit voltage', supply.openCircuit, 'V', 0, WIDEST.volts) ??
    ohmsOutside('supply', 'source resistance', supply.sourceResistance) ??
    ampsOutside('supply', 'drawn', supply.drawn) ??
    (supply.rectifier && parameterFault('rectifier', 'k', supply.rectifier.k, PARAMETER_BOUNDS.k)) ??
    ohmsOutside('transformer', 'half primary a', halfPrimary.a) ??
    ohmsOutside('transformer', 'half primary b', halfPrimary.b) ??
    outside('mains', 'factor', mainsFactor, '', 0, 10)
  )
}

function twice<T>(parts: readonly T[], nameOf: (part: T) => string): Check {
  for (let i = 1; i < parts.length; i++) {
    const part = nameOf(parts[i] as T)
    for (let earlier = 0; earlier < i; earlier++) {
      if (nameOf(parts[earlier] as T) === part) return { code: 'name-used-twice', part }
    }
  }
  return null
}

const socketOf = ({ socket }: OutputTube) => socket
const idOf = ({ id }: { readonly id: string }) => id

export function stageFault(stage: OutputStage): Check {
  const { tubes, gridSupplies, biasResistors } = stage
  if (tubes.length < 1 || tubes.length > MOST_TUBES) {
    return { code: 'tube-count', count: tubes.length, most: MOST_TUBES }
  }
  for (const tube of tubes) {
    const fault = tubeFault(stage, tube)
    if (fault) return fault
  }
  for (const { id, voltage } of gridSupplies) {
    const fault = outside(id, 'grid voltage', voltage, 'V', -WIDEST.volts, WIDEST.volts)
    if (fault) return fault
  }
  for (const { id, resistance } of biasResistors) {
    const fault = ohmsOutside(id, 'resistance', resistance)
    if (fault) return fault
  }
  return (
    twice(tubes, socketOf) ??
    twice(gridSupplies, idOf) ??
    twice(biasResistors, idOf) ??
    screenFault(stage.screenFeed) ??
    supplyFault(stage)
  )
}
