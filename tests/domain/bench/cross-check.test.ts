import { describe, expect, test } from 'vitest'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { plainSocket, type Socket } from '@/lib/domain/amp/socket'
import { benchResult, idleWindows } from '@/lib/domain/bench/bench-result'
import { type CrossCheck, crossCheck, crossChecks } from '@/lib/domain/bench/cross-check'
import { agreementWord, comparisonText, oddOneOutText, suspectText } from '@/lib/domain/bench/cross-check-text'
import type { ReadingSet, SocketEntry } from '@/lib/domain/bench/reading-set'
import { shareWithin } from '@/lib/domain/bias/coverage'
import { COPPER_PER_CELSIUS } from '@/lib/domain/bias/idle-currents'
import { ohms } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'
import { BENCH_SHOP } from '@/tests/support/bench-shop'

/** One 6L6GC of a push-pull pair: 1 Ω sense, half primaries 74.0 and 81.6 Ω, 470 Ω to the screen. */
const base = plainSocket('V4', 'output', '6L6GC')
const v4: Socket = {
  ...base,
  id: 'V4',
  place: 4,
  biasKind: 'grid-supplied',
  side: 'A',
  senseOhms: 1,
  halfPrimaryOhms: 74,
  screenOhms: 470,
}
const v5: Socket = { ...v4, position: 'V5', id: 'V5', place: 5, side: 'B', halfPrimaryOhms: 81.6 }

const sheetOf = (sockets: readonly Socket[]): AmpSheet => ({
  amp: {
    id: 'amp',
    customerId: 'customer',
    make: 'Test',
    model: 'One',
    serial: '1',
    mainsVolts: 120,
    protectionClass: 'I',
    fuse: '',
    outputClass: 'push-pull',
    plateLoadOhms: null,
    note: '',
    version: 1,
  },
  sockets,
})

const blank: SocketEntry = {
  socketId: 'V4',
  method: 'cathode-sense',
  plateVolts: 425,
  cathodeVolts: 0,
  screenVolts: 391,
  gridVolts: null,
  senseDropVolts: null,
  halfDropVolts: null,
  screenDropVolts: null,
}

const setOf = (entries: readonly SocketEntry[], more: Partial<ReadingSet> = {}): ReadingSet => ({
  id: 'set',
  jobId: 'job',
  phase: 'before',
  takenAt: new Date('2026-03-01T10:00:00Z'),
  takenBy: 'Somebody',
  instrumentId: 'meter',
  instrumentName: 'Bench meter',
  calibratedOn: null,
  meter: { id: 'Bench meter', percentOfReading: 0.5, counts: 2, displayCounts: 6000, inputResistance: ohms(1e7) },
  wallVolts: 120,
  warmupMinutes: 15,
  signalState: 'no signal',
  resistorTolerancePercent: 1,
  copperWarmingCelsius: 0,
  note: '',
  version: 1,
  entries,
  ...more,
})

/** What the meter shows of 33.1 mA plate and 2.1 mA screen current, in the given winding. */
const honest = { senseDropVolts: 0.0352, screenDropVolts: 0.987, halfDropVolts: 0.0331 * 74 }

function check(read: Partial<SocketEntry>, socket: Partial<Socket> = {}, more: Partial<ReadingSet> = {}): CrossCheck {
  const entry = { ...blank, ...read }
  const sheet = sheetOf([{ ...v4, ...socket }, v5])
  const [first] = sheet.sockets
  const found =
    first &&
    crossCheck(
      { sheet, set: setOf([entry], more), windows: idleWindows(BENCH_SHOP), catalogue: BENCH_SHOP },
      first,
      entry,
    )
  if (!found) throw new Error('Nothing was compared')
  return found
}

const only = (found: CrossCheck) => {
  const [comparison] = found.comparisons
  if (!comparison) throw new Error('No comparison')
  return comparison
}
const kinds = (found: CrossCheck) => only(found).suspects.map(({ kind }) => kind)
const words = wordsFor('US')

describe('two ways at one socket', () => {
  test('35.2 mV over 1 Ω less 2.1 mA screen, and 2.449 V over 74 Ω, both give 33.1 mA: they agree', () => {
    const { one, other, agree, difference } = only(check(honest))
    expect([one.method, other.method]).toEqual(['cathode-sense', 'half-primary-drop'])
    expect(1000 * one.idle.plateAmps.value).toBeCloseTo(33.1, 2)
    expect(1000 * difference.value).toBeCloseTo(0, 2)
    expect(agree).toBe(true)
  })

  test('the meter gain is shared: with perfect resistors and no counts, 33.1 mA twice differs by no more than the screen part of it', () => {
    const meter = { id: 'm', percentOfReading: 1, counts: 0, displayCounts: 6000, inputResistance: ohms(1e7) }
    const { difference, one } = only(check(honest, {}, { meter, resistorTolerancePercent: 0 }))
    // By hand: one error between limits alone, of which 95.45 % is taken. Both currents carry the same 1 % gain, so it leaves the difference and stays in each.
    expect(one.idle.plateAmps.plusMinus).toBeCloseTo(0.9545 * 0.0331 * 0.01, 7)
    expect(difference.plusMinus).toBeLessThan(1e-9)
  })

  test('1 % resistors and 0.5 % + 2 counts allow ± 0.59 mA between 33.1 mA and 33.1 mA', () => {
    // Sense 1 % of 35.2 mA, half 1 % of 33.1 mA, screen 1 % of 2.1 mA, counts 0.2 mV/1 Ω, 2 mV/74 Ω, 2 mV/470 Ω: all limits,
    // the first kept as it is, the others as normal: half-width t with P(|R + N| ≤ t) = 0.9545.
    const limits = [0.352, 0.331, 0.021, 0.2, 2 / 74, 2 / 470]
    const { plusMinus } = only(check(honest)).difference
    const [leading = 0, ...others] = limits
    expect(shareWithin(1000 * plusMinus, leading, Math.hypot(...others) / Math.sqrt(3))).toBeCloseTo(0.9545, 4)
    // Of 4,000,000 drawn sums of the six 95.45 % lie within 0.590 mA.
    expect(1000 * plusMinus).toBeCloseTo(0.59, 2)
  })

  test('one way only, or a socket that is no output, is no cross-check', () => {
    const entry = { ...blank, senseDropVolts: 0.0352 }
    const bench = {
      sheet: sheetOf([v4, v5]),
      set: setOf([entry]),
      windows: idleWindows(BENCH_SHOP),
      catalogue: BENCH_SHOP,
    }
    expect(crossCheck(bench, v4, entry)).toBeNull()
    expect(crossCheck(bench, { ...v4, role: 'driver' }, { ...entry, ...honest })).toBeNull()
    expect(crossChecks(bench, benchResult(bench.sheet, bench.set, BENCH_SHOP).sockets).size).toBe(0)
  })

  test('agreement within a band of more than a fifth of the current is called rough', () => {
    const found = check({ ...honest, screenDropVolts: null }, { typeFitted: 'EL34' }, { resistorTolerancePercent: 20 })
    expect(only(found)).toMatchObject({ agree: true, coarse: true })
    expect(agreementWord(found)).toBe('Ways agree, roughly')
    expect(comparisonText(only(found), words)).toContain('proves little')
  })
})

test('a drop read once at a half that two tubes share is held against both of their sense resistors', () => {
  const shared = { ...v4, halfSharedBy: 2 }
  const sheet = sheetOf([
    shared,
    { ...shared, id: 'V6', position: 'V6', place: 6 },
    v5,
    { ...v5, id: 'V7', position: 'V7' },
  ])
  const entries = [
    { ...blank, ...honest, halfDropVolts: 2 * honest.halfDropVolts },
    { ...blank, ...honest, socketId: 'V6', halfDropVolts: null },
  ]
  const set = setOf(entries)
  const { sockets } = benchResult(sheet, set, BENCH_SHOP)
  const checks = crossChecks({ sheet, set, windows: idleWindows(BENCH_SHOP), catalogue: BENCH_SHOP }, sockets)
  expect([...checks.keys()]).toEqual(['V4', 'V6'])
  expect([...checks.values()].every(({ comparisons }) => comparisons.every(({ agree }) => agree))).toBe(true)
})

describe('the suspect is named with what it would have to be', () => {
  test('74 Ω read cold, copper 40 °C warmer, nothing allowed for: the winding needs 40 °C', () => {
    const warm = 0.0331 * 74 * (1 + 40 * COPPER_PER_CELSIUS)
    const found = check({ ...honest, halfDropVolts: warm })
    const [first] = only(found).suspects
    expect(first).toMatchObject({ kind: 'copper-warmer', way: 'half-primary-drop', allowedCelsius: 0 })
    expect(first?.kind === 'copper-warmer' && first.neededCelsius).toBeCloseTo(40, 1)
    expect(first && suspectText(first, words)).toContain('40.0 °C warmer')
  })

  test('the same 40 °C where 30 °C were allowed for: the band has grown, and it is still the copper that is asked for', () => {
    const warm = 0.0331 * 74 * (1 + 60 * COPPER_PER_CELSIUS)
    const [first] = only(check({ ...honest, halfDropVolts: warm }, {}, { copperWarmingCelsius: 30 })).suspects
    expect(first?.kind === 'copper-warmer' && first.neededCelsius).toBeCloseTo(60, 1)
  })

  test('a winding that would have to cool is no suspect', () => {
    expect(kinds(check({ ...honest, halfDropVolts: 0.9 * honest.halfDropVolts }))).not.toContain('copper-warmer')
  })

  test('81.6 Ω on side A, 74.0 Ω of side B entered for it: the other half is named first', () => {
    const found = check({ ...honest, halfDropVolts: 0.0331 * 81.6 })
    expect(only(found).suspects[0]).toMatchObject({ kind: 'other-half', sheetOhms: 74, otherOhms: 81.6 })
  })

  test('a 1 Ω sense resistor grown to 1.2 Ω reads 20 % high: 1.20 Ω is what it would have to be', () => {
    const found = check({ ...honest, senseDropVolts: 1.2 * 0.0352, screenDropVolts: null, screenVolts: null })
    const sense = only(found).suspects.find(({ kind }) => kind === 'sense-resistor')
    // Assumed screen share: Ia = drop/R·(1 − s), so R' = R·Ia/T whatever s, and s of the type is near 2.1/35.2.
    expect(sense?.kind === 'sense-resistor' && sense.neededOhms).toBeGreaterThan(1.15)
    expect(sense?.kind === 'sense-resistor' && sense.neededOhms).toBeLessThan(1.25)
  })

  test('assumed screen current, half primary 6 mA below the cathode: the screen share would have to be 17 %', () => {
    const found = check({ senseDropVolts: 0.0352, halfDropVolts: 0.0292 * 74 })
    const share = only(found).suspects.find(({ kind }) => kind === 'screen-share')
    // (35.2 − 29.2)/35.2 = 17.05 %.
    expect(share?.kind === 'screen-share' && share.neededShare).toBeCloseTo(0.1705, 3)
  })

  test('half primary above the cathode current: no screen current explains that', () => {
    const suspects = kinds(check({ senseDropVolts: 0.0352, halfDropVolts: 0.04 * 74 }))
    expect(suspects).not.toContain('screen-share')
    expect(suspects).not.toContain('screen-on-tap')
  })

  test('a measured screen current is not called assumed: its resistor is the suspect', () => {
    const suspects = kinds(check({ ...honest, halfDropVolts: 0.0315 * 74 }))
    expect(suspects).toContain('screen-resistor')
    expect(suspects).not.toContain('screen-share')
  })

  test('no drop at all over the half where 33 mA flow: the probe, not a resistor', () => {
    const found = check({ ...honest, halfDropVolts: 0 })
    expect(kinds(found)).toEqual(['no-drop'])
    expect(only(found).suspects[0]?.way).toBe('half-primary-drop')
  })
})

describe('a shared cathode resistor', () => {
  const pair = {
    biasKind: 'cathode-resistor',
    typeFitted: 'EL84',
    cathodeOhms: 130,
    cathodeSharedBy: 2,
    screenOhms: null,
  } as const
  const bias = { cathodeVolts: 10.4, screenDropVolts: null }

  test('10.4 V over 130 Ω by two is 40 mA each; 52 mA over 1 Ω is 65 % of the sum, not 50 %', () => {
    const found = check({ ...bias, senseDropVolts: 0.052 }, pair)
    const split = only(found).suspects.find(({ kind }) => kind === 'unequal-split')
    expect(only(found).agree).toBe(false)
    expect(split?.kind === 'unequal-split' && split.neededShare).toBeCloseTo(0.65, 3)
  })

  test('42 mA against an equal part of 40 mA agrees: ± 10 % of unequal sharing is allowed for', () => {
    expect(only(check({ ...bias, senseDropVolts: 0.042 }, pair)).agree).toBe(true)
  })

  test('the screen share cannot set two cathode ways apart', () => {
    expect(kinds(check({ ...bias, senseDropVolts: 0.052 }, pair))).not.toContain('screen-share')
  })

  test('104 Ω across 130 Ω for 130 Ω alone: a bypass that leaks like 520 Ω', () => {
    // 1/104 − 1/130 = 1/520: 32 mA shown where 40 mA flow.
    const found = check({ ...bias, cathodeVolts: 10.4 * 0.8, senseDropVolts: 0.08 }, { ...pair, cathodeSharedBy: 1 })
    const leak = only(found).suspects.find(({ kind }) => kind === 'bypass-leak')
    expect(leak?.kind === 'bypass-leak' && leak.leakOhms).toBeCloseTo(520, 0)
  })

  test('cathode volts in an amplifier with supplied grid volts are no way of finding current', () => {
    expect(check({ ...honest, cathodeVolts: 0.0352 }).comparisons).toHaveLength(1)
  })

  test('three ways, two of which agree: the third is suspected and no part of the others', () => {
    const alone = { ...pair, cathodeSharedBy: 1, side: 'A' } as const
    const typicalPlate = 0.04 * (1 - 0.12)
    const found = check(
      { ...bias, cathodeVolts: 0.04 * 130, senseDropVolts: 0.04, halfDropVolts: 1.4 * typicalPlate * 74 },
      alone,
    )
    expect(found.comparisons).toHaveLength(3)
    expect(found.oddOneOut).toBe('half-primary-drop')
    expect(oddOneOutText(found)).toContain('half primary')
    const suspects = found.comparisons.flatMap((each) => each.suspects)
    expect(suspects.length).toBeGreaterThan(0)
    expect(suspects.every(({ way }) => way === 'half-primary-drop')).toBe(true)
  })
})

test('a disagreement says both currents, the gap and its band, and that it is a disagreement', () => {
  const found = check({ ...honest, halfDropVolts: 0.038 * 74 })
  const text = comparisonText(only(found), words)
  expect(text).toContain('33.1 mA')
  expect(text).toContain('38.0 mA')
  expect(text).toContain('They disagree')
  expect(agreementWord(found)).toBe('Ways disagree')
})

test('just outside the 95 % band is “hardly agree”, outside three sigmas “disagree”', () => {
  const { plusMinus } = only(check(honest)).difference
  const at = (bands: number) => check({ ...honest, halfDropVolts: (0.0331 + bands * plusMinus) * 74 })
  expect([0.9, 1.2, 2].map((bands) => agreementWord(at(bands)))).toEqual([
    'Ways agree',
    'Ways hardly agree',
    'Ways disagree',
  ])
})

test('a screen tap explains no more than 60 % of the screen current', () => {
  // Screen 2.1 mA: 1.1 mA too much may be a tap, 1.5 mA may not.
  const suspectsAt = (excess: number) =>
    kinds(check({ ...honest, halfDropVolts: (0.0331 + excess) * 74 }, {}, { resistorTolerancePercent: 0.1 }))
  expect(suspectsAt(0.0011)).toContain('screen-on-tap')
  expect(suspectsAt(0.0015)).not.toContain('screen-on-tap')
})

test('law: a wider tolerance never turns agreement into disagreement', () => {
  for (const gap of [1, 1.02, 1.05, 1.1, 1.2]) {
    const agrees = [0, 1, 2, 5, 10].map(
      (resistorTolerancePercent) =>
        only(check({ ...honest, halfDropVolts: gap * honest.halfDropVolts }, {}, { resistorTolerancePercent })).agree,
    )
    expect(agrees.indexOf(true) === -1 || agrees.slice(agrees.indexOf(true)).every(Boolean)).toBe(true)
  }
})
