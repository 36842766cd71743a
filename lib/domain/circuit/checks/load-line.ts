/**
 * Load line of an output stage and the power at which it clips.
 *
 * Push-pull, plate to plate load Raa = n²·Rspeaker. At the peak one side conducts and
 * sees Raa/4, so its plate runs down the line
 *   I(V) = (V₀ − V)/(Raa/4)
 * from (V₀, 0), as in class B, until it meets the curve at zero grid volts: there the grid
 * begins to draw current. With V the plate-to-cathode voltage of that meeting,
 *   P = (V₀ − V)²/(2·Raa/4).
 * Single-ended: the line goes through the idle point, I = I₀ + (V₀ − V)/R, and the swing
 * that clips first counts, down to zero grid or up to cutoff, I₀·R:
 *   P = swing²/(2·R).
 * Source: "Radiotron Designer's Handbook", 4th edition, chapter 13 (from memory).
 *
 * An estimate for a sine at the edge of clipping: supply, screens and cathode are taken to
 * stay where they are at idle, the transformer to lose nothing, the load to be a pure
 * resistance. Printed push-pull powers of pentodes are met within 30 %. Printed powers of
 * single-ended stages go past the first clip, at 7 to 15 % distortion, and can be twice as high.
 */
import { type AmplifyingParameters, tubeCurrents } from '@/lib/domain/model/plate-curves'
import { type Amps, amps, type Ohms, ohms, type Volts, volts, type Watts, watts } from '@/lib/domain/units'

export type LoadCase = {
  readonly tube: AmplifyingParameters
  /** In parallel on one side. */
  readonly tubesPerSide: number
  /** Idle, plate to cathode. */
  readonly plate: Volts
  /** Idle, screen to cathode. */
  readonly screen: Volts
  /** Idle, of one tube. Push-pull does not use it. */
  readonly plateCurrent: Amps
  /** Plate to plate in push-pull, the whole primary in single-ended. */
  readonly load: Ohms
  readonly arrangement: 'push-pull' | 'single-ended'
}

export type LoadLinePoint = { readonly plate: Volts; readonly current: Amps }

export type ClippingEstimate = {
  /** Where the line meets the curve at zero grid volts, one side's current. */
  readonly clipping: LoadLinePoint
  /** The other end: no current. */
  readonly cutoff: LoadLinePoint
  readonly clips: 'at-zero-grid' | 'at-cutoff'
  readonly power: Watts
}

const HALVINGS = 60

const pushPull = ({ arrangement }: LoadCase) => arrangement === 'push-pull'
/** What one side sees. */
const sideLoad = (given: LoadCase): number => (pushPull(given) ? given.load / 4 : given.load)

/** Current of one side on the line at this plate voltage. */
function lineCurrent(given: LoadCase, plate: number): number {
  const start = pushPull(given) ? 0 : given.tubesPerSide * given.plateCurrent
  return start + (given.plate - plate) / sideLoad(given)
}

/** The line falls and the curve rises with plate voltage, so they meet once: halving finds it. */
function meeting(given: LoadCase): number {
  let low = 0
  let high: number = given.plate
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2
    const curve = given.tubesPerSide * tubeCurrents(given.tube, middle, given.screen, 0).plate
    if (curve < lineCurrent(given, middle)) low = middle
    else high = middle
  }
  return high
}

export function clippingEstimate(given: LoadCase): ClippingEstimate {
  const resistance = sideLoad(given)
  for (const [name, value] of Object.entries({ load: given.load, plate: given.plate, tubes: given.tubesPerSide })) {
    if (!(value > 0)) throw new Error(`A load line needs ${name} above zero, got ${value}`)
  }
  const plate = meeting(given)
  const down = given.plate - plate
  const cutoff = given.plate + resistance * lineCurrent(given, given.plate)
  const up = pushPull(given) ? down : cutoff - given.plate
  const swing = Math.min(down, up)
  return {
    clipping: { plate: volts(plate), current: amps(lineCurrent(given, plate)) },
    cutoff: { plate: volts(cutoff), current: amps(0) },
    clips: up < down ? 'at-cutoff' : 'at-zero-grid',
    power: watts((swing * swing) / (2 * resistance)),
  }
}

/** Primary resistance that a speaker shows through the transformer: Rspeaker·(Np/Ns)². */
export const reflectedLoad = (speaker: Ohms, turnsRatio: number): Ohms => ohms(speaker * turnsRatio * turnsRatio)
