/**
 * Who is to blame when two ways of finding plate current disagree.
 *
 * For every part that enters one way, what it would have to be for that way to agree
 * with the other:
 *   resistor          R' = R · Ia/T        (T: plate current by the other way)
 *   warm copper       1 + α·ΔT' = (1 + α·N/2) · Ia/T,  N the warming allowed for
 *   assumed screen    s' = 1 − T/Ik
 *   screen resistor   Ik − T is the screen current;  R' = drop/(Ik − T)
 *   equal split       part' = (1/n) · T/Ia
 *   leaky bypass      1/Rleak = 1/R' − 1/R, where R' is below R
 *   screens on a tap  the excess is at most the part of Ig2 that runs through the tapped winding
 * What cannot be (a negative current, copper 100 °C hotter, a winding that cools) is no
 * suspect. The rest are ranked by how far each would have to go against what the trade
 * meets (`USUAL`: common practice, no source). A ranking of what to look at next, no proof.
 */
import type { Socket } from '@/lib/domain/amp/socket'
import { DEAD_SOCKET_CURRENT } from '@/lib/domain/bias/cautions'
import type { IdleResult } from '@/lib/domain/bias/idle'
import { COPPER_PER_CELSIUS, EQUAL_SPLIT_HALF_WIDTH } from '@/lib/domain/bias/idle-currents'
import { MOST_WARMING_CELSIUS } from '@/lib/domain/bias/idle-fault'
import type { CurrentMethod, SocketReading } from '@/lib/domain/bias/idle-reading'

type Drift = { readonly part: string; readonly sheetOhms: number; readonly neededOhms: number }

export type SuspectKind =
  | ({ readonly kind: 'sense-resistor' | 'cathode-resistor' | 'screen-resistor' | 'half-primary-ohms' } & Drift)
  /** The ohms of the other half, standing on the sheet, would make both agree. */
  | { readonly kind: 'other-half'; readonly part: string; readonly sheetOhms: number; readonly otherOhms: number }
  | {
      readonly kind: 'copper-warmer'
      readonly part: string
      readonly neededCelsius: number
      readonly allowedCelsius: number
    }
  | {
      readonly kind: 'screen-share'
      readonly part: string
      readonly assumedShare: number
      readonly neededShare: number
    }
  | { readonly kind: 'screen-on-tap'; readonly part: string }
  | { readonly kind: 'unequal-split'; readonly part: string; readonly sharedBy: number; readonly neededShare: number }
  | { readonly kind: 'bypass-leak'; readonly part: string; readonly leakOhms: number }
  | { readonly kind: 'no-drop'; readonly part: string }

export type Suspect = SuspectKind & {
  /** The way it would have misled. */
  readonly way: CurrentMethod['kind']
  /** What it would have to be against what is usual: small is likely. */
  readonly strain: number
}

type Worked = { readonly reading: SocketReading; readonly idle: IdleResult }

export type Dispute = {
  readonly socket: Socket
  /** Output sockets of the same group. */
  readonly group: readonly Socket[]
  readonly one: Worked
  readonly other: Worked
  readonly copperWarmingCelsius: number
  /** Both ways split the sum of the same tubes: the split cannot tell them apart. */
  readonly splitIsShared: boolean
}

/** How far parts go in amplifiers that come to the bench. Common practice, no source. */
const USUAL = { sense: 0.05, cathode: 0.1, screen: 0.2, halfOhms: 0.05, celsius: 30, bypass: 0.15, tap: 0.4 }
/** A part this many times off is another fault than drift. */
const FARTHEST = 3
const LARGEST_SHARE = 0.35
/** Of the winding between supply and tap, in all of it: taps lie at 20 to 50 % from the supply end. */
const FARTHEST_TAP = 0.6
const SHOWN = 4

type Case = Dispute & {
  readonly way: Worked
  readonly against: Worked
  readonly target: number
  readonly ratio: number
}

const strainOf = (ratio: number, usual: number): number => Math.abs(ratio - 1) / usual

function drifted(
  kind: Extract<SuspectKind, Drift>['kind'],
  { way, ratio }: Pick<Case, 'way' | 'ratio'>,
  usual: number,
): Suspect[] {
  const { resistor, kind: method } = way.reading.method
  if (ratio > FARTHEST || ratio < 1 / FARTHEST) return []
  const [part, sheetOhms] = [resistor.id, resistor.resistance]
  return [{ kind, way: method, part, sheetOhms, neededOhms: sheetOhms * ratio, strain: strainOf(ratio, usual) }]
}

function screenSuspects({ way, against, target }: Case): Suspect[] {
  const { method, screen, variant } = way.reading
  // Two cathode ways take off the same screen current: it cannot set them apart.
  if (method.kind === 'half-primary-drop' || against.reading.method.kind !== 'half-primary-drop') return []
  const cathode = way.idle.cathodeAmps.value
  const neededScreen = cathode - target
  if (neededScreen <= 0) return []
  if (screen.kind === 'screen-resistor-drop') {
    const { id: part, resistance: sheetOhms } = screen.resistor
    const neededOhms = screen.drop / neededScreen
    const strain = strainOf(neededOhms / sheetOhms, USUAL.screen)
    if (neededOhms > FARTHEST * sheetOhms || neededOhms < sheetOhms / FARTHEST) return []
    return [{ kind: 'screen-resistor', way: method.kind, part, sheetOhms, neededOhms, strain }]
  }
  const typical = variant.typicalScreenShare
  const neededShare = neededScreen / cathode
  if (screen.kind !== 'typical-share' || !typical || neededShare > LARGEST_SHARE) return []
  const strain = Math.abs(neededShare - typical.share) / typical.halfWidth
  return [
    {
      kind: 'screen-share',
      way: method.kind,
      part: way.reading.socket,
      assumedShare: typical.share,
      neededShare,
      strain,
    },
  ]
}

function splitSuspects({ way, ratio, splitIsShared }: Case): Suspect[] {
  const { method } = way.reading
  if (method.kind === 'cathode-sense' || method.sharedBy < 2 || splitIsShared) return []
  const neededShare = 1 / (method.sharedBy * ratio)
  if (neededShare >= 1) return []
  const { sharedBy, resistor, kind } = method
  const strain = strainOf(1 / ratio, EQUAL_SPLIT_HALF_WIDTH)
  return [{ kind: 'unequal-split', way: kind, part: resistor.id, sharedBy, neededShare, strain }]
}

/** Another half of this primary with other ohms on the sheet. */
function otherHalf({ socket, group, way, target, ratio, one, other }: Case): Suspect[] {
  const { resistor, kind } = way.reading.method
  const band = one.idle.plateAmps.plusMinus + other.idle.plateAmps.plusMinus
  const fits = (ohms: number) => Math.abs((target * ratio * resistor.resistance) / ohms - target) <= band / 2
  const found = group.find(
    ({ side, halfPrimaryOhms }) =>
      side !== '' &&
      side !== socket.side &&
      halfPrimaryOhms !== null &&
      halfPrimaryOhms !== resistor.resistance &&
      fits(halfPrimaryOhms),
  )?.halfPrimaryOhms
  if (!found || socket.side === '') return []
  const [part, sheetOhms] = [resistor.id, resistor.resistance]
  return [{ kind: 'other-half', way: kind, part, sheetOhms, otherOhms: found, strain: 0.5 }]
}

function halfSuspects(dispute: Case): Suspect[] {
  const { way, against, ratio, copperWarmingCelsius } = dispute
  const { method } = way.reading
  const part = method.resistor.id
  const warmed = (1 + (COPPER_PER_CELSIUS * copperWarmingCelsius) / 2) * ratio
  const neededCelsius = (warmed - 1) / COPPER_PER_CELSIUS
  const warmer: Suspect[] =
    neededCelsius > copperWarmingCelsius && neededCelsius <= MOST_WARMING_CELSIUS
      ? [
          {
            kind: 'copper-warmer',
            way: method.kind,
            part,
            neededCelsius,
            allowedCelsius: copperWarmingCelsius,
            strain: neededCelsius / USUAL.celsius,
          },
        ]
      : []
  const excess = way.idle.plateAmps.value - against.idle.plateAmps.value
  const screen = against.idle.screenAmps.value
  const onTap: Suspect[] =
    excess > 0 && excess <= FARTHEST_TAP * screen
      ? [{ kind: 'screen-on-tap', way: method.kind, part, strain: excess / screen / USUAL.tap }]
      : []
  return [...warmer, ...otherHalf(dispute), ...drifted('half-primary-ohms', dispute, USUAL.halfOhms), ...onTap]
}

function bypassSuspects({ way, ratio }: Case): Suspect[] {
  const { resistor, kind } = way.reading.method
  const needed = resistor.resistance * ratio
  if (ratio >= 1 || ratio < 1 / FARTHEST) return []
  const leakOhms = 1 / (1 / needed - 1 / resistor.resistance)
  return [{ kind: 'bypass-leak', way: kind, part: resistor.id, leakOhms, strain: strainOf(ratio, USUAL.bypass) }]
}

function ofWay(dispute: Case): Suspect[] {
  const common = [...screenSuspects(dispute), ...splitSuspects(dispute)]
  switch (dispute.way.reading.method.kind) {
    case 'cathode-sense':
      return [...common, ...drifted('sense-resistor', dispute, USUAL.sense)]
    case 'cathode-bias':
      return [...common, ...drifted('cathode-resistor', dispute, USUAL.cathode), ...bypassSuspects(dispute)]
    case 'half-primary-drop':
      return [...common, ...halfSuspects(dispute)]
  }
}

/** Likeliest first. */
export function suspectsOf(dispute: Dispute): Suspect[] {
  const { one, other } = dispute
  const currents = [one, other].map(({ idle }) => idle.plateAmps.value)
  const dead = [one, other].filter(({ idle }) => idle.plateAmps.value < DEAD_SOCKET_CURRENT)
  if (dead.length > 0 || currents.some((value) => value <= 0)) {
    return dead.map(({ reading: { method } }) => ({
      kind: 'no-drop',
      way: method.kind,
      part: method.resistor.id,
      strain: 0,
    }))
  }
  const cases = [
    [one, other],
    [other, one],
  ] as const
  const found = cases.flatMap(([way, against]) => {
    const target = against.idle.plateAmps.value
    return ofWay({ ...dispute, way, against, target, ratio: way.idle.plateAmps.value / target })
  })
  return found.sort((a, b) => a.strain - b.strain).slice(0, SHOWN)
}
