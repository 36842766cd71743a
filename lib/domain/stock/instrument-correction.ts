/**
 * The correction between two tube testers, from reference tubes read on both.
 *
 * Testers differ mostly by a factor (regulation, scale, calibration), so one
 * figure of tube i is taken as  B_i = k · A_i.  With d_i = ln(B_i / A_i):
 *
 *   k = exp(mean d),   s = standard deviation of the d_i (n − 1),
 *   u_k = s / √n for the correction itself,
 *   u_1 = s · √(1 + 1/n) for one reading carried over by it,
 *
 * each times Student's 95 % point for n − 1 degrees of freedom (JCGM 100:2008,
 * 4.2 and G.3). In logarithms a small u is a share: 0.03 is 3 %.
 *
 * A reading repeats to about 2 % on a bench tester (common practice, no
 * source), so s is never taken below √2 · 2 %; with a single reference tube,
 * whose spread cannot be seen, that least spread stands in and is said to.
 * Only pairs at one test point are compared, because the share that a tester
 * is off depends on where it reads. One factor stands for all points: that it differs
 * between them shows in s only as far as the references differ. Not valid where a tester
 * has an offset.
 */
import { fail, ok, type Result } from '../result'
import { isSamePoint } from './alike-point'
import { studentT } from './student-t'
import type { TubeTest } from './tube'

export type CorrectedFigure = 'plateCurrent' | 'transconductance'

export type InstrumentCorrection = {
  readonly from: string
  readonly to: string
  readonly figure: CorrectedFigure
  /** A reading on `from` times this is what `to` would have read. */
  readonly factor: number
  /** Half-width at 95 %, as a share of the factor. */
  readonly uncertainty: number
  /** Half-width at 95 % of one reading carried over, as a share. */
  readonly readingUncertainty: number
  /** Marks of the reference tubes. */
  readonly marks: readonly string[]
  /** True: one tube only, or tubes that agree better than a tester repeats; the least spread stands in. */
  readonly assumedSpread: boolean
}

export type ReferenceTube = { readonly mark: string; readonly tests: readonly TubeTest[] }

export const REPEATABILITY = 0.02
const LEAST_SPREAD = Math.SQRT2 * REPEATABILITY
/** Two-sided 95 % of a normal spread, for one that is assumed and not estimated. */
const NORMAL_95 = 1.96

const figureOf = (test: TubeTest, figure: CorrectedFigure): number | null =>
  test.shorts ? null : (test.sections[0]?.[figure] ?? null)

/** ln(B/A) of the latest two readings of one tube at one point. Null: not read on both. */
function logRatio({ tests }: ReferenceTube, from: string, to: string, figure: CorrectedFigure): number | null {
  const read = (instrument: string) =>
    tests.filter((test) => test.instrumentName === instrument && (figureOf(test, figure) ?? 0) > 0)
  for (const a of read(from)) {
    const b = read(to).find((each) => isSamePoint(a, each))
    if (b) return Math.log((figureOf(b, figure) as number) / (figureOf(a, figure) as number))
  }
  return null
}

/** Null: no reference tube was read on both. Tests newest first. */
export function instrumentCorrection(
  tubes: readonly ReferenceTube[],
  from: string,
  to: string,
  figure: CorrectedFigure,
): InstrumentCorrection | null {
  const pairs = tubes.flatMap((tube) => {
    const log = logRatio(tube, from, to, figure)
    return log === null ? [] : [{ mark: tube.mark, log }]
  })
  const n = pairs.length
  if (n === 0) return null
  const mean = pairs.reduce((sum, { log }) => sum + log, 0) / n
  const seen = n < 2 ? 0 : Math.sqrt(pairs.reduce((sum, { log }) => sum + (log - mean) ** 2, 0) / (n - 1))
  const assumedSpread = seen < LEAST_SPREAD
  const spread = assumedSpread ? LEAST_SPREAD : seen
  const cover = assumedSpread ? NORMAL_95 : studentT(n - 1)
  return {
    ...{ from, to, figure, assumedSpread },
    factor: Math.exp(mean),
    uncertainty: (cover * spread) / Math.sqrt(n),
    readingUncertainty: cover * spread * Math.sqrt(1 + 1 / n),
    marks: pairs.map(({ mark }) => mark),
  }
}

/** Every two testers that a reference tube was read on, both figures. */
export function instrumentCorrections(tubes: readonly ReferenceTube[]): InstrumentCorrection[] {
  const names = [...new Set(tubes.flatMap(({ tests }) => tests.map(({ instrumentName }) => instrumentName)))].sort()
  return names.flatMap((from, place) =>
    names
      .slice(place + 1)
      .flatMap((to) =>
        (['plateCurrent', 'transconductance'] as const).flatMap(
          (figure) => instrumentCorrection(tubes, from, to, figure) ?? [],
        ),
      ),
  )
}

export type Carried = { readonly value: number; readonly halfWidth: number }

/** What `to` would have read. Refused where the two instruments share no reference tube: then nothing compares them. */
export function carriedReading(
  value: number,
  { from, to, figure }: Pick<InstrumentCorrection, 'from' | 'to' | 'figure'>,
  corrections: readonly InstrumentCorrection[],
): Result<Carried, 'not-compared'> {
  if (from === to) return ok({ value, halfWidth: 0 })
  const found = corrections.find(
    (each) => each.figure === figure && [each.from, each.to].includes(from) && [each.from, each.to].includes(to),
  )
  if (!found) return fail('not-compared')
  const carried = found.from === from ? value * found.factor : value / found.factor
  return ok({ value: carried, halfWidth: carried * found.readingUncertainty })
}
