/**
 * A reading taken on one tester as another would have shown it, by the correction that
 * reference tubes read on both gave (lib/domain/stock/instrument-correction.ts).
 *
 *   A = k · B for each figure, half of the 95 % band of one reading carried being a share of it.
 *
 * Carried is a record as a whole or not at all: where its transconductance was read and no
 * correction of transconductance is known, it stays what it was.
 */
import { amps, siemens } from '../units'
import type { CarriedReading, CarryRate, KnownCorrection, TubeTest } from './candidate'
import { instrumentKey } from './cohort'

/** Reference tubes to read on both testers: k is then known to 2.5 %, where they agree as well as testers repeat (shop rule, no source). */
export const REFERENCES_WANTED = 5

export type Carriage = { readonly from: string; readonly current: CarryRate; readonly slope: CarryRate | null }

/** By the key of the instrument that a reading comes from. Corrections are not chained: each link would have to be known. */
export type Carriages = ReadonlyMap<string, Carriage>

export function carriagesTo(to: string, corrections: readonly KnownCorrection[]): Carriages {
  const carriages = new Map<string, Carriage>()
  const names = new Set(corrections.flatMap((each) => [each.from, each.to]))
  for (const from of [...names].sort()) {
    const key = instrumentKey(from)
    const rate = (figure: KnownCorrection['figure']) =>
      rateOf({ from: key, to: instrumentKey(to), figure }, corrections)
    const current = rate('plateCurrent')
    if (key !== instrumentKey(to) && !carriages.has(key) && current)
      carriages.set(key, { from: from.trim(), current, slope: rate('transconductance') })
  }
  return carriages
}

type Wanted = Pick<KnownCorrection, 'from' | 'to' | 'figure'>

function rateOf({ from, to, figure }: Wanted, corrections: readonly KnownCorrection[]): CarryRate | null {
  for (const each of corrections) {
    if (each.figure !== figure) continue
    const [one, other] = [instrumentKey(each.from), instrumentKey(each.to)]
    if (one === from && other === to) return { factor: each.factor, share: each.readingUncertainty }
    if (one === to && other === from) return { factor: 1 / each.factor, share: each.readingUncertainty }
  }
  return null
}

/** null: it is read there, was carried already, or cannot be carried there. */
export function carriageOf(
  test: Pick<TubeTest, 'instrument' | 'transconductance' | 'carried'>,
  carriages: Carriages,
): Carriage | null {
  if (test.carried) return null
  const carriage = carriages.get(instrumentKey(test.instrument))
  if (!carriage || (test.transconductance !== null && carriage.slope === null)) return null
  return carriage
}

export function carriedTest(test: TubeTest, to: string, { from, current, slope }: Carriage): TubeTest {
  const { plateCurrent, transconductance } = test
  return withFigures({ ...test, instrument: to }, { from, current, slope, plateCurrent, transconductance })
}

/** `carried` tells what was read; the figures of the test follow from it. */
export function withFigures(test: TubeTest, carried: CarriedReading): TubeTest {
  const { plateCurrent, transconductance, current, slope } = carried
  return {
    ...test,
    plateCurrent: amps(plateCurrent * current.factor),
    transconductance: transconductance === null || slope === null ? null : siemens(transconductance * slope.factor),
    carried,
  }
}

/** The record as it is kept. */
export function asRead({ carried, ...test }: TubeTest): TubeTest {
  if (!carried) return test
  const { from, plateCurrent, transconductance } = carried
  return { ...test, instrument: from, plateCurrent, transconductance }
}
