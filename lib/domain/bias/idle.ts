/**
 * Idle of one output tube, straight from what the bench meter shows.
 *
 * The cathode returns plate and screen current together, so
 *   Ik = Vk/Rk,  Ia = Ik − Ig2,  Pa = (Va − Vk)·Ia,  Pg2 = (Vg2 − Vk)·Ig2.
 * Voltages are DC to chassis, no signal, warmed up. Control-grid current is
 * taken as zero, which holds at idle for a healthy tube. No model of the tube
 * enters: only the readings, the printed rating of the variant and, where the
 * screen current was not measured, the type's typical share, marked as an
 * assumption. With the screen strapped to the plate all current and power count
 * as plate current and power.
 *
 * Every result has a 95 % band (JCGM 100:2008; coverage.ts) made of the meter's gain
 * and counts, the resistors, and the assumptions. All results are plain objects.
 */
import { fail, ok, type Result } from '@/lib/domain/result'
import type { RatingSystem } from '@/lib/domain/tube/tube-variant'
import { type Banded, banded } from './banded'
import { type Caution, cautionsOf } from './cautions'
import { type ErrorSource, sourceOfKey } from './error-source'
import { type Currents, type EstimateReason, readCurrents } from './idle-currents'
import { checkReading, type IdleFault, MOST_PLATE_AMPS, MOST_RATINGS } from './idle-fault'
import type { CurrentMethod, IdleContext, SocketReading } from './idle-reading'
import { type IdleTarget, idleTarget } from './idle-target'
import { type IdleVerdict, idleVerdict, idleWindow } from './idle-verdict'
import { meterReading } from './meter'
import { mul, scale, sub, type Uncertain } from './uncertain'

export type { Banded, Caution, ErrorSource, EstimateReason, IdleFault, IdleTarget, IdleVerdict }

export type Contribution = {
  readonly source: ErrorSource
  /** Standard contribution to plate dissipation, signed, W. */
  readonly watts: number
  /** Share of the variance of plate dissipation, 0 … 1. */
  readonly share: number
}

export type IdleResult = {
  readonly socket: string
  readonly typeId: string
  readonly designation: string
  readonly method: CurrentMethod['kind']
  readonly plateToCathodeVolts: Banded
  readonly plateAmps: Banded
  readonly screenAmps: Banded
  readonly cathodeAmps: Banded
  /** With the screen strapped to the plate: both together. */
  readonly plateWatts: Banded
  /** Null: no rating is given for this type (sources contradict). */
  readonly plateRatingWatts: number | null
  readonly platePercent: Banded | null
  /** Null: screen voltage not read, or no screen of its own. */
  readonly screenWatts: Banded | null
  readonly screenRatingWatts: number | null
  readonly screenPercent: Banded | null
  readonly ratingSystem: RatingSystem | null
  /** Every assumption made; empty when all was measured. */
  readonly estimates: readonly EstimateReason[]
  /** To plate dissipation, largest first. */
  readonly contributions: readonly Contribution[]
  readonly cautions: readonly Caution[]
  readonly verdict: IdleVerdict
  readonly target: IdleTarget | null
  /** Errors of the plate current by source, A, for comparing sockets read with one meter. */
  readonly plateAmpsErrors: Readonly<Record<string, number>>
}

export function contributionsTo(power: Uncertain): Contribution[] {
  const parts = Object.entries(power.errors)
  const variance = parts.reduce((sum, [, watts]) => sum + watts * watts, 0)
  return parts
    .filter(([, watts]) => watts !== 0)
    .map(([key, watts]) => ({ source: sourceOfKey(key), watts, share: (watts * watts) / variance }))
    .sort((a, b) => b.share - a.share)
}

type Powers = { readonly plateToCathode: Uncertain; readonly plate: Uncertain; readonly screen: Uncertain | null }

function readPowers(reading: SocketReading, { meter }: IdleContext, currents: Currents): Powers {
  const { socket, plateVoltage, screenVoltage } = reading
  const plateToCathode = sub(meterReading(meter, plateVoltage, `${socket} plate volts`), currents.cathodeVoltage)
  const plate = mul(plateToCathode, currents.plate)
  if (screenVoltage === null || !currents.ownScreen) return { plateToCathode, plate, screen: null }
  const screenToCathode = sub(meterReading(meter, screenVoltage, `${socket} screen volts`), currents.cathodeVoltage)
  return { plateToCathode, plate, screen: mul(screenToCathode, currents.screen) }
}

const percentOf = (power: Uncertain | null, rating: number | null, estimate: boolean): Banded | null =>
  power === null || rating === null ? null : banded(scale(power, 100 / rating), estimate)

function measuredPart(reading: SocketReading, currents: Currents, powers: Powers) {
  const { ratings, ratingsStandIn } = reading.variant
  const plateRatingWatts = ratings?.plateWatts?.value ?? null
  const screenRatingWatts = ratings?.screenWatts?.value ?? null
  const { plate, screen, cathode } = currents.estimated
  return {
    socket: reading.socket,
    typeId: reading.variant.typeId,
    designation: reading.variant.designation,
    method: reading.method.kind,
    plateToCathodeVolts: banded(powers.plateToCathode, false),
    plateAmps: banded(currents.plate, plate),
    screenAmps: banded(currents.screen, screen),
    cathodeAmps: banded(currents.cathode, cathode),
    plateWatts: banded(powers.plate, plate),
    plateRatingWatts,
    platePercent: percentOf(powers.plate, plateRatingWatts, plate || ratingsStandIn),
    screenWatts: powers.screen && banded(powers.screen, screen),
    screenRatingWatts,
    screenPercent: percentOf(powers.screen, screenRatingWatts, screen || ratingsStandIn),
    ratingSystem: ratings?.system ?? null,
    contributions: contributionsTo(powers.plate),
    plateAmpsErrors: currents.plate.errors,
  }
}

/** Refused rather than judged: "6500 % of the rating, run it colder" would help nobody. */
function beyondBelief({ socket, method }: SocketReading, part: ReturnType<typeof measuredPart>): IdleFault | null {
  const { plateAmps, plateWatts, plateRatingWatts } = part
  const within =
    plateRatingWatts === null ? plateAmps.value <= MOST_PLATE_AMPS : plateWatts.value <= MOST_RATINGS * plateRatingWatts
  if (within) return null
  const figures = { milliamps: 1000 * plateAmps.value, watts: plateWatts.value, ratingWatts: plateRatingWatts }
  return { code: 'current-beyond-belief', socket, ...figures, volts: method.drop, part: method.resistor.id }
}

/** Refuses readings that cannot be true; everything else is computed and, where needed, cautioned. */
export function computeIdle(reading: SocketReading, context: IdleContext): Result<IdleResult, IdleFault> {
  const checked = checkReading(reading, context)
  if (!checked.ok) return checked
  const currents = readCurrents(reading, context)
  if (!currents.ok) return currents
  const part = measuredPart(reading, currents.value, readPowers(reading, context, currents.value))
  const absurd = beyondBelief(reading, part)
  if (absurd) return fail(absurd)
  const { variant } = reading
  const grounded: EstimateReason[] = reading.cathodeAtChassisAssumed ? [{ kind: 'cathode-at-chassis-assumed' }] : []
  const standIn: EstimateReason[] = variant.ratingsStandIn
    ? [
        {
          kind: 'rating-stands-in',
          asked: variant.asked,
          designation: variant.ratings?.appliesTo ?? variant.designation,
        },
      ]
    : []
  const window = idleWindow(context)
  return ok({
    ...part,
    estimates: [...currents.value.estimates, ...grounded, ...standIn],
    cautions: cautionsOf(reading, context, part),
    verdict: idleVerdict(part.platePercent, window),
    target: idleTarget(reading, part, window),
  })
}
