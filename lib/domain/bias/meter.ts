/**
 * Voltage readings of the bench meter and how far to believe them.
 *
 * Accuracy is ± (percent of reading + counts of the last digit), DC volts. The
 * percent part is one gain error shared by every reading of that meter; the
 * counts part is independent for each reading. Both are limits, taken as
 * rectangular half-widths (JCGM 100:2008, 4.3.7).
 *
 * Ranges go in decades from the display's own leading figures: a 6000-count
 * meter has 600 mV, 6 V, 60 V, 600 V and 1000 V. A finer millivolt range, where
 * a meter has one, is not counted on: the band is then on the wide side.
 */
import { type Ohms, ohms, type Ratio, ratio, type Volts, volts } from '@/lib/domain/units'
import { sourceKey } from './error-source'
import { add, type Uncertain, withLimits } from './uncertain'

export type Meter = {
  /** Readings with one id share the gain error. */
  readonly id: string
  /** 0.5 is ± 0.5 % of the reading. */
  readonly percentOfReading: number
  /** Of the last digit. */
  readonly counts: number
  /** 6000 for a display that goes to 5999. */
  readonly displayCounts: number
  readonly inputResistance: Ohms
}

export type MeterRange = { readonly upTo: Volts; readonly resolution: Volts }

export const USUAL_INPUT_RESISTANCE = ohms(10e6)
export const HIGHEST_RANGE = volts(1000)

/** Rising. The lowest is in hundreds of millivolts, the highest ends at 1000 V. */
export function meterRanges(displayCounts: number): readonly MeterRange[] {
  if (!(displayCounts >= 1)) throw new Error(`A display has at least one count, got ${displayCounts}`)
  const leadingDecade = Math.floor(Math.log10(displayCounts))
  const ranges: MeterRange[] = []
  for (let decade = -1; ; decade += 1) {
    const places = leadingDecade - decade
    // Divided by a whole power of ten, so that 6000 counts end at 0.6 and not beside it.
    const fullScale = places >= 0 ? displayCounts / 10 ** places : displayCounts * 10 ** -places
    const resolution = volts(fullScale / displayCounts)
    ranges.push({ upTo: volts(Math.min(fullScale, HIGHEST_RANGE)), resolution })
    if (fullScale >= HIGHEST_RANGE) return ranges
  }
}

/** Above the highest range the last range's resolution is kept; computeIdle then adds a caution. */
export function resolutionAt(meter: Meter, voltage: Volts): Volts {
  const ranges = meterRanges(meter.displayCounts)
  const fitting = ranges.find((range) => Math.abs(voltage) < range.upTo) ?? ranges.at(-1)
  if (!fitting) throw new Error('A meter has at least one range')
  return fitting.resolution
}

/** `name` says which reading it is, "V3 plate volts": its counts error is its own. */
export function meterReading(meter: Meter, voltage: Volts, name: string): Uncertain {
  const gain = withLimits(
    voltage,
    sourceKey({ kind: 'meter-gain', name: meter.id }),
    (Math.abs(voltage) * meter.percentOfReading) / 100,
  )
  const counts = meter.counts * resolutionAt(meter, voltage)
  const signed = voltage < 0 ? { value: gain.value, errors: negated(gain.errors) } : gain
  return add(signed, withLimits(0, sourceKey({ kind: 'meter-counts', name }), counts))
}

/** A gain error scales the reading, so on a negative reading it acts the other way. */
const negated = (errors: Uncertain['errors']) =>
  Object.fromEntries(Object.entries(errors).map(([source, part]) => [source, -part]))

/** Share by which the meter's own resistance makes a source of that resistance read low: 0.09 for 1 MΩ into 10 MΩ. */
export const readsLowBy = (meter: Pick<Meter, 'inputResistance'>, sourceResistance: Ohms): Ratio =>
  ratio(sourceResistance / (sourceResistance + meter.inputResistance))
