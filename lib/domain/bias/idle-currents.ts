/**
 * Plate, screen and cathode current of one tube by the method it was read with.
 *
 * Cathode methods: Ik = drop/R (÷ n tubes), Ia = Ik − Ig2.
 * Half primary:    Ia = drop/R (÷ n tubes), Ik = Ia + Ig2.
 * Screen current: measured, stated, or the typical share s of cathode current:
 * Ig2 = s·Ik, which is Ia·s/(1 − s).
 */
import { fail, ok, type Result } from '@/lib/domain/result'
import { type ErrorSource, sourceKey } from './error-source'
import type { IdleFault } from './idle-fault'
import type { CurrentMethod, IdleContext, Resistor, SocketReading } from './idle-reading'
import { type Meter, meterReading } from './meter'
import { add, div, exactly, mul, scale, sub, through, type Uncertain, withLimits, withStandard } from './uncertain'

export type EstimateReason =
  | { readonly kind: 'screen-share-assumed'; readonly share: number; readonly halfWidth: number }
  | { readonly kind: 'equal-split-assumed'; readonly sharedBy: number; readonly halfWidth: number }
  | { readonly kind: 'copper-warming-assumed'; readonly upToCelsius: number }
  | { readonly kind: 'cathode-at-chassis-assumed' }
  | { readonly kind: 'rating-stands-in'; readonly asked: string; readonly designation: string }

export type Currents = {
  readonly plate: Uncertain
  readonly screen: Uncertain
  readonly cathode: Uncertain
  readonly cathodeVoltage: Uncertain
  readonly estimates: readonly EstimateReason[]
  readonly estimated: { readonly plate: boolean; readonly screen: boolean; readonly cathode: boolean }
  /** False without a screen grid and with the screen strapped to the plate. */
  readonly ownScreen: boolean
}

/** Tubes in parallel seldom share equally: ± 10 % on each tube's part. From memory, no source. */
export const EQUAL_SPLIT_HALF_WIDTH = 0.1

/** Resistance of copper per °C at 20 °C: IEC 60228 (annealed copper, 0.00393). */
export const COPPER_PER_CELSIUS = 0.00393

/** What a winding may warm between a cold ohms reading and the idle reading. From memory, no source. */
export const USUAL_WARMING_CELSIUS = 15

const limits = (value: number, source: ErrorSource, halfWidth: number): Uncertain =>
  withLimits(value, sourceKey(source), halfWidth)

const resistorValue = ({ id, resistance, tolerance }: Resistor): Uncertain =>
  limits(resistance, { kind: 'resistor', name: id }, resistance * tolerance)

/** One reading per part: sockets that share the part share the reading and its error. */
export const dropName = (resistor: Resistor): string => `${resistor.id} drop`

/**
 * Warming only ever raises the resistance, by anything from nothing to the
 * most: the middle is taken, with limits at both ends (JCGM 100:2008, 4.3.8 note).
 */
function warmedResistance(method: CurrentMethod): Uncertain {
  const cold = resistorValue(method.resistor)
  if (method.kind !== 'half-primary-drop') return cold
  const half = (COPPER_PER_CELSIUS * method.possibleWarmingCelsius) / 2
  return mul(cold, limits(1 + half, { kind: 'copper-warming', name: method.resistor.id }, half))
}

function split(total: Uncertain, socket: string, sharedBy: number): Uncertain {
  if (sharedBy === 1) return total
  const part = limits(1, { kind: 'equal-split', name: socket }, EQUAL_SPLIT_HALF_WIDTH)
  return mul(scale(total, 1 / sharedBy), part)
}

const sharers = (method: CurrentMethod): number => (method.kind === 'cathode-sense' ? 1 : method.sharedBy)

function methodEstimates(method: CurrentMethod): EstimateReason[] {
  const sharedBy = sharers(method)
  const upToCelsius = method.kind === 'half-primary-drop' ? method.possibleWarmingCelsius : 0
  return [
    ...(sharedBy > 1
      ? [{ kind: 'equal-split-assumed', sharedBy, halfWidth: EQUAL_SPLIT_HALF_WIDTH } satisfies EstimateReason]
      : []),
    ...(upToCelsius > 0 ? [{ kind: 'copper-warming-assumed', upToCelsius } satisfies EstimateReason] : []),
  ]
}

type Screen =
  | { readonly kind: 'none' }
  | { readonly kind: 'current'; readonly current: Uncertain }
  | { readonly kind: 'share'; readonly share: Uncertain; readonly reason: EstimateReason }

const HAS_NO_SCREEN = new Set(['power-triode', 'triode', 'twin-triode'])

function readScreen(reading: SocketReading, meter: Meter): Result<Screen, IdleFault> {
  const { screen, socket, variant } = reading
  if (screen.kind === 'triode-strapped' || HAS_NO_SCREEN.has(variant.tubeClass)) return ok({ kind: 'none' })
  if (screen.kind === 'stated') {
    const source = sourceKey({ kind: 'screen-current', name: socket })
    return ok({ kind: 'current', current: withStandard(screen.current, source, screen.standardUncertainty) })
  }
  if (screen.kind === 'screen-resistor-drop') {
    const drop = meterReading(meter, screen.drop, dropName(screen.resistor))
    return ok({ kind: 'current', current: div(drop, resistorValue(screen.resistor)) })
  }
  const typical = variant.typicalScreenShare
  if (!typical) return fail({ code: 'missing-screen-share', socket, designation: variant.designation })
  const { share, halfWidth } = typical
  const uncertain = limits(share, { kind: 'screen-share', name: socket }, halfWidth)
  return ok({ kind: 'share', share: uncertain, reason: { kind: 'screen-share-assumed', share, halfWidth } })
}

type Three = Pick<Currents, 'plate' | 'screen' | 'cathode'>

function fromCathode(cathode: Uncertain, screen: Screen): Three {
  if (screen.kind === 'none') return { plate: cathode, screen: exactly(0), cathode }
  const screenCurrent = screen.kind === 'share' ? mul(cathode, screen.share) : screen.current
  return { plate: sub(cathode, screenCurrent), screen: screenCurrent, cathode }
}

function fromPlate(plate: Uncertain, screen: Screen): Three {
  if (screen.kind === 'none') return { plate, screen: exactly(0), cathode: plate }
  const ofPlate = (share: Uncertain) =>
    through(
      share,
      (s) => s / (1 - s),
      (s) => 1 / (1 - s) ** 2,
    )
  const screenCurrent = screen.kind === 'share' ? mul(plate, ofPlate(screen.share)) : screen.current
  return { plate, screen: screenCurrent, cathode: add(plate, screenCurrent) }
}

function estimated(method: CurrentMethod, screen: Screen, reasons: readonly EstimateReason[]): Currents['estimated'] {
  const byMethod = reasons.length > 0
  const byShare = screen.kind === 'share'
  const plateDirect = method.kind === 'half-primary-drop'
  return {
    plate: byMethod || (byShare && !plateDirect),
    // A measured screen current needs no assumption, whatever the method of the other two.
    screen: byShare,
    cathode: byMethod || (byShare && plateDirect),
  }
}

function cathodeVoltage({ socket, cathodeVoltage: read }: SocketReading, meter: Meter, drop: Uncertain): Uncertain {
  return read === null ? drop : meterReading(meter, read, `${socket} cathode volts`)
}

/** Only for a reading that `checkReading` let pass. */
export function readCurrents(reading: SocketReading, { meter }: IdleContext): Result<Currents, IdleFault> {
  const { method, socket } = reading
  const screen = readScreen(reading, meter)
  if (!screen.ok) return screen
  const drop = meterReading(meter, method.drop, dropName(method.resistor))
  const direct = split(div(drop, warmedResistance(method)), socket, sharers(method))
  const three =
    method.kind === 'half-primary-drop' ? fromPlate(direct, screen.value) : fromCathode(direct, screen.value)
  if (three.screen.value > three.cathode.value) {
    const [screenMilliamps, cathodeMilliamps] = [1000 * three.screen.value, 1000 * three.cathode.value]
    return fail({ code: 'screen-above-cathode', socket, screenMilliamps, cathodeMilliamps })
  }
  const reasons = methodEstimates(method)
  return ok({
    ...three,
    cathodeVoltage: cathodeVoltage(reading, meter, drop),
    estimates: screen.value.kind === 'share' ? [...reasons, screen.value.reason] : reasons,
    estimated: estimated(method, screen.value, reasons),
    ownScreen: screen.value.kind !== 'none',
  })
}
