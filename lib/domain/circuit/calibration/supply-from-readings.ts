/**
 * The supply that leaves the reservoir where it was read.
 *
 *   reservoir = E − Rs·(I + rest) − rectifier drop
 * Of E, Rs and the rest of the amplifier's draw, what is noted is kept and the readings
 * fix one more: E where Rs is noted, Rs where E is (the rest then counted in, so Rs comes
 * out a little high), the rest where both are. With neither the supply is taken as stiff.
 */

import type { Assumption } from '@/lib/domain/circuit/amp/assumption'
import type { Supply } from '@/lib/domain/circuit/output-stage'
import { type DiodeParameters, diodeDrop } from '@/lib/domain/model/plate-curves'
import { amps, ohms, volts } from '@/lib/domain/units'

export type SupplyReading = {
  /** Noted, at marked mains. */
  readonly openVolts: number | null
  readonly sourceOhms: number | null
  readonly rectifier: DiodeParameters | null
  readonly mainsFactor: number
  /** Reservoir volts read, at the mains while reading. */
  readonly reservoir: number
  /** Of the output tubes and of what hangs on their screen node, A. */
  readonly current: number
}

export type FoundSupply = { readonly supply: Supply; readonly assumptions: readonly Assumption[] }

/** A contradiction smaller than this is the meter's. Of the volts read; common practice, no source. */
const METER_SHARE = 0.01
/** The rest of an amplifier never draws more than this many times the output tubes. Common practice, no source. */
const MOST_REST = 2
const HALVINGS = 60

const dropAt = ({ rectifier }: SupplyReading, current: number): number =>
  rectifier ? diodeDrop(rectifier, current).drop : 0

/** E that gives the reading with this source resistance and this rest. */
function supplyWith(given: SupplyReading, sourceOhms: number, rest: number): Supply {
  const { reservoir, current, mainsFactor, rectifier } = given
  const total = current + rest
  const open = reservoir + sourceOhms * total + dropAt(given, total)
  return {
    openCircuit: volts(open / mainsFactor),
    sourceResistance: ohms(sourceOhms),
    rectifier,
    drawn: amps(rest),
  }
}

/** What the rest must draw for the noted E and Rs to leave the reservoir where it was read. Null: nothing does. */
function restFor(given: SupplyReading, open: number, sourceOhms: number): number | null {
  const { reservoir, current } = given
  const above = (rest: number) => open - sourceOhms * (current + rest) - dropAt(given, current + rest) - reservoir
  const most = MOST_REST * current
  if (above(0) < 0 || above(most) > 0) return null
  let [low, high] = [0, most]
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2
    if (above(middle) > 0) low = middle
    else high = middle
  }
  return high
}

function bothNoted(given: SupplyReading, open: number, sourceOhms: number): FoundSupply {
  const { reservoir, current } = given
  const rest = restFor(given, open, sourceOhms)
  if (rest !== null) {
    const milliamps = 1000 * rest
    return { supply: supplyWith(given, sourceOhms, rest), assumptions: [{ code: 'rest-from-sag', milliamps }] }
  }
  const gap = Math.abs(open - sourceOhms * current - dropAt(given, current) - reservoir)
  const kept = supplyWith(given, sourceOhms, 0)
  return { supply: kept, assumptions: gap <= METER_SHARE * reservoir ? [] : [contradiction(open, reservoir)] }
}

const contradiction = (openVolts: number, readVolts: number): Assumption => ({
  code: 'supply-facts-contradict',
  openVolts,
  readVolts,
})

function openNoted(given: SupplyReading, open: number): FoundSupply {
  const { reservoir, current } = given
  const sag = open - dropAt(given, current) - reservoir
  const stiff = supplyWith(given, 0, 0)
  if (sag < -METER_SHARE * reservoir) return { supply: stiff, assumptions: [contradiction(open, reservoir)] }
  if (sag <= 0) return { supply: stiff, assumptions: [{ code: 'supply-taken-stiff' }] }
  const found = sag / current
  return { supply: supplyWith(given, found, 0), assumptions: [{ code: 'source-from-sag', ohms: found }] }
}

export function supplyFromReadings(given: SupplyReading): FoundSupply {
  const { openVolts, sourceOhms, mainsFactor } = given
  const open = openVolts === null ? null : openVolts * mainsFactor
  if (open !== null && sourceOhms !== null) return bothNoted(given, open, sourceOhms)
  if (open !== null) return openNoted(given, open)
  if (sourceOhms !== null) return { supply: supplyWith(given, sourceOhms, 0), assumptions: [] }
  return { supply: supplyWith(given, 0, 0), assumptions: [{ code: 'supply-taken-stiff' }] }
}
