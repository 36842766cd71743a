/** What a set is called, and what is said with it, where the figures do not carry the claim. */
import { describe, expect, it } from 'vitest'
import type { Candidate } from '@/lib/domain/matching/candidate'
import { setCautionText } from '@/lib/domain/matching/matching-text'
import type { PredictedTube } from '@/lib/domain/matching/predicted-tube'
import { proposeSet } from '@/lib/domain/matching/propose-set'
import { ok, type Result } from '@/lib/domain/result'
import { amps, volts, watts } from '@/lib/domain/units'
import { aDemand, aTube, readTube, someLimits } from './tubes'

const banded = (value: number) => ({ value, low: 0.98 * value, high: 1.02 * value })

/** Idle of each, mA, and what it dissipates, W. */
function predicting(figures: Readonly<Record<string, readonly [number, number]>>) {
  const ofTube = new Map(
    Object.entries(figures).map(([mark, [milliamps, power]]): [string, Result<PredictedTube, string>] => [
      `id-${mark}`,
      ok({
        plateCurrent: banded(milliamps / 1000),
        byReadings: amps(0.0005),
        transconductance: banded(0.005),
        plateDissipation: banded(power),
        extrapolated: false,
      }),
    ]),
  )
  return { predictions: { readOn: '2031-05-01', ofTube } }
}

const pair = [readTube('A', 70, 6), readTube('B', 71, 6.1)]
const proposed = (tubes: readonly Candidate[], demand = aDemand(2), over = {}) =>
  proposeSet(tubes, demand, someLimits(over))
const codesOf = (found: ReturnType<typeof proposed>) => found.best?.cautions.map(({ code }) => code)

describe('a predicted set', () => {
  const cool = predicting({ A: [35, 15], B: [36, 15.4] })

  it('on one adjustment is matched, and nothing is said', () => {
    const found = proposed(pair, aDemand(2), cool)
    expect(found.best?.match).toBe('both')
    expect(codesOf(found)).toEqual([])
  })

  it('on one cathode resistor for all is never called matched: each was predicted among its like', () => {
    const shared = aDemand(2, { arrangement: 'cathode-shared' })
    const found = proposed(pair, shared, cool)
    expect(found.best?.match).toBe('uncertain')
    expect(found.best?.doubt).toBeNull()
    expect(codesOf(found)).toEqual(['shared-cathode'])
    expect(found.best?.cautions.map(setCautionText)[0]).toMatch(/the stronger runs hotter and the weaker colder/)
    // With a resistor each nothing is shared.
    const separate = proposed(pair, aDemand(2, { arrangement: 'cathode-separate' }), cool)
    expect([separate.best?.match, codesOf(separate)]).toEqual(['both', []])
    // The same figures cannot differ more than told.
    const alike = proposed(pair, shared, predicting({ A: [35, 15], B: [35, 15] }))
    expect([alike.best?.match, codesOf(alike)]).toEqual(['both', []])
  })

  it('says whose transconductance was never read, and claims no match of it', () => {
    const found = proposed([readTube('A', 70, 6), readTube('B', 71, null)], aDemand(2), cool)
    expect(found.best?.match).toBe('current-only')
    expect(found.best?.cautions).toEqual([{ code: 'transconductance-of-type', marks: ['B'] }])
  })

  it('says which idle above their rating as the bias stands, the worst in watts', () => {
    // 30 W tubes; at the rating is within it.
    const found = proposed(pair, aDemand(2), predicting({ A: [70, 30], B: [72, 31.2] }))
    expect(found.best?.cautions).toEqual([
      { code: 'over-dissipation-now', marks: ['B'], dissipation: watts(31.2), rating: watts(30) },
    ])
    expect(found.best?.cautions.map(setCautionText)[0]).toMatch(
      /^B would idle above the rating .* 31\.2 W on 30 W: turn/,
    )
  })
})

describe('safe working', () => {
  const tubes = [aTube('A'), aTube('B'), aTube('C')]
  const roomy = { plateToCathodeVoltage: volts(400), screenVoltage: volts(380) }
  const none = { plateToCathodeVoltage: null, screenVoltage: null, idlePlateDissipation: null }

  it('is no set whose ratings nothing was held against', () => {
    expect(proposed(tubes, aDemand(2, roomy)).safe).not.toBeNull()
    for (const name of ['plateToCathodeVoltage', 'screenVoltage', 'idlePlateDissipation'] as const) {
      const found = proposed(tubes, aDemand(2, { ...roomy, [name]: null }))
      expect(found.best).not.toBeNull()
      expect(found.safe).toBeNull()
      expect(found.unsafe).toEqual([{ code: 'socket-not-measured', tubes: 3 }])
    }
    expect(proposed(tubes, aDemand(2, none)).safe).toBeNull()
  })

  it('needs no reading of the idle where it is predicted', () => {
    const cool = predicting({ A: [35, 15], B: [36, 15.4], C: [37, 15.6] })
    expect(proposed(tubes, aDemand(2, { ...roomy, idlePlateDissipation: null }), cool).safe).not.toBeNull()
    expect(proposed(tubes, aDemand(2, { ...roomy, screenVoltage: null }), cool).safe).toBeNull()
  })
})
